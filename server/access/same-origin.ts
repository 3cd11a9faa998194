import type { RequestHandler } from 'express';
import { HttpError } from '../errors.ts';

const READING = new Set(['GET', 'HEAD', 'OPTIONS']);

/**
 * Refuses changes that another site's page asks for with the cookie of a person who is signed in here. Browsers name the page's
 * origin; a program that is no browser names none, and has no cookie that it was not given.
 */
export const onlyOwnPages: RequestHandler = (request, _response, next) => {
  if (READING.has(request.method) || isOwn(request.get('sec-fetch-site'), request.get('origin'), request.get('host'))) {
    next();
    return;
  }
  throw new HttpError(403, 'pages of other sites may change nothing here');
};

function isOwn(fetchSite: string | undefined, origin: string | undefined, host: string | undefined): boolean {
  // Sent over https and on this machine only; it holds behind a proxy that changes the host, too.
  if (fetchSite !== undefined) return fetchSite === 'same-origin' || fetchSite === 'none';
  if (origin === undefined) return true;
  return URL.canParse(origin) && new URL(origin).host === host;
}
