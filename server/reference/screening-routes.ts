/** The routes of tables and screenings, for the table of all routes. */
import { CheckRequest, RowsQuery, ScreeningRequest, SummaryQuery } from '../screenings/requests.ts';
import type { Route } from './route.ts';

const STATE = 'id, name, status, error, instants, rows { done, rejected, total }, ratePerS, etaS, origin';

export const SCREENING_ROUTES: readonly Route[] = [
  {
    method: 'POST',
    path: '/api/tables',
    summary: 'Takes the bytes of a table and looks at its first rows; kept for a day',
    bodyType: 'text/csv',
    query: { name: 'the name of its file' },
    answer: 'Its id, columns, how they match the fields, first rows, and what would be rejected of them',
    status: 201,
  },
  {
    method: 'GET',
    path: '/api/tables/fields',
    summary: 'What a column of a table can be matched to',
    answer: 'A list of field, required, what',
  },
  {
    method: 'POST',
    path: '/api/tables/:id/check',
    summary: 'The first rows of a table under another matching',
    body: CheckRequest,
    answer: 'First rows, what would be rejected of them, and required fields without a column',
  },
  {
    method: 'POST',
    path: '/api/screenings',
    summary: 'Starts a screening of a table or a grid; one runs at a time, the others wait',
    body: ScreeningRequest,
    answer: 'Its id',
    status: 201,
  },
  { method: 'GET', path: '/api/screenings', summary: 'All screenings, the newest first', answer: `A list of ${STATE}` },
  { method: 'GET', path: '/api/screenings/:id', summary: 'How a screening stands', answer: STATE },
  {
    method: 'DELETE',
    path: '/api/screenings/:id',
    summary: 'Takes a screening away with all its files',
    answer: 'Nothing',
    status: 204,
  },
  {
    method: 'GET',
    path: '/api/screenings/:id/events',
    summary: 'How a screening stands, at every change until it has ended',
    answer: 'Events named "state", each as the screening stands',
    answerType: 'text/event-stream',
  },
  {
    method: 'POST',
    path: '/api/screenings/:id/cancel',
    summary: 'Stops a screening; what was done is kept',
    answer: STATE,
  },
  {
    method: 'POST',
    path: '/api/screenings/:id/resume',
    summary: 'Goes on with a screening that was cancelled or failed',
    answer: STATE,
  },
  {
    method: 'GET',
    path: '/api/screenings/:id/summary',
    summary: 'Counts by kit class, margin, climate and reason of rejection, and the assumptions',
    query: SummaryQuery,
    answer: 'counts, kitClasses, marginHistogram, assumptions, example, climates, rejectReasons',
  },
  {
    method: 'GET',
    path: '/api/screenings/:id/points',
    summary: 'Places for a map, up to 20,000: beyond that the worst of each cell',
    answer: 'Columns row, latitudeDeg, longitudeDeg, marginK, kit; kits, thinned, total, cellDeg',
  },
  {
    method: 'GET',
    path: '/api/screenings/:id/rows',
    summary: 'A page of the screened rows, sorted and filtered',
    query: RowsQuery,
    answer: 'total and rows',
  },
  {
    method: 'GET',
    path: '/api/screenings/:id/rows/:row',
    summary: 'One screened row',
    answer: 'What a page of rows says of each',
  },
  {
    method: 'GET',
    path: '/api/screenings/:id/rows/:row/site',
    summary: 'The site file of a row',
    answer: 'What POST /api/rank takes as a site',
  },
  ...(
    [
      ['results.csv', 'text/csv', 'The results as a table'],
      ['results.geojson', 'application/geo+json', 'The results as features'],
      ['rejects.csv', 'text/csv', 'The rejected rows, with row, column and reason'],
    ] as const
  ).map(([file, answerType, answer]): Route => {
    const path = `/api/screenings/:id/${file}`;
    return { method: 'GET', path, summary: 'A file of a screening that is done', answer, answerType };
  }),
];
