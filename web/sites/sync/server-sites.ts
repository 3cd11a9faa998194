/** The sites that the server keeps, over its API. What it answers is not trusted: anything may stand at that address. */
import { type Draft, isDraft } from '../../site/draft.ts';
import type { Conflict } from '../saved-site.ts';

/** A state of a site on the server; its draft is null where it was deleted. */
export type ServerSite = Conflict;

export interface ServerSummary {
  readonly id: string;
  readonly title: string;
  readonly revision: number;
  readonly changedAt: string;
  readonly deleted: boolean;
}

export interface ServerList {
  readonly store: string;
  /** For the next call. */
  readonly latest: number;
  readonly sites: readonly ServerSummary[];
}

/** What became of a change. */
export type Sent =
  | { readonly kind: 'kept'; readonly site: ServerSite }
  /** Another state stands there; null where the server does not have the site. */
  | { readonly kind: 'conflict'; readonly site: ServerSite | null }
  /** It will never be taken as it is. */
  | { readonly kind: 'refused'; readonly why: string };

export interface ServerSites {
  /** The name of its store; null where there is no server or it keeps no sites. */
  store(): Promise<string | null>;
  /** What changed after a former list, or all. */
  list(since: number): Promise<ServerList>;
  /** Null where the server does not have it. */
  read(id: string): Promise<ServerSite | null>;
  /** A base of null says that the site is new there; a draft of null deletes it. */
  send(id: string, change: { base: number | null; store: string; draft: Draft | null }): Promise<Sent>;
  /** The newest first. */
  revisions(id: string): Promise<readonly ServerSummary[]>;
  revision(id: string, revision: number): Promise<ServerSite | null>;
}

/** Thrown when the server cannot be reached or cannot answer now. */
export class ServerFailure extends Error {
  override readonly name = 'ServerFailure';
  /** How long it wants to be left alone, s; 0 where it did not say. */
  readonly retryAfterS: number;
  /** Whether a person has to sign in first. */
  readonly isLocked: boolean;

  constructor(message: string, { retryAfterS = 0, isLocked = false } = {}) {
    super(message);
    this.retryAfterS = retryAfterS;
    this.isLocked = isLocked;
  }
}

const PATIENCE_MS = 20_000;

type Fetch = (address: string, init?: RequestInit) => Promise<Response>;

/** The API below `root`, an address that ends with a slash. */
export function serverSites(fetch: Fetch, root = './api/'): ServerSites {
  const ask = async (path: string, init: RequestInit = {}): Promise<Answer> => {
    let response: Response;
    let body: unknown;
    try {
      response = await fetch(root + path, { cache: 'no-store', signal: AbortSignal.timeout(PATIENCE_MS), ...init });
      body = await response.json().catch(() => null);
    } catch {
      throw new ServerFailure('the server cannot be reached');
    }
    const { status } = response;
    if (status === 401) throw new ServerFailure('the server asks you to sign in', { isLocked: true });
    if (status === 403) throw new ServerFailure('the server does not let this browser in');
    if (status === 429 || status >= 500) {
      const retryAfterS = Number(response.headers.get('Retry-After')) || 0;
      throw new ServerFailure('the server cannot answer now', { retryAfterS });
    }
    return { status, body: isDraft(body) ? body : {} };
  };
  const siteAt = async (path: string) => {
    const { status, body } = await ask(path);
    return status === 404 ? null : siteFrom(body);
  };

  return {
    async store() {
      const { body } = await ask('health');
      return body['storage'] === true && typeof body['store'] === 'string' ? body['store'] : null;
    },
    async list(since) {
      const { body } = await ask(`sites?since=${since}`);
      const { store, latest, sites } = body;
      if (typeof store !== 'string' || typeof latest !== 'number' || !Array.isArray(sites)) throw strange();
      return { store, latest, sites: sites.map(summaryFrom) };
    },
    read: (id) => siteAt(`sites/${id}`),
    async send(id, { base, store, draft }) {
      // What the server does not have is deleted there.
      if (draft === null && base === null) return { kind: 'conflict', site: null };
      const { status, body } = await (draft === null
        ? ask(`sites/${id}?base=${base}&store=${encodeURIComponent(store)}`, { method: 'DELETE' })
        : ask(`sites/${id}`, {
            method: 'PUT',
            headers: { 'Content-Type': 'application/json' },
            body: JSON.stringify({ base, store, draft }),
          }));
      if (status === 200) return { kind: 'kept', site: siteFrom(body) };
      if (status === 404) return { kind: 'conflict', site: null };
      if (status === 409) {
        const { store: there, current } = body;
        return { kind: 'conflict', site: isDraft(current) ? siteFrom({ ...current, store: there }) : null };
      }
      return { kind: 'refused', why: reasonFrom(body) };
    },
    async revisions(id) {
      const { status, body } = await ask(`sites/${id}/revisions`);
      const { revisions } = body;
      if (status === 404) return [];
      if (!Array.isArray(revisions)) throw strange();
      return revisions.map(summaryFrom);
    },
    revision: (id, revision) => siteAt(`sites/${id}/revisions/${revision}`),
  };
}

interface Answer {
  readonly status: number;
  readonly body: Draft;
}

const strange = () => new ServerFailure('the server answers what this page does not understand');

function siteFrom({ store, revision, draft, changedAt }: Draft): ServerSite {
  if (typeof store !== 'string' || typeof revision !== 'number' || typeof changedAt !== 'string') throw strange();
  if (draft !== null && !isDraft(draft)) throw strange();
  return { store, revision, draft, changedAt };
}

function summaryFrom(value: unknown): ServerSummary {
  const { id, title, revision, changedAt, deleted } = isDraft(value) ? value : ({} as Draft);
  if (typeof id !== 'string' || typeof revision !== 'number' || typeof changedAt !== 'string') throw strange();
  return { id, title: typeof title === 'string' ? title : '', revision, changedAt, deleted: deleted === true };
}

/** The server's own words, problem by problem. */
function reasonFrom({ error, problems }: Draft): string {
  const messages = Array.isArray(problems) ? problems.map((problem) => isDraft(problem) && problem['message']) : [];
  const words = messages.filter((message) => typeof message === 'string');
  return words.length > 0 ? words.join('; ') : typeof error === 'string' ? error : 'it does not say why';
}
