/** What requests about kept sites hold, checked. A draft may be incomplete or wrong: the form says so, not the store. */
import type { Request } from 'express';
import { z } from 'zod';
import { type Problem, SiteError, shown } from '../../model/index.ts';
import { HttpError } from '../errors.ts';
import { bodyProblems, problem } from '../requests.ts';
import type { SiteChange } from './site-store.ts';

/** A site file is six levels deep. */
const MAX_DEPTH = 20;
const MAX_TITLE = 1000;

/** A random UUID (RFC 9562, version 4), as the page makes them. */
const SITE_ID = /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;
const WHOLE = /^\d{1,15}$/;

const ALLOWED = {
  base: 'null for a new site, or the revision that the change was made from',
  store: 'the name of the store that the base is from',
  draft: `a site as an object, at most ${MAX_DEPTH} levels deep, its title at most ${MAX_TITLE} characters long`,
};

export const PutBody = z.strictObject({
  base: z.int({ error: 'is no revision' }).min(1, { error: 'is no revision' }).nullable(),
  store: z.string({ error: 'is no name of a store' }).max(100, { error: 'is no name of a store' }).optional(),
  draft: z.unknown().superRefine((draft, context) => {
    const wrong = draftFault(draft);
    if (wrong !== null) context.addIssue({ code: 'custom', message: wrong });
  }),
});

function draftFault(draft: unknown): string | null {
  if (draft === undefined) return 'is missing';
  if (typeof draft !== 'object' || draft === null || Array.isArray(draft)) return 'is no object';
  const { title } = draft as { title?: unknown };
  if (typeof title === 'string' && title.length > MAX_TITLE) return 'has a title that is too long';
  return nestingFault(draft, MAX_DEPTH);
}

/** Looks no deeper than is allowed, however deep it is. */
function nestingFault(value: object, levels: number): string | null {
  if (levels === 0) return 'is nested too deep';
  // Code that copies such a field key by key would change what all objects inherit from.
  if (Object.hasOwn(value, '__proto__')) return 'has a field called __proto__';
  for (const inner of Object.values(value)) {
    const fault = typeof inner === 'object' && inner !== null ? nestingFault(inner, levels - 1) : null;
    if (fault !== null) return fault;
  }
  return null;
}

/** @throws SiteError with every fault of the id and the body; HttpError */
export function putRequest(request: Request): { id: string } & SiteChange {
  if (request.body === undefined) throw new HttpError(415, 'the body must be JSON, content type application/json');
  const parsed = PutBody.safeParse(request.body, { reportInput: true });
  refuse([...idProblems(request), ...(parsed.success ? [] : bodyProblems(parsed.error, PutBody, ALLOWED))]);
  const { base, store, draft } = parsed.data as z.output<typeof PutBody>;
  return { id: String(request.params['id']), base: { revision: base, store }, draft: draft as SiteChange['draft'] };
}

/** @throws SiteError */
export function deleteRequest(request: Request): { id: string } & SiteChange {
  const { query } = request;
  const { base, store } = query;
  refuse([
    ...idProblems(request),
    ...unknownProblems(query, ['base', 'store']),
    ...(isWhole(base) ? [] : [problem('base', shown(base), 'is no revision', 'the revision that is to be deleted')]),
    ...(store === undefined || typeof store === 'string'
      ? []
      : [problem('store', shown(store), 'is no name of a store', ALLOWED.store)]),
  ]);
  return {
    id: String(request.params['id']),
    base: { revision: Number(base), store: store === undefined ? undefined : String(store) },
    draft: null,
  };
}

/** @throws SiteError */
export function listRequest({ query }: Request): { since: number } {
  const { since } = query;
  refuse([
    ...unknownProblems(query, ['since']),
    ...(since === undefined || isWhole(since)
      ? []
      : [problem('since', shown(since), 'is no whole number', '`latest` of a former list')]),
  ]);
  return { since: Number(since ?? 0) };
}

/** @throws SiteError */
export function idRequest(request: Request): { id: string } {
  refuse(idProblems(request));
  return { id: String(request.params['id']) };
}

/** @throws SiteError */
export function revisionRequest(request: Request): { id: string; revision: number } {
  const { id, revision } = request.params;
  refuse([
    ...idProblems(request),
    ...(isWhole(revision)
      ? []
      : [problem('revision', shown(revision), 'is no whole number', 'a revision of the list of revisions')]),
  ]);
  return { id: String(id), revision: Number(revision) };
}

function idProblems({ params }: Request): Problem[] {
  return SITE_ID.test(String(params['id']))
    ? []
    : [problem('id', shown(params['id']), 'is no id of a site', 'a random UUID (version 4) in small letters')];
}

function unknownProblems(query: object, known: readonly string[]): Problem[] {
  return Object.keys(query)
    .filter((name) => !known.includes(name))
    .map((name) => problem(name, shown(name), 'is an unknown parameter', known.join(', ')));
}

function isWhole(text: unknown): boolean {
  return typeof text === 'string' && WHOLE.test(text);
}

function refuse(problems: readonly Problem[]): void {
  if (problems.length > 0) throw new SiteError(problems);
}
