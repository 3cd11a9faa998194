/** The web application: the API under /api and the built page. It does not listen; `listen.ts` does. */
import express, { type Express } from 'express';
import { api } from './api.ts';
import { type Compute, computeInThisThread } from './compute/compute.ts';
import type { Store } from './data/store.ts';
import { answerError, notFound } from './errors.ts';
import { securityHeaders } from './headers.ts';
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
}

/** Makes the application. Closing the store, the screenings and the threads is up to the caller. */
export function createApp({
  webDir,
  store,
  screenings,
  compute = computeInThisThread(),
  metrics = makeMetrics({ compute, store }),
}: AppOptions): Express {
  const app = express();
  app.disable('x-powered-by');
  app.use(metrics.observe);
  app.use(securityHeaders);
  app.use('/api', api({ compute, metrics, store, screenings }));
  app.use(page(webDir));
  app.use(notFound);
  app.use(answerError);
  return app;
}
