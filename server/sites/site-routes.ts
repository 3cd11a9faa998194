/**
 * Sites that are kept on the server. `store` in every answer is the store's own name: revisions of another one mean nothing.
 *
 *     GET    /api/sites?since=N       { store, latest, sites: [{ id, title, revision, changedAt, deleted }] }: all, or those that
 *                                     changed after a former list, whose `latest` is N
 *     GET    /api/sites/ID            { store, id, title, revision, changedAt, deleted, draft }
 *     PUT    /api/sites/ID            { base, draft, store? } -> the new state. `base` is the revision that the draft was made
 *                                     from, null for a new site; `draft` a site file, which may be incomplete
 *     DELETE /api/sites/ID?base=N     leaves a mark that it was deleted, as one more revision; `store` may be given, too
 *     GET    /api/sites/ID/revisions  { store, id, revisions }: as in the list, the newest first
 *     GET    /api/sites/ID/revisions/N   the state of that revision
 *
 * A change whose base is not the current revision is answered with 409 and { error, problems: [], store, current }, where `current` is
 * the state that stands in its way, null where the server never had the site. The same change sent twice is taken once.
 */
import express, { type Response, type Router } from 'express';
import type { Store } from '../data/store.ts';
import { HttpError, onlyMethods } from '../errors.ts';
import { jsonBody } from '../json-body.ts';
import { deleteRequest, idRequest, listRequest, putRequest, revisionRequest } from './site-requests.ts';
import { type Outcome, type SiteState, siteStore } from './site-store.ts';

/** The routes under /api/sites; without a store they say that there is none. */
export function siteRoutes(store: Store | undefined): Router {
  const router = express.Router();
  if (store === undefined) {
    router.use(() => {
      throw new HttpError(503, 'this server keeps no sites; it was started without a data folder');
    });
    return router;
  }
  const sites = siteStore(store);
  const found = (response: Response, state: SiteState | undefined) => {
    if (state === undefined) throw new HttpError(404, 'this server has no such site or revision');
    response.json({ store: store.id, ...state });
  };
  const answer = (response: Response, outcome: Outcome) => {
    if (outcome.kind === 'conflict') {
      const error = 'the site was changed here meanwhile';
      response.status(409).json({ error, problems: [], store: store.id, current: outcome.state });
    } else found(response, outcome.kind === 'kept' ? outcome.state : undefined);
  };

  router
    .route('/')
    .get((request, response) => {
      response.json({ store: store.id, ...sites.list(listRequest(request).since) });
    })
    .all(onlyMethods('GET, HEAD'));

  router
    .route('/:id')
    .get((request, response) => found(response, sites.read(idRequest(request).id)))
    .put(jsonBody, (request, response) => {
      const { id, ...change } = putRequest(request);
      answer(response, sites.change(id, change));
    })
    .delete((request, response) => {
      const { id, ...change } = deleteRequest(request);
      answer(response, sites.change(id, change));
    })
    .all(onlyMethods('GET, HEAD, PUT, DELETE'));

  router
    .route('/:id/revisions')
    .get((request, response) => {
      const { id } = idRequest(request);
      const revisions = sites.revisions(id);
      if (revisions.length === 0) throw new HttpError(404, 'this server has no such site');
      response.json({ store: store.id, id, revisions });
    })
    .all(onlyMethods('GET, HEAD'));

  router
    .route('/:id/revisions/:revision')
    .get((request, response) => {
      const { id, revision } = revisionRequest(request);
      found(response, sites.revision(id, revision));
    })
    .all(onlyMethods('GET, HEAD'));

  return router;
}
