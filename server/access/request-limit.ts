import type { RequestHandler } from 'express';
import { rateLimit } from 'express-rate-limit';
import { HttpError } from '../errors.ts';

/** Tells an address that asks too often to wait; `perMinute` 0 lets everybody. */
export function limitRequests(perMinute: number): RequestHandler {
  if (perMinute === 0) return (_request, _response, next) => next();
  return rateLimit({
    windowMs: 60_000,
    limit: perMinute,
    standardHeaders: 'draft-8',
    legacyHeaders: false,
    // Behind a proxy that nobody told of, all would share one address; onlyThisMachine refuses that, and the README says how.
    validate: { xForwardedForHeader: false, forwardedHeader: false },
    handler: (_request, _response, next) => {
      next(new HttpError(429, `more than ${perMinute} requests a minute from one address; wait a little`));
    },
  });
}
