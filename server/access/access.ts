/** Who may use the API. */
import express, { type Request, type Response, type Router } from 'express';
import { rateLimit } from 'express-rate-limit';
import { HttpError, onlyMethods } from '../errors.ts';
import { jsonBody } from '../json-body.ts';
import { isOpen } from '../reference/routes.ts';
import { sessionRequest } from '../requests.ts';
import { endSession, startSession, tokenOf } from './session.ts';
import type { Tokens } from './tokens.ts';

export interface Access {
  /** Those that are accepted; left out, the API is open. */
  readonly tokens?: Tokens | undefined;
  /** Whether only callers on this machine are answered. */
  readonly thisMachineOnly?: boolean;
  /** Whether people reach the server by https. */
  readonly https?: boolean;
}

/** Wrong tokens from one address before it is told to wait, and for how long. */
const FAILURES = { most: 20, minutes: 15 } as const;

const STILL_ALLOWED = 'stillAllowed';

/** Whether the token that a long answer was asked for with has not been revoked meanwhile. */
export function stillAllowed({ locals }: Response): boolean {
  const ask: (() => boolean) | undefined = locals[STILL_ALLOWED];
  return ask === undefined || ask();
}

/** POST /api/session takes a token and sets a cookie for it, DELETE takes the cookie away; everything else in the API needs one of both. */
export function accessRoutes({ tokens, https = false }: Access): Router {
  const router = express.Router();
  // A right token is taken however many wrong ones came from the same address: colleagues may share it.
  const refuse = slowDown();

  router
    .route('/session')
    .post(jsonBody, (request, response, next) => {
      const { token } = sessionRequest(request);
      if (tokens && !tokens.accepts(token)) {
        refuse(request, response, next);
        return;
      }
      if (tokens) startSession(response, token, https);
      response.status(204).end();
    })
    .delete((_request, response) => {
      endSession(response, https);
      response.status(204).end();
    })
    .all(onlyMethods('POST, DELETE'));

  if (tokens) {
    router.use((request, response, next) => {
      const token = tokenOf(request);
      if (token !== undefined && tokens.accepts(token)) {
        response.locals[STILL_ALLOWED] = () => tokens.accepts(token);
        next();
      } else if (isOpen(request.method, `${request.baseUrl}${request.path}`)) {
        next();
      } else if (token === undefined) next(unknown(response));
      else refuse(request, response, next);
    });
  }
  return router;
}

/** Answers for a wrong token: 401, and 429 once there were too many. */
function slowDown(): (request: Request, response: Response, next: (error: unknown) => void) => void {
  const limiter = rateLimit({
    windowMs: FAILURES.minutes * 60_000,
    limit: FAILURES.most,
    standardHeaders: 'draft-8',
    legacyHeaders: false,
    identifier: 'wrong-tokens',
    handler: (_request, _response, next) => next(new HttpError(429, 'too many wrong tokens from here; wait a while')),
  });
  return (request, response, next) => {
    limiter(request, response, (error?: unknown) => next(error ?? unknown(response)));
  };
}

function unknown(response: Response): HttpError {
  response.set('WWW-Authenticate', 'Bearer realm="Shadeside"');
  return new HttpError(401, 'a token is needed here: sign in on the page, or send it as Authorization: Bearer TOKEN');
}
