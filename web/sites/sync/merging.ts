/**
 * What becomes of a site in this browser when something is heard of it on the server. Pure; each is applied in one step of the
 * browser's database to the state of that moment. The rule of all: a state that was changed here and one that was changed
 * there never replace each other without a person's word.
 */
import type { Draft } from '../../site/draft.ts';
import { nameOf, type SavedSite, sameDraft } from '../saved-site.ts';
import type { SiteChange } from '../site-database.ts';
import type { ServerSite, ServerSummary } from './server-sites.ts';

/** What a site says: its draft, or null where it was deleted. */
export function contentOf({ deleted, draft }: SavedSite): Draft | null {
  return deleted ? null : draft;
}

/** Whether a state of the server is one that this browser has not dealt with. */
export function isNews(saved: SavedSite | undefined, store: string, summary: ServerSummary): boolean {
  if (saved === undefined) return !summary.deleted;
  return ![saved.server, saved.conflict].some(
    (known) => known !== null && known.store === store && known.revision === summary.revision,
  );
}

/** A state of the server comes in. */
export function taken(saved: SavedSite | undefined, id: string, there: ServerSite): ReturnType<SiteChange> {
  const { store, revision, draft, changedAt } = there;
  const server = { store, revision };
  if (saved === undefined) {
    if (draft === null) return undefined;
    return { id, draft, edition: 1, changedAt, verdict: '', deleted: false, server, waits: false, conflict: null };
  }
  const ofHere = saved.server?.store === store ? saved.server : null;
  // What is here stems from that very state.
  if (ofHere?.revision === revision) return undefined;
  if (sameDraft(contentOf(saved), draft)) return { ...saved, server, waits: false, conflict: null };
  // Nothing was changed here, and there it went on: a server that went back to an earlier state has lost something that is here.
  if (!saved.waits && ofHere !== null && ofHere.revision < revision) return replaced(saved, there);
  return { ...saved, waits: true, conflict: there };
}

function replaced(saved: SavedSite, { store, revision, draft, changedAt }: ServerSite): SavedSite | null {
  if (draft === null) return null;
  return {
    ...saved,
    draft,
    edition: saved.edition + 1,
    changedAt,
    verdict: '',
    deleted: false,
    server: { store, revision },
    waits: false,
    conflict: null,
  };
}

/** How long a deletion that the server knows of is remembered here, so that taking it back goes on from there. */
const REMEMBER_DELETED_MS = 3_600_000;

/** A store does not list a site of this browser: it has to be sent again. */
export function notListed(saved: SavedSite | undefined): ReturnType<SiteChange> {
  if (saved === undefined || (saved.server === null && saved.conflict === null)) return undefined;
  // What was deleted here and is not there is gone.
  if (saved.deleted) return null;
  return { ...saved, server: null, waits: true, conflict: null };
}

/** Takes out marks of deletions that nobody will take back any more. */
export function withoutOldMark(saved: SavedSite | undefined, now: Date): ReturnType<SiteChange> {
  if (saved === undefined || !isOldMark(saved, now)) return undefined;
  return null;
}

export function isOldMark({ deleted, waits, changedAt }: SavedSite, now: Date): boolean {
  return deleted && !waits && now.getTime() - Date.parse(changedAt) > REMEMBER_DELETED_MS;
}

/** The server took what was sent; it may have been edited or deleted here since. */
export function accepted(saved: SavedSite | undefined, sent: SavedSite, there: ServerSite): ReturnType<SiteChange> {
  const server = { store: there.store, revision: there.revision };
  // Taken out here before anybody knew that the server has it: a mark tells the server.
  if (saved === undefined) return { ...sent, deleted: true, server, waits: true, conflict: null };
  const { conflict } = saved;
  // Another tab may have heard of a still later state.
  if (conflict?.store === server.store && conflict.revision > server.revision) return { ...saved, server };
  return { ...saved, server, waits: saved.edition !== sent.edition, conflict: null };
}

/** What was sent met another state on the server, or none. */
export function opposed(saved: SavedSite | undefined, id: string, there: ServerSite | null): ReturnType<SiteChange> {
  if (there !== null) return taken(saved, id, there);
  if (saved?.deleted) return null;
  return saved && { ...saved, server: null, waits: true, conflict: null };
}

/** What a person chose between the two states of a conflict. */
export type Choice = 'mine' | 'theirs' | 'both';

/** Null where it was decided from a state that is not the present one any more. */
export function decided(
  saved: SavedSite | undefined,
  shown: SavedSite,
  choice: Choice,
): { readonly site: SavedSite | null } | null {
  const { conflict } = shown;
  if (saved === undefined || conflict === null || saved.edition !== shown.edition) return null;
  if (saved.conflict?.store !== conflict.store || saved.conflict.revision !== conflict.revision) return null;
  // To keep both leaves this id to theirs; mine goes on under another.
  if (choice !== 'mine') return { site: replaced(saved, conflict) };
  const { store, revision } = conflict;
  return { site: { ...saved, server: { store, revision }, waits: true, conflict: null } };
}

/** Whether a site is to be sent: not while a person has to choose. */
export function isToSend({ waits, conflict }: SavedSite): boolean {
  return waits && conflict === null;
}

/** The sites that a person has to choose a state of, by name. */
export function inConflict(sites: readonly SavedSite[]): SavedSite[] {
  return sites.filter(({ conflict }) => conflict !== null).sort((a, b) => (nameOf(a.draft) < nameOf(b.draft) ? -1 : 1));
}
