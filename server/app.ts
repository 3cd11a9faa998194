/** The web application: the API under /api and the built page. It does not listen; `listen.ts` does. */
import express, { type Express } from 'express';
import { api } from './api.ts';
import { answerError, notFound } from './errors.ts';
import { securityHeaders } from './headers.ts';
import { page } from './page.ts';

/** Makes the application; `webDir` is the folder of the built page. */
export function createApp({ webDir }: { webDir: string }): Express {
  const app = express();
  app.disable('x-powered-by');
  app.use(securityHeaders);
  app.use('/api', api());
  app.use(page(webDir));
  app.use(notFound);
  app.use(answerError);
  return app;
}
