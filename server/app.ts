/** The web application: the API under /api and the built page. It does not listen; `listen.ts` does. */
import express, { type Express } from 'express';
import type { Access } from './access/access.ts';
import { onlyThisMachine } from './access/loopback.ts';
import { api } from './api.ts';
import { type Compute, computeInThisThread } from './compute/compute.ts';
import type { Store } from './data/store.ts';
import { answerError, notFound } from './errors.ts';
import { securityHeaders } from './headers.ts';
import type { Log } from './logs/levels.ts';
import { logRequests, makeLog } from './logs/log.ts';
import { type Metrics, makeMetrics } from './metrics/metrics.ts';
import { page } from './page.ts';
import type { Screenings } from './screenings/jobs.ts';

export interface AppOptions {
  /** Folder of the built page. */
  readonly webDir: string;
  /** Where sites and screenings are kept; without one the app only reckons. */
  readonly store?: Store;
  /** The screenings of that store; without them none can be made. */
  readonly screenings?: Screenings;
  /** Who works on rankings and the like; left out, this thread. */
  readonly compute?: Compute;
  /** What is counted; left out, what this app sees. */
  readonly metrics?: Metrics;
  /** Left out, everybody who reaches the app may use it. */
  readonly access?: Access;
  /** Left out, it tells failures only. */
  readonly log?: Log;
  /** How many proxies stand before the server: so many addresses at the end of X-Forwarded-For are believed. */
  readonly proxies?: number;
  /** API requests a minute that one address may make; 0 or left out, any number. */
  readonly perMinute?: number;
}

/** Makes the application. Closing the store, the screenings and the threads is up to the caller. */
export function createApp({
  webDir,
  store,
  screenings,
  compute = computeInThisThread(),
  metrics = makeMetrics({ compute, store }),
  access = {},
  log = makeLog('error'),
  proxies = 0,
  perMinute = 0,
}: AppOptions): Express {
  const app = express();
  app.disable('x-powered-by');
  if (proxies > 0) app.set('trust proxy', proxies);
  app.use(metrics.observe);
  app.use(logRequests(log));
  app.use(securityHeaders({ https: access.https ?? false }));
  if (access.thisMachineOnly) app.use(onlyThisMachine);
  app.use('/api', api({ compute, metrics, store, screenings, access, perMinute }));
  app.use(page(webDir));
  app.use(notFound);
  app.use(answerError(log));
  return app;
}
