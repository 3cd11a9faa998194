/** The saved sites in the browser's database, shared by all tabs. Every call may fail: storage can be blocked or full. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { SavedSite } from './saved-site.ts';

interface Schema extends DBSchema {
  sites: { key: string; value: SavedSite };
}

const NAME = 'shadeside';
const VERSION = 1;

/** What a change makes of a site: another state, null to take it out, undefined to leave it as it is. */
export type SiteChange = (saved: SavedSite | undefined) => SavedSite | null | undefined;

export class SiteDatabase {
  readonly #tabs = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('shadeside.sites');
  readonly #listeners = new Set<() => void>();
  #opened: Promise<IDBPDatabase<Schema>> | null = null;

  constructor() {
    this.#tabs?.addEventListener('message', () => this.#tell());
  }

  async all(): Promise<SavedSite[]> {
    return (await this.#database()).getAll('sites');
  }

  /**
   * Changes one site in one step that no other tab can come between, and gives back what is saved now. Resolves only
   * when that is on disk.
   */
  async change(id: string, change: SiteChange): Promise<SavedSite | undefined> {
    const database = await this.#database();
    const step = database.transaction('sites', 'readwrite', { durability: 'strict' });
    const former = await step.store.get(id);
    const next = change(former);
    if (next === null) await step.store.delete(id);
    else if (next !== undefined) await step.store.put(next);
    await step.done;
    if (next === undefined) return former;
    this.#tabs?.postMessage('changed');
    this.#tell();
    return next ?? undefined;
  }

  /** Calls back after every change, of this tab and others. */
  onChange(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  #tell() {
    for (const listener of this.#listeners) listener();
  }

  #database(): Promise<IDBPDatabase<Schema>> {
    this.#opened ??= openDB<Schema>(NAME, VERSION, {
      upgrade: (database) => {
        database.createObjectStore('sites', { keyPath: 'id' });
      },
      // A tab with a newer page waits for this one to let go.
      blocking: (_current, _blocked, event) => {
        (event.target as IDBDatabase).close();
        this.#opened = null;
      },
      terminated: () => {
        this.#opened = null;
      },
    }).catch((error) => {
      this.#opened = null;
      throw error;
    });
    return this.#opened;
  }
}

/** The database of this page. */
export const siteDatabase = new SiteDatabase();

/** Why the browser did not save, in words. */
export function storageTrouble(error: unknown): string {
  const full = error instanceof DOMException && error.name === 'QuotaExceededError';
  const what = full ? 'the storage of this browser is full' : 'this browser keeps no data for this page';
  return `Not saved: ${what}. The form still holds the site; save it as a file.`;
}
