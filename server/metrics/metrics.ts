/** Counters and gauges of one app, told as text for Prometheus. */
import type { RequestHandler } from 'express';
import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';
import type { Compute } from '../compute/compute.ts';
import type { Store } from '../data/store.ts';
import { routeLabel } from '../reference/routes.ts';
import { rowCounts } from './row-counts.ts';

export interface Metrics {
  readonly contentType: string;
  text(): Promise<string>;
  /** Counts requests and times them; stands before everything else. */
  readonly observe: RequestHandler;
}

interface Sources {
  readonly compute: Compute;
  readonly store?: Store | undefined;
  /** Memory, processor and event loop of the process, too: once a process, since it goes on as long as that. */
  readonly ofProcess?: boolean;
}

/** From an answer out of memory to the longest advice, s. */
const BUCKETS_S = [0.005, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 30, 120];

const METHODS = new Set(['GET', 'HEAD', 'POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS']);

export function makeMetrics({ compute, store, ofProcess = false }: Sources): Metrics {
  const register = new Registry();
  const registers = [register];
  if (ofProcess) collectDefaultMetrics({ register });

  const requests = new Counter({
    name: 'shadeside_http_requests_total',
    help: 'Requests answered, by route, method and status.',
    labelNames: ['route', 'method', 'status'],
    registers,
  });
  const durations = new Histogram({
    name: 'shadeside_http_request_duration_seconds',
    help: 'Time from a request to the end of its answer, by route.',
    labelNames: ['route'],
    buckets: BUCKETS_S,
    registers,
  });
  gauge('shadeside_compute_waiting', 'Requests that wait for a thread.', () => compute.load().waiting);
  gauge('shadeside_compute_running', 'Requests that threads work on.', () => compute.load().running);
  gauge('shadeside_compute_threads', 'Threads that work on requests.', () => compute.load().threads);
  if (store) {
    for (const { name, help, count } of rowCounts(store.db)) gauge(name, help, count);
  }

  function gauge(name: string, help: string, value: () => number): void {
    new Gauge({
      name,
      help,
      registers,
      collect() {
        this.set(value());
      },
    });
  }

  return {
    contentType: register.contentType,
    text: () => register.metrics(),
    observe: (request, response, next) => {
      const route = routeLabel(request.path);
      const method = METHODS.has(request.method) ? request.method : 'other';
      const end = durations.startTimer({ route });
      response.once('close', () => {
        end();
        // A client that went away before its answer has no status.
        requests.inc({ route, method, status: response.writableFinished ? response.statusCode : 'gone' });
      });
      next();
    },
  };
}
