import { PutBody } from '../sites/site-requests.ts';
import type { Route } from './route.ts';

const base = 'the revision that the change was made from';
const store = 'the name of the store that the base is from';
const CLASH = 'A base that is not the current revision is answered with 409 and the state that stands in the way.';

/** Sites that are kept; see sites/site-routes.ts. */
export const SITE_ROUTES: readonly Route[] = [
  {
    method: 'GET',
    path: '/api/sites',
    summary: 'The kept sites, or those that changed since a former list',
    query: { since: '`latest` of the former list' },
    answer: 'Name of the store, number of the latest change, and of each site id, title, revision and when it changed',
  },
  {
    method: 'GET',
    path: '/api/sites/:id',
    summary: 'A site as it is now',
    answer: 'The site file with its revision',
  },
  {
    method: 'PUT',
    path: '/api/sites/:id',
    summary: `Keeps a state of a site. ${CLASH}`,
    body: PutBody,
    answer: 'The new state with its revision',
  },
  {
    method: 'DELETE',
    path: '/api/sites/:id',
    summary: `Marks a site as deleted, as one more revision. ${CLASH}`,
    query: { base, store },
    answer: 'The new state',
  },
  {
    method: 'GET',
    path: '/api/sites/:id/revisions',
    summary: 'All revisions of a site, the newest first',
    answer: 'Of each title, revision and when it was made',
  },
  {
    method: 'GET',
    path: '/api/sites/:id/revisions/:revision',
    summary: 'A site as it was at a revision',
    answer: 'The site file of that revision',
  },
];
