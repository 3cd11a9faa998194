/**
 * What the server says about itself: one line of JSON an event, on stderr. It holds no bodies, no queries, no tokens, no places and no
 * addresses of callers, so that it may be kept.
 */
import type { RequestHandler } from 'express';
import { pino } from 'pino';
import { routeLabel } from '../reference/routes.ts';
import type { Log, LogLevel } from './levels.ts';

export function makeLog(level: LogLevel): Log {
  return pino(
    {
      level,
      base: null,
      timestamp: pino.stdTimeFunctions.isoTime,
      formatters: { level: (label) => ({ level: label }) },
      serializers: { err: plainError },
    },
    { write: (line: string) => process.stderr.write(line) },
  );
}

/** Errors of body parsers carry the body: no field but these goes on. */
function plainError(error: unknown): object {
  if (!(error instanceof Error)) return { type: typeof error };
  return { type: error.name, message: error.message, stack: error.stack };
}

/** Notes every answer: method, known route, status, time and size. Nothing that a caller may choose freely. */
export function logRequests(log: Log): RequestHandler {
  return (request, response, next) => {
    const start = performance.now();
    const { socket } = request;
    const sentBefore = socket.bytesWritten;
    response.once('close', () => {
      log.info(
        {
          method: request.method,
          route: routeLabel(request.originalUrl.split('?')[0] ?? ''),
          status: response.writableFinished ? response.statusCode : 'gone',
          ms: Math.round((performance.now() - start) * 10) / 10,
          bytes: socket.bytesWritten - sentBefore,
        },
        'request',
      );
    });
    next();
  };
}
