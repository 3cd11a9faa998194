/** How failures leave the server: a status, a sentence, and for bad input every problem with its path. */
import type { ErrorRequestHandler, RequestHandler } from 'express';
import { type Problem, SiteError } from '../model/index.ts';
import { Abandoned, Overloaded, TimeLimitPassed } from './compute/failures.ts';
import { storageFailure } from './data/storage-failure.ts';
import type { Log } from './logs/levels.ts';

/** A failure with the HTTP status it is answered with. */
export class HttpError extends Error {
  readonly status: number;
  readonly problems: readonly Problem[];

  constructor(status: number, message: string, problems: readonly Problem[] = []) {
    super(message);
    this.name = 'HttpError';
    this.status = status;
    this.problems = problems;
  }
}

interface Answer {
  readonly status: number;
  readonly error: string;
  readonly problems: readonly Problem[];
}

/** Refuses every method that a route does not have, naming those it has. */
export function onlyMethods(allow: string): RequestHandler {
  return (request, response) => {
    response.set('Allow', allow);
    throw new HttpError(405, `${request.method} is not allowed here; allowed: ${allow}`);
  };
}

export const notFound: RequestHandler = (request) => {
  throw new HttpError(404, `there is nothing at ${request.originalUrl.split('?')[0]}`);
};

/** The last handler: turns whatever was thrown into an answer, and never lets an inner message or stack out. */
export function answerError(log: Log): ErrorRequestHandler {
  return (error, request, response, next) => {
    // Nobody waits for an answer any more.
    if (error instanceof Abandoned) return;
    if (response.headersSent) {
      next(error);
      return;
    }
    const { status, ...answer } = answerFor(error);
    if (error instanceof Overloaded) response.set('Retry-After', String(error.retryAfterS));
    if (storageFailure(error)?.passing) response.set('Retry-After', '1');
    if (status >= 500 && !isExplained(error)) log.error({ err: error }, 'failed');
    // A handler that failed half-way may have named the type of what it was going to send.
    response.status(status).removeHeader('Content-Type');
    if (/^\/api(\/|$)/.test(request.originalUrl)) response.json(answer);
    else response.type('text/plain').send(`${answer.error}\n`);
  };
}

/** Failures whose answer says all that there is to say. */
function isExplained(error: unknown): boolean {
  return error instanceof Overloaded || error instanceof TimeLimitPassed || error instanceof HttpError;
}

function answerFor(error: unknown): Answer {
  if (error instanceof SiteError) {
    const { problems } = error;
    const count = problems.length === 1 ? 'one problem' : `${problems.length} problems`;
    return { status: 400, error: `the input has ${count}`, problems };
  }
  if (error instanceof HttpError) return { status: error.status, error: error.message, problems: error.problems };
  if (error instanceof Overloaded) {
    return { status: 503, error: 'too many requests are waiting here; try again a little later', problems: [] };
  }
  if (error instanceof TimeLimitPassed) {
    return {
      status: 503,
      error: `this took longer than ${error.limitS} s and was stopped; fewer walls, obstructions or samples make it shorter`,
      problems: [],
    };
  }
  const storage = storageFailure(error);
  if (storage) return { status: storage.status, error: storage.error, problems: [] };
  return { ...parserAnswer(error), problems: [] };
}

/** Failures of express and its body parser carry a status; those a caller can mend are told in plain words. */
function parserAnswer(error: unknown): { status: number; error: string } {
  const { status, type } = (error ?? {}) as { status?: unknown; type?: unknown };
  if (type === 'entity.parse.failed') return { status: 400, error: 'the body is no valid JSON' };
  if (type === 'entity.too.large') return { status: 413, error: 'the body is too large; 2 MB are allowed' };
  if (status === 404) return { status, error: 'there is nothing here' };
  if (status === 415) return { status, error: 'the encoding of the body is not supported' };
  if (typeof status === 'number' && status >= 400 && status < 500) {
    return { status, error: 'the request is malformed' };
  }
  return { status: 500, error: 'something failed here that is not the fault of the request' };
}
