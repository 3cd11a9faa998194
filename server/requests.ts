/** What the API's bodies hold around the site. The site itself is checked by the model. */
import type { Request } from 'express';
import { z } from 'zod';
import { type Problem, SiteError, shown } from '../model/index.ts';
import { SAMPLES, SEEDS } from './advice.ts';
import { HttpError } from './errors.ts';
import { LINK_BASE_ALLOWED, readLinkBase } from './sheet/link-base.ts';
import { PAPER_NAMES } from './sheet/paper.ts';

/** Checked by the model, against the schema that GET /api/schema tells. */
export const site = z.unknown().refine((value) => value !== undefined, { error: 'is missing' });
const units = z.enum(['metric', 'us']).optional();
const wall = z.string({ error: 'a wall of the site is needed' });

export const RankRequest = z.strictObject({ site, units, rules: z.unknown().optional() });
export const DayRequest = z.strictObject({ site, wall });
export const AdviceRequest = z.strictObject({
  site,
  rules: z.unknown().optional(),
  wall: wall.optional(),
  units,
  samples: whole(SAMPLES).optional(),
  seed: whole(SEEDS).optional(),
});

const token = z.string({ error: 'a token is needed' }).min(1, { error: 'is empty' }).max(200, { error: 'is no token' });

export const SessionRequest = z.strictObject({ token });

export const SheetRequest = z.strictObject({
  site,
  units,
  rules: z.unknown().optional(),
  wall: wall.optional(),
  paper: z.enum(PAPER_NAMES).optional(),
  linkBase: z
    .string()
    .transform((text, context) => {
      const base = readLinkBase(text);
      if (base === null) context.addIssue({ code: 'custom', message: 'is no address of a page' });
      return base ?? '';
    })
    .optional(),
});

function whole({ least, most }: { least: number; most: number }) {
  const error = 'is no whole number in the range';
  return z.int({ error }).min(least, { error }).max(most, { error });
}

export type RankInput = z.output<typeof RankRequest>;
export type DayInput = z.output<typeof DayRequest>;
export type AdviceInput = z.output<typeof AdviceRequest>;
export type SheetInput = z.output<typeof SheetRequest>;

/** @throws SiteError, HttpError */
export function rankRequest(request: Request): RankInput {
  return isBareSite(request.body) ? { site: request.body } : bodyOf(request, RankRequest);
}

/** A site file posted as it is, without anything around it. */
function isBareSite(body: unknown): boolean {
  return typeof body === 'object' && body !== null && !('site' in body) && ('walls' in body || 'place' in body);
}

/** @throws SiteError, HttpError */
export function dayRequest(request: Request): DayInput {
  return bodyOf(request, DayRequest);
}

/** @throws SiteError, HttpError */
export function adviceRequest(request: Request): AdviceInput {
  return bodyOf(request, AdviceRequest);
}

/** @throws SiteError, HttpError */
export function sessionRequest(request: Request): z.output<typeof SessionRequest> {
  return bodyOf(request, SessionRequest);
}

/** @throws SiteError, HttpError */
export function sheetRequest(request: Request): SheetInput {
  return isBareSite(request.body) ? { site: request.body } : bodyOf(request, SheetRequest);
}

function bodyOf<Schema extends z.ZodObject>(request: Request, schema: Schema): z.output<Schema> {
  if (request.body === undefined) throw new HttpError(415, 'the body must be JSON, content type application/json');
  const parsed = schema.safeParse(request.body, { reportInput: true });
  if (parsed.success) return parsed.data;
  throw new SiteError(bodyProblems(parsed.error, schema, ALLOWED));
}

/** What is wrong with a body, field by field; `allowed` says what may stand in each. */
export function bodyProblems(error: z.ZodError, schema: z.ZodObject, allowed: Allowed): Problem[] {
  const fields = Object.keys(schema.shape).join(', ');
  const secret = 'token' in schema.shape;
  return error.issues.flatMap((issue) => problemsOf(issue, { fields, allowed, secret }));
}

type Allowed = Readonly<Record<string, string>>;

interface BodyKind {
  readonly fields: string;
  readonly allowed: Allowed;
  /** Whether it may hold a token, wherever somebody put it: such a thing is never told back. */
  readonly secret: boolean;
}

function problemsOf(issue: z.core.$ZodIssue, { fields, allowed, secret }: BodyKind): Problem[] {
  if (issue.code === 'unrecognized_keys') {
    // Its name only: nobody knows what a field that does not belong here may hold.
    return issue.keys.map((key) => problem(key, shown(key), 'unknown field of the body', fields));
  }
  const path = issue.path.join('.');
  const found = secret ? kindOf(issue.input) : shown(issue.input);
  if (path === '') return [problem(path, found, 'the body is no JSON object', `an object with ${fields}`)];
  return [problem(path, found, issue.code === 'invalid_value' ? 'is not known' : issue.message, allowed[path] ?? '')];
}

const ALLOWED: Allowed = {
  site: 'what a site file holds',
  wall: 'the name of a wall',
  token: 'what the server printed at its first start, or shadeside token new',
  units: 'metric, us',
  paper: PAPER_NAMES.join(', '),
  linkBase: LINK_BASE_ALLOWED,
  samples: `whole numbers from ${SAMPLES.least} to ${SAMPLES.most}`,
  seed: `whole numbers from ${SEEDS.least} to ${SEEDS.most}`,
};

/** What kind of thing something is, and nothing of it. */
function kindOf(value: unknown): string {
  if (typeof value === 'string') return value === '' ? 'an empty text' : 'a text';
  return typeof value === 'number' ? 'a number' : shown(value);
}

export function problem(path: string, found: string, wrong: string, allowed: string): Problem {
  return { path, found, wrong, allowed, message: `${path || 'body'}: ${wrong}; allowed: ${allowed}` };
}
