/** Addresses that only this machine reaches. */
import type { RequestHandler } from 'express';
import { HttpError } from '../errors.ts';

/** Whether what listens on `host` is out of reach of other machines. */
export function isLoopback(host: string): boolean {
  return /^(localhost|::1|\[::1\]|127(\.\d{1,3}){3})$/i.test(host.trim());
}

/** What proxies put in, one or the other. */
const OF_PROXIES = ['forwarded', 'via', 'x-forwarded-for', 'x-forwarded-host', 'x-forwarded-proto', 'x-real-ip'];

/**
 * Refuses what was not meant for this machine alone. A page of another name whose address was turned to this machine (DNS rebinding)
 * comes with that name; what a proxy passes on comes from elsewhere, and would be let in without a token.
 */
export const onlyThisMachine: RequestHandler = (request, _response, next) => {
  const host = request.get('host') ?? '';
  if (!isLoopback(host.replace(/:\d+$/, ''))) {
    throw new HttpError(403, 'this server is for its own machine; call it by localhost or 127.0.0.1');
  }
  if (OF_PROXIES.some((name) => request.get(name) !== undefined)) {
    throw new HttpError(
      403,
      'this came through a proxy; the server has to be started with --proxy 1, so that it asks for a token',
    );
  }
  next();
};
