/** A site saved in this browser, and what saving, renaming and deleting make of it. Plain data; the database is apart. */
import { type Draft, textAt, withValue } from '../site/draft.ts';
import type { WorkingCopy } from './working-copies.ts';

/** A state of a site that the server holds. */
export interface ServerState {
  /** The server's own name for its collection; another data folder has another one, and its revisions mean nothing here. */
  readonly store: string;
  readonly revision: number;
}

/** What the server holds where it is not what this browser's state stems from. */
export interface Conflict extends ServerState {
  /** Null where it was deleted there. */
  readonly draft: Draft | null;
  readonly changedAt: string;
}

export interface SavedSite {
  readonly id: string;
  readonly draft: Draft;
  /** Grows by one with each change in this browser; tells tabs apart that saved meanwhile. */
  readonly edition: number;
  readonly changedAt: string;
  /** What the ranking said when it was saved; empty where nobody looked. */
  readonly verdict: string;
  /** Deleted here, and kept until a server that has it knows. */
  readonly deleted: boolean;
  /** The state of the server that the draft stems from; null where it never was there. */
  readonly server: ServerState | null;
  /** Whether a server has yet to hear of it. */
  readonly waits: boolean;
  readonly conflict: Conflict | null;
}

export const UNTITLED = 'Untitled site';

export function nameOf(draft: Draft): string {
  return textAt(draft, 'title').trim() || UNTITLED;
}

/** Whether a copy was made from the state that is saved, so that saving it overwrites nothing that was not seen. */
export function mayOverwrite(saved: SavedSite | undefined, copy: WorkingCopy): boolean {
  return saved === undefined || saved.deleted || saved.edition === copy.base || sameDraft(saved.draft, copy.draft);
}

/** The site as it is saved from a working copy. */
export function savedFrom(
  saved: SavedSite | undefined,
  { id, draft }: Pick<WorkingCopy, 'id' | 'draft'>,
  verdict: string,
  now: Date,
): SavedSite {
  return {
    id,
    draft,
    edition: (saved?.edition ?? 0) + 1,
    changedAt: now.toISOString(),
    verdict,
    deleted: false,
    server: saved?.server ?? null,
    waits: true,
    conflict: saved?.conflict ?? null,
  };
}

export function renamed(saved: SavedSite, title: string, now: Date): SavedSite {
  return savedFrom(saved, { id: saved.id, draft: withValue(saved.draft, 'title', title) }, saved.verdict, now);
}

/** What is left of a deleted site: a mark for the server, or nothing where no server has it. */
export function deletedSite(saved: SavedSite, now: Date): SavedSite | null {
  if (saved.server === null && saved.conflict === null) return null;
  return {
    ...saved,
    edition: saved.edition + 1,
    changedAt: now.toISOString(),
    deleted: true,
    waits: true,
  };
}

/**
 * A deleted site back in the list. `left` is the mark that its deletion left, which knows how far the server is; what another tab
 * has saved under the same name since stays as it is.
 */
export function restoredSite(former: SavedSite, left: SavedSite | undefined): SavedSite {
  if (left !== undefined && !left.deleted) return left;
  const { edition, server, conflict } = left ?? former;
  return { ...former, edition: edition + 1, server, conflict, waits: true };
}

/** The working copy that a saved site opens as. */
export function copyOfSaved({ id, draft, edition, changedAt }: SavedSite): WorkingCopy {
  return { id, draft, base: edition, changed: false, editedAt: changedAt };
}

/** The latest first. */
export function listed(sites: readonly SavedSite[]): SavedSite[] {
  return sites.filter(({ deleted }) => !deleted).sort((a, b) => (a.changedAt < b.changedAt ? 1 : -1));
}

/** Whether two drafts say the same, in whatever order their fields stand. */
export function sameDraft(a: unknown, b: unknown): boolean {
  return canonical(a) === canonical(b);
}

function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}
