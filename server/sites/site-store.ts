/**
 * Sites in the database of a data folder, each with all its revisions. A change names the revision that it was made from and is
 * taken only where that is still the current one: nothing is overwritten that its author has not seen.
 */
import { isDeepStrictEqual } from 'node:util';
import type { Store } from '../data/store.ts';

/** A site as somebody entered it, complete or not. */
export type SiteDraft = Readonly<Record<string, unknown>>;

export interface SiteSummary {
  readonly id: string;
  /** Empty where it has none or was deleted. */
  readonly title: string;
  /** Counts from 1 with each change of that site. */
  readonly revision: number;
  readonly changedAt: string;
  readonly deleted: boolean;
}

export interface SiteState extends SiteSummary {
  /** Null where it was deleted. */
  readonly draft: SiteDraft | null;
}

/** What a change was made from. */
export interface Base {
  /** Null for a site that was not on the server. */
  readonly revision: number | null;
  /** The store that the revision is from; left out, this one. */
  readonly store?: string | undefined;
}

export interface SiteChange {
  readonly base: Base;
  /** Null deletes the site. */
  readonly draft: SiteDraft | null;
}

/** The state after a change, or the one that stands in its way; null where the store does not have the site. */
export type Outcome =
  | { readonly kind: 'kept'; readonly state: SiteState }
  | { readonly kind: 'conflict'; readonly state: SiteState | null }
  | { readonly kind: 'unknown' };

export interface SiteStore {
  /** Current states, without drafts, of what changed after `since`; with `latest` for the next call. */
  list(since: number): { readonly latest: number; readonly sites: readonly SiteSummary[] };
  read(id: string): SiteState | undefined;
  /** The newest first; empty where the store does not have the site. */
  revisions(id: string): readonly SiteSummary[];
  revision(id: string, revision: number): SiteState | undefined;
  change(id: string, change: SiteChange): Outcome;
}

interface SummaryRow {
  readonly id: string;
  readonly revision: number;
  readonly title: string;
  readonly changedAt: string;
  readonly deleted: number;
}

interface StateRow extends SummaryRow {
  readonly draft: string | null;
}

const SUMMARY = 'site_id AS id, r.revision, title, changed_at AS changedAt, draft IS NULL AS deleted';
/** The current revision of each site. */
const CURRENT = 'site JOIN site_revision r ON r.site_id = site.id AND r.revision = site.revision';

export function siteStore(
  { id: storeId, db }: Pick<Store, 'id' | 'db'>,
  now: () => Date = () => new Date(),
): SiteStore {
  const latest = db.prepare<[], { seq: number }>('SELECT coalesce(max(seq), 0) AS seq FROM site_revision');
  const summaries = db.prepare<[number], SummaryRow>(`SELECT ${SUMMARY} FROM ${CURRENT} WHERE seq > ? ORDER BY seq`);
  const current = db.prepare<[string], StateRow>(`SELECT ${SUMMARY}, draft FROM ${CURRENT} WHERE site.id = ?`);
  const history = db.prepare<[string], SummaryRow>(
    `SELECT ${SUMMARY} FROM site_revision r WHERE site_id = ? ORDER BY revision DESC`,
  );
  const former = db.prepare<[string, number], StateRow>(
    `SELECT ${SUMMARY}, draft FROM site_revision r WHERE site_id = ? AND revision = ?`,
  );
  const point = db.prepare<[string, number]>(
    'INSERT INTO site (id, revision) VALUES (?, ?) ON CONFLICT (id) DO UPDATE SET revision = excluded.revision',
  );
  const append = db.prepare<[string, number, string, string | null, string]>(
    'INSERT INTO site_revision (site_id, revision, title, draft, changed_at) VALUES (?, ?, ?, ?, ?)',
  );

  const read = (id: string) => stateFrom(current.get(id));

  const change = db.transaction((id: string, { base, draft: given }: SiteChange): Outcome => {
    const state = read(id);
    // As it will be read: JSON has no -0 and nothing beyond the largest number.
    const text = given === null ? null : JSON.stringify(given);
    const draft = draftFrom(text);
    if (state === undefined) {
      if (draft === null) return { kind: 'unknown' };
      if (base.revision !== null && isOfHere(base)) return { kind: 'conflict', state: null };
    } else {
      // The same again: its answer may have been lost on the way.
      if (isDeepStrictEqual(state.draft, draft)) return { kind: 'kept', state };
      if (!isOfHere(base) || base.revision !== state.revision) return { kind: 'conflict', state };
    }
    const revision = (state?.revision ?? 0) + 1;
    const changedAt = now().toISOString();
    const title = draft === null ? '' : titleOf(draft);
    point.run(id, revision);
    append.run(id, revision, title, text, changedAt);
    return { kind: 'kept', state: { id, title, revision, changedAt, deleted: draft === null, draft } };
  });

  const isOfHere = (base: Base) => base.store === undefined || base.store === storeId;

  return {
    list: db.transaction((since: number) => {
      const { seq } = latest.get() ?? { seq: 0 };
      // A number that was never given out comes from another store.
      return { latest: seq, sites: summaries.all(since > seq ? 0 : since).map(summaryFrom) };
    }),
    read,
    revisions: (id) => history.all(id).map(summaryFrom),
    revision: (id, revision) => stateFrom(former.get(id, revision)),
    change: (id, wanted) => change.immediate(id, wanted),
  };
}

function titleOf({ title }: SiteDraft): string {
  return typeof title === 'string' ? title.trim() : '';
}

function summaryFrom({ deleted, ...row }: SummaryRow): SiteSummary {
  return { ...row, deleted: deleted === 1 };
}

function stateFrom(row: StateRow | undefined): SiteState | undefined {
  if (row === undefined) return undefined;
  const { draft, ...summary } = row;
  return { ...summaryFrom(summary), draft: draftFrom(draft) };
}

function draftFrom(text: string | null): SiteDraft | null {
  return text === null ? null : (JSON.parse(text) as SiteDraft);
}
