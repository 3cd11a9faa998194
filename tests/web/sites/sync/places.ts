/** A browser's shelf of sites and a server's store in memory, for exchanges between them. */
import { randomUUID } from 'node:crypto';
import Database from 'better-sqlite3';
import { MIGRATIONS } from '../../../../server/data/migrations.ts';
import { type SiteStore, siteStore } from '../../../../server/sites/site-store.ts';
import type { SavedSite } from '../../../../web/sites/saved-site.ts';
import type { ServerSites } from '../../../../web/sites/sync/server-sites.ts';
import type { SiteShelf } from '../../../../web/sites/sync/sync-round.ts';

/** Ids as the page makes them, told apart by their last digit. */
export const siteId = (index: number) => `0b1c2d3e-4f50-4a6b-8c7d-9e0f1a2b3c4${index}`;

export class MemoryShelf implements SiteShelf {
  readonly sites = new Map<string, SavedSite>();

  async all() {
    return [...this.sites.values()];
  }

  async change(id: string, change: Parameters<SiteShelf['change']>[1]) {
    const next = change(this.sites.get(id));
    if (next === null) this.sites.delete(id);
    else if (next !== undefined) this.sites.set(id, next);
    return this.sites.get(id);
  }
}

export interface MemoryServer extends ServerSites {
  readonly id: string;
  readonly sites: SiteStore;
  /** Runs between what the server did and the browser's hearing of it, once. */
  meanwhile: (() => Promise<unknown> | unknown) | null;
}

/** What the real store does, without the way over HTTP. */
export function memoryServer(): MemoryServer {
  const db = new Database(':memory:');
  for (const migration of MIGRATIONS) db.exec(migration);
  const id = randomUUID();
  const sites = siteStore({ id, db });
  const server: MemoryServer = {
    id,
    sites,
    meanwhile: null,
    store: async () => id,
    list: async (since) => ({ store: id, ...sites.list(since) }),
    read: async (site) => inStore(sites.read(site)),
    async send(site, { base, store, draft }) {
      if (draft === null && base === null) return { kind: 'conflict', site: null };
      const outcome = sites.change(site, { base: { revision: base, store }, draft });
      const { meanwhile } = server;
      server.meanwhile = null;
      await meanwhile?.();
      if (outcome.kind === 'unknown') return { kind: 'conflict', site: null };
      if (outcome.kind === 'conflict') return { kind: 'conflict', site: inStore(outcome.state ?? undefined) };
      return { kind: 'kept', site: { store: id, ...outcome.state } };
    },
    revisions: async (site) => sites.revisions(site),
    revision: async (site, revision) => inStore(sites.revision(site, revision)),
  };
  const inStore = (state: ReturnType<SiteStore['read']>) => (state === undefined ? null : { store: id, ...state });
  return server;
}
