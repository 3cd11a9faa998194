/** Bodies of JSON, as far as any route can use them. */
import express, { type RequestHandler } from 'express';
import { HttpError } from './errors.ts';

/** Room for the largest site that the schema accepts, 72 walls with 360 horizon points each, and what stands around it. */
const MAX_BODY = '2mb';

/** Several times what a site file with its rules has. */
const MOST_LEVELS = 64;
const MOST_FIELDS = 1000;
const MOST_ENTRIES = 1000;
/** Of the whole body; the largest site has some 80,000. */
const MOST_VALUES = 100_000;

// Any JSON value is let in, so that a body that is a number gets the same kind of answer as a wrong site.
const parse = express.json({ limit: MAX_BODY, strict: false });

/**
 * Reads a body of JSON. Code that goes down into it level by level would run out of stack where it is nested without end, and an
 * answer that names each of a hundred thousand unknown fields or wrong entries keeps everybody waiting: none goes further than here.
 */
export const jsonBody: RequestHandler = (request, response, next) => {
  parse(request, response, (error?: unknown) => {
    if (error !== undefined) next(error);
    else if (fits(request.body, MOST_LEVELS, { left: MOST_VALUES })) next();
    else {
      const allowed = `${MOST_LEVELS} levels, ${MOST_FIELDS} fields of one object, ${MOST_ENTRIES} entries of one list and ${MOST_VALUES} values in all are allowed`;
      next(new HttpError(400, `the body is nested too deep or has too many fields or entries; ${allowed}`));
    }
  });
};

function fits(value: unknown, levels: number, room: { left: number }): boolean {
  room.left--;
  if (typeof value !== 'object' || value === null) return room.left >= 0;
  if (levels === 0) return false;
  const inner = Object.values(value);
  const most = Array.isArray(value) ? MOST_ENTRIES : MOST_FIELDS;
  return inner.length <= most && inner.every((one) => fits(one, levels - 1, room));
}
