/**
 * The routes of tables and screenings under /api.
 *
 *     POST   /tables?name=                  the bytes of a table; its columns, first rows and what would be rejected of them
 *     GET    /tables/fields                 what a column can be matched to
 *     POST   /tables/:id/check              { matching }: first rows and problems under another matching
 *     POST   /screenings                    { name?, table | grid, matching?, settings?, workers? }
 *     GET    /screenings, /screenings/:id   how they stand
 *     GET    /screenings/:id/events         the same as server-sent events, until it has ended
 *     POST   /screenings/:id/cancel, /screenings/:id/resume
 *     DELETE /screenings/:id
 *     GET    /screenings/:id/summary, /points, /rows, /rows/:row, /rows/:row/site
 *     GET    /screenings/:id/results.csv, /results.geojson, /rejects.csv
 */
import { basename } from 'node:path';
import express, { type Request, type RequestHandler, type Router } from 'express';
import { SiteError } from '../../model/index.ts';
import { HttpError, onlyMethods } from '../errors.ts';
import { jsonBody } from '../json-body.ts';
import { columnNames } from '../screening/column-names.ts';
import { type RowSettings, rowSite } from '../screening/row-site.ts';
import { DOWNLOADS, sendDownload } from './downloads.ts';
import { sendEvents } from './events.ts';
import { rowSettingsOf } from './job.ts';
import type { Screenings } from './jobs.ts';
import { mapPoints, NO_POINTS } from './map-points.ts';
import { FIELDS, labelColumn, readMatching } from './matching.ts';
import { checkRequest, rowsQuery, screeningRequest, summaryQuery } from './requests.ts';
import { firstRow, keptRow, type Listed, listedRow, pageOfRows } from './row-queries.ts';
import { openRows, withRows } from './row-store.ts';
import { screeningSummary } from './summary.ts';
import { checkedRows, tablePreview } from './table-preview.ts';

const TABLE_TYPES = ['text/csv', 'text/plain', 'text/tab-separated-values', 'application/octet-stream'];

/** Routes without screenings to serve: a server without a data folder. */
export function noScreenings(): Router {
  const router = express.Router();
  router.use(['/tables', '/screenings'], () => {
    throw new HttpError(503, 'this server keeps no data, so that it cannot screen');
  });
  return router;
}

export function screeningRoutes(screenings: Screenings): Router {
  const router = express.Router();
  tableRoutes(router, screenings);
  jobRoutes(router, screenings);
  resultRoutes(router, screenings);
  return router;
}

function tableRoutes(router: Router, { tables, mustHold }: Screenings): void {
  router
    .route('/tables')
    .post(async (request, response) => {
      mustHold();
      if (!request.is(TABLE_TYPES) || request.get('Content-Encoding')) {
        throw new HttpError(415, `the body must be the bytes of a table, content type ${TABLE_TYPES.join(', ')}`);
      }
      try {
        const stored = await tables.receive(request, fileName(request.query['name']));
        try {
          response.status(201).json(tablePreview(stored));
        } catch (error) {
          tables.remove(stored.id);
          throw error;
        }
      } catch (error) {
        // Nobody waits for an answer to what was broken off.
        if (!request.destroyed || request.complete) throw error;
      }
    })
    .all(onlyMethods('POST'));

  router
    .route('/tables/fields')
    .get((_request, response) => {
      response.json(FIELDS);
    })
    .all(onlyMethods('GET, HEAD'));

  router
    .route('/tables/:id/check')
    .post(jsonBody, (request, response) => {
      const table = tables.get(request.params.id);
      const { columns, problems } = readMatching(table.file.header, checkRequest(request.body).matching);
      if (problems.length > 0) throw new SiteError(problems);
      response.json(checkedRows(table, columns));
    })
    .all(onlyMethods('POST'));
}

function jobRoutes(router: Router, screenings: Screenings): void {
  router
    .route('/screenings')
    .get((_request, response) => {
      response.json({ screenings: screenings.list() });
    })
    .post(jsonBody, async (request, response) => {
      screenings.mustHold();
      const id = await screenings.add(screeningRequest(request.body, screenings.tables));
      response.status(201).location(`${request.baseUrl}/screenings/${id}`).json({ id });
    })
    .all(onlyMethods('GET, HEAD, POST'));

  router
    .route('/screenings/:id')
    .get((request, response) => {
      response.json(screenings.state(request.params.id));
    })
    .delete(async (request, response) => {
      await screenings.remove(request.params.id);
      response.status(204).end();
    })
    .all(onlyMethods('GET, HEAD, DELETE'));

  router
    .route('/screenings/:id/cancel')
    .post(async (request, response) => {
      response.json(await screenings.cancel(request.params.id));
    })
    .all(onlyMethods('POST'));

  router
    .route('/screenings/:id/resume')
    .post((request, response) => {
      response.json(screenings.resume(request.params.id));
    })
    .all(onlyMethods('POST'));

  router
    .route('/screenings/:id/events')
    .get((request, response) => sendEvents(request, response, screenings, request.params.id))
    .all(onlyMethods('GET'));
}

function resultRoutes(router: Router, screenings: Screenings): void {
  const get = (path: string, answer: RequestHandler<{ id: string; row: string }>): void => {
    router.route(`/screenings/:id${path}`).get(answer).all(onlyMethods('GET, HEAD'));
  };

  get('/summary', (request, response) => {
    const { id } = request.params;
    const { tally } = screenings.record(id);
    const { units } = summaryQuery(request.query);
    const row = withRows(screenings.files(id).rows, null, firstRow);
    response.json(screeningSummary(tally, rowSettingsOf(screenings.spec(id)), { row, units }));
  });

  get('/points', async (request, response) => {
    const { id } = request.params;
    screenings.record(id);
    const db = openRows(screenings.files(id).rows);
    try {
      response.json(db === null ? NO_POINTS : await mapPoints(db));
    } finally {
      db?.close();
    }
  });

  get('/rows', (request, response) => {
    const { id } = request.params;
    const shown = shownAs(rowSettingsOf(screenings.spec(id)));
    const query = rowsQuery(request.query);
    const page = withRows(screenings.files(id).rows, { total: 0, rows: [] }, (db) => pageOfRows(db, query));
    response.json({ total: page.total, rows: page.rows.map(shown) });
  });

  get('/rows/:row', (request, response) => {
    const { id, row } = request.params;
    const shown = shownAs(rowSettingsOf(screenings.spec(id)));
    const found = withRows(screenings.files(id).rows, null, (db) => listedRow(db, rowNumber(row)));
    if (found === null) throw new HttpError(404, NO_ROW);
    response.json(shown(found));
  });

  get('/rows/:row/site', (request, response) => {
    const { id } = request.params;
    const settings = rowSettingsOf(screenings.spec(id));
    const found = withRows(screenings.files(id).rows, null, (db) => keptRow(db, rowNumber(request.params.row)));
    if (found === null) throw new HttpError(404, NO_ROW);
    const label = found.record.cells[labelColumn(settings.header, settings.columns) ?? -1] ?? '';
    const title = `${screenings.record(id).name}, row ${found.record.row}${label === '' ? '' : `: ${label}`}`;
    response.json({ title: title.slice(0, LONGEST_TITLE), ...rowSite(found.record, settings).input });
  });

  for (const what of DOWNLOADS) {
    get(`/${what}`, (request, response) => sendDownload(response, screenings, { id: request.params.id, what }));
  }
}

const NO_ROW = 'there is no such row, or it was rejected, or it is not screened yet';

/** What is no number of a row finds none. */
const rowNumber = (text: string): number => (/^\d{1,9}$/.test(text) ? Number(text) : -1);

/** Turns the cells of a row into those that stand for nothing else, by their columns. */
function shownAs({ header, columns }: RowSettings) {
  const names = columnNames(header);
  const told = new Set([...Object.values(columns), labelColumn(header, columns)]);
  return ({ cells, ...row }: Listed) => {
    const given = JSON.parse(cells) as string[];
    const extra = names.flatMap((name, k) => (told.has(k) ? [] : [[name, given[k] ?? ''] as const]));
    return { ...row, extra: Object.fromEntries(extra) };
  };
}

const LONGEST_TITLE = 200;
const LONGEST_NAME = 200;

/** The name of an uploaded file without folders and control characters. */
function fileName(given: Request['query'][string]): string {
  const text = typeof given === 'string' ? basename(given.replaceAll('\\', '/')) : '';
  const name = text
    .replace(/\p{Cc}+/gu, ' ')
    .trim()
    .slice(0, LONGEST_NAME);
  return name === '' ? 'table.csv' : name;
}
