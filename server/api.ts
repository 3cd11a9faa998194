/**
 * The API. Bodies and answers are JSON, numbers SI (degC for temperatures), instants ISO 8601 in UTC.
 *
 *     POST /api/rank    { site, units?, rules? }  the ranking of the walls; units "metric" or "us" are those of its sentences;
 *                                           a bare site file will do, too
 *     POST /api/day     { site, wall }      the design day of one wall, step by step
 *     POST /api/advice  { site, wall?, units?, rules?, samples?, seed? }
 *                                           what would help that wall, or the first of the ranking, how sure its forecast
 *                                           is, its coldest night, what burns; 1 to 1000 samples
 *     POST /api/sheet   { site, wall?, units?, rules?, paper?, linkBase? }
 *                                           the site sheet as a PDF of one page; paper "a4" or "letter"; linkBase is the
 *                                           address of the page that the code on it opens, this server's when left out
 *     GET  /api/schema                      JSON Schema of `site`
 *     GET  /api/health                      { status: "ok", version, storage, store? }: whether sites can be kept here, and the
 *                                           store's own name
 *     /api/tables, /api/screenings ...      tables that are screened, see screenings/routes.ts
 *     /api/sites ...                        sites that are kept here, with their revisions; see sites/site-routes.ts
 *     POST /api/session { token }           signs a browser in by a cookie, DELETE signs it out; see access/access.ts
 *     GET  /api/docs, /api/openapi.json     all of this, generated from reference/routes.ts and the schemas
 *     GET  /api/metrics                     counters and gauges for Prometheus, as text
 *
 * `site` is what a site file holds, `rules` what stands in model/siting/siting-rules.json or a company's own file. Bad input is answered with 400 and { error, problems: [{ path, found, allowed,
 * message }] }, every other failure with its status and { error, problems: [] }.
 */
import express, { type Router } from 'express';
import { siteJsonSchema } from '../model/index.ts';
import packageFile from '../package.json';
import { type Access, accessRoutes } from './access/access.ts';
import { limitRequests } from './access/request-limit.ts';
import { onlyOwnPages } from './access/same-origin.ts';
import { answerWith } from './compute/answer.ts';
import type { Compute } from './compute/compute.ts';
import type { Store } from './data/store.ts';
import { notFound, onlyMethods } from './errors.ts';
import { jsonBody } from './json-body.ts';
import type { Metrics } from './metrics/metrics.ts';
import { docsRoutes } from './reference/docs-routes.ts';
import { adviceRequest, dayRequest, rankRequest } from './requests.ts';
import type { Screenings } from './screenings/jobs.ts';
import { noScreenings, screeningRoutes } from './screenings/routes.ts';
import { answerWithSheet } from './sheet/sheet-route.ts';
import { siteRoutes } from './sites/site-routes.ts';

interface ApiParts {
  readonly compute: Compute;
  readonly metrics: Metrics;
  readonly store?: Store | undefined;
  readonly screenings?: Screenings | undefined;
  readonly access: Access;
  readonly perMinute: number;
}

/** The routes under /api. */
export function api({ compute, metrics, store, screenings, access, perMinute }: ApiParts): Router {
  const router = express.Router();

  router.use((_request, response, next) => {
    response.set('Cache-Control', 'no-store');
    next();
  });
  router.use(limitRequests(perMinute), onlyOwnPages, accessRoutes(access));

  router
    .route('/rank')
    .post(jsonBody, (request, response) => answerWith(response, { compute, name: 'rank', input: rankRequest(request) }))
    .all(onlyMethods('POST'));

  router
    .route('/day')
    .post(jsonBody, (request, response) => answerWith(response, { compute, name: 'day', input: dayRequest(request) }))
    .all(onlyMethods('POST'));

  router
    .route('/advice')
    .post(jsonBody, (request, response) =>
      answerWith(response, { compute, name: 'advice', input: adviceRequest(request) }),
    )
    .all(onlyMethods('POST'));

  router.route('/sheet').post(jsonBody, answerWithSheet(compute)).all(onlyMethods('POST'));

  router
    .route('/schema')
    .get((_request, response) => {
      response.type('application/schema+json').send(JSON.stringify(siteJsonSchema()));
    })
    .all(onlyMethods('GET, HEAD'));

  router
    .route('/health')
    .get((_request, response) => {
      response.json({ status: 'ok', version: packageFile.version, storage: store !== undefined, store: store?.id });
    })
    .all(onlyMethods('GET, HEAD'));

  router.use('/sites', siteRoutes(store));

  router
    .route('/metrics')
    .get(async (_request, response) => {
      response.set('Content-Type', metrics.contentType).send(await metrics.text());
    })
    .all(onlyMethods('GET, HEAD'));

  router.use(screenings === undefined ? noScreenings() : screeningRoutes(screenings));

  router.use(docsRoutes());

  router.use(notFound);
  return router;
}
