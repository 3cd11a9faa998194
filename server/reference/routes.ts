/**
 * Every route of the API, once: what it takes, by the schemas that the routes themselves check with, and what it answers. The reference
 * at /api/docs, the labels of the metrics and the log, and what is open without a token are read from here.
 */
import { AdviceRequest, DayRequest, RankRequest, SessionRequest, SheetRequest } from '../requests.ts';
import type { Route } from './route.ts';
import { SCREENING_ROUTES } from './screening-routes.ts';
import { SITE_ROUTES } from './site-routes.ts';

export const ROUTES: readonly Route[] = [
  {
    method: 'POST',
    path: '/api/rank',
    summary: 'The walls of a site, best first, on its design day',
    body: RankRequest,
    answer: 'The ranking: every wall with its day, checks and the sentence that says why it stands where it stands',
  },
  {
    method: 'POST',
    path: '/api/day',
    summary: 'The design day of one wall, step by step',
    body: DayRequest,
    answer: 'Temperatures, sun and heat flows of each step; instants are ISO 8601 in UTC',
  },
  {
    method: 'POST',
    path: '/api/advice',
    summary: 'What would help a wall, how sure its forecast is, its coldest night, what burns',
    body: AdviceRequest,
    answer:
      'Remedies, band of the forecast, confidence in the choice, the coldest night, hot surfaces, the worst month',
  },
  {
    method: 'POST',
    path: '/api/sheet',
    summary: 'The site sheet of a wall: one page to take along and sign',
    body: SheetRequest,
    answer: 'A PDF of one page, A4 or US Letter',
    answerType: 'application/pdf',
  },
  {
    method: 'GET',
    path: '/api/schema',
    summary: 'JSON Schema of a site file',
    answer: 'The schema, draft 2020-12',
    answerType: 'application/schema+json',
  },
  {
    method: 'GET',
    path: '/api/health',
    summary: 'Whether the server answers',
    answer: 'status "ok", version, and whether sites can be kept here',
    open: true,
  },
  {
    method: 'POST',
    path: '/api/session',
    summary: 'Signs a browser in: the token is kept in a cookie that no script sees',
    body: SessionRequest,
    answer: 'Nothing',
    status: 204,
    open: true,
  },
  {
    method: 'DELETE',
    path: '/api/session',
    summary: 'Signs a browser out',
    answer: 'Nothing',
    status: 204,
    open: true,
  },
  {
    method: 'GET',
    path: '/api/metrics',
    summary: 'Counters and gauges of the server for Prometheus',
    answer: 'Text in the exposition format of Prometheus',
    answerType: 'text/plain',
  },
  {
    method: 'GET',
    path: '/api/openapi.json',
    summary: 'This reference for programs',
    answer: 'An OpenAPI 3.1 document',
  },
  {
    method: 'GET',
    path: '/api/docs',
    summary: 'This reference for people',
    answer: 'A page without scripts',
    answerType: 'text/html',
  },
  {
    method: 'GET',
    path: '/api/docs.css',
    summary: 'How that page looks',
    answer: 'A style sheet',
    answerType: 'text/css',
  },
  ...SITE_ROUTES,
  ...SCREENING_ROUTES,
];

const PATTERNS = [...new Set(ROUTES.map(({ path }) => path))].map((path) => ({
  path,
  pattern: new RegExp(`^${path.replaceAll(/:\w+/g, '[^/]+')}/?$`, 'i'),
}));

/**
 * The known path that an address belongs to: one of the table, "page" for what is no API, "other" for the rest. However many
 * addresses people invent, there are no more labels than these.
 */
export function routeLabel(path: string): string {
  if (!/^\/api(\/|$)/i.test(path)) return 'page';
  return PATTERNS.find(({ pattern }) => pattern.test(path))?.path ?? 'other';
}

/** Whether a request is answered without a token. */
export function isOpen(method: string, path: string): boolean {
  const label = routeLabel(path);
  return ROUTES.some(
    (route) => route.open && route.path === label && route.method === (method === 'HEAD' ? 'GET' : method),
  );
}
