/** One exchange of sites between this browser and the server: what is new there comes in, what waits here goes out. */
import type { SavedSite } from '../saved-site.ts';
import type { SiteChange } from '../site-database.ts';
import {
  accepted,
  contentOf,
  isNews,
  isOldMark,
  isToSend,
  notListed,
  opposed,
  taken,
  withoutOldMark,
} from './merging.ts';
import type { ServerSites, ServerSummary } from './server-sites.ts';

/** The saved sites of this browser. */
export interface SiteShelf {
  all(): Promise<SavedSite[]>;
  change(id: string, change: SiteChange): Promise<SavedSite | undefined>;
}

/** How far a store is known. */
export interface Known {
  readonly store: string;
  readonly latest: number;
}

/** Editions that the server will never take, by id, with its reason. */
export type Refused = Map<string, { readonly edition: number; readonly why: string }>;

export interface Round extends Known {
  /** Whether anything was exchanged. */
  readonly moved: boolean;
}

interface RoundOptions {
  readonly shelf: SiteShelf;
  readonly server: ServerSites;
  /** Where the last round ended; null for the first. */
  readonly known: Known | null;
  readonly refused: Refused;
  readonly now: Date;
}

/** Requests under way at a time. */
const AT_ONCE = 4;

/**
 * Does one round and gives back where it ended.
 * @throws ServerFailure when the server cannot answer; what was exchanged by then stays exchanged
 */
export async function syncRound({ shelf, server, known, refused, now }: RoundOptions): Promise<Round> {
  let listing = await server.list(known?.latest ?? 0);
  const isFull = known === null || listing.store !== known.store;
  if (isFull && known !== null) listing = await server.list(0);
  const { store, latest, sites } = listing;

  const here = new Map((await shelf.all()).map((saved) => [saved.id, saved]));
  const news = sites.filter((summary) => isNews(here.get(summary.id), store, summary));
  await eachOf(news, (summary) => fetchOne(shelf, server, store, summary));

  if (isFull) {
    const listed = new Set(sites.map(({ id }) => id));
    for (const saved of here.values()) {
      if (!listed.has(saved.id) && (saved.server ?? saved.conflict) !== null) await shelf.change(saved.id, notListed);
      else if (isOldMark(saved, now)) await shelf.change(saved.id, (former) => withoutOldMark(former, now));
    }
  }

  const toSend = (await shelf.all()).filter(
    (saved) => isToSend(saved) && refused.get(saved.id)?.edition !== saved.edition,
  );
  for (const saved of toSend) await sendOne({ shelf, server, store, refused }, saved);
  return { store, latest, moved: news.length + toSend.length > 0 };
}

async function fetchOne(shelf: SiteShelf, server: ServerSites, store: string, summary: ServerSummary): Promise<void> {
  const { id, revision, changedAt, deleted } = summary;
  const there = deleted ? { store, revision, draft: null, changedAt } : await server.read(id);
  if (there !== null) await shelf.change(id, (saved) => taken(saved, id, there));
}

async function sendOne(
  { shelf, server, store, refused }: Pick<RoundOptions, 'shelf' | 'server' | 'refused'> & { store: string },
  saved: SavedSite,
): Promise<void> {
  const { id, edition } = saved;
  const base = saved.server?.store === store ? saved.server.revision : null;
  const sent = await server.send(id, { base, store, draft: contentOf(saved) });
  if (sent.kind === 'kept') await shelf.change(id, (now) => accepted(now, saved, sent.site));
  else if (sent.kind === 'conflict') await shelf.change(id, (now) => opposed(now, id, sent.site));
  else refused.set(id, { edition, why: sent.why });
}

/** Works on all, a few at a time; after the first failure none is begun any more, and those under way come to their end. */
async function eachOf<Item>(items: readonly Item[], work: (item: Item) => Promise<void>): Promise<void> {
  const queue = items.values();
  const failures: unknown[] = [];
  const worker = async () => {
    for (const item of queue) {
      await work(item).catch((error) => failures.push(error));
      if (failures.length > 0) return;
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
  if (failures.length > 0) throw failures[0];
}
