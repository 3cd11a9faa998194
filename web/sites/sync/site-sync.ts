/**
 * When sites are exchanged with the server: at once when something waits, again and again while the page is looked at, and later
 * each time when it fails. It knows no window; use-site-sync.ts tells it what happens there.
 */
import type { SavedSite } from '../saved-site.ts';
import { isToSend } from './merging.ts';
import { ServerFailure, type ServerSites } from './server-sites.ts';
import { type Known, type Refused, type SiteShelf, syncRound } from './sync-round.ts';

export interface SyncStatus {
  /** Nothing heard yet; no server that keeps sites; no network; a failure that is tried again; one that a person has to mend; all well. */
  readonly kind: 'asking' | 'none' | 'offline' | 'failed' | 'locked' | 'well';
  /** When it was found last that something had been exchanged or nothing was left to exchange. */
  readonly at: Date | null;
  /** What failed, in words; empty unless `kind` is failed or locked. */
  readonly why: string;
  /** Name of the store that the server keeps; null where none is known. */
  readonly store: string | null;
  readonly refused: Refused;
}

export interface SyncSurroundings {
  readonly shelf: SiteShelf;
  readonly server: ServerSites;
  isOnline(): boolean;
  /** Lets one tab work at a time. */
  alone<Result>(work: () => Promise<Result>): Promise<Result>;
}

/** Waiting times after a failure, s: doubled each time. */
const FIRST_WAIT_S = 2;
const LONGEST_WAIT_S = 300;

export class SiteSync {
  readonly #surroundings: SyncSurroundings;
  readonly #listeners = new Set<(status: SyncStatus) => void>();
  #status: SyncStatus = { kind: 'asking', at: null, why: '', store: null, refused: new Map() };
  #known: Known | null = null;
  #running: Promise<void> | null = null;
  #again = false;
  #failures = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** Whether sites changed since the last round, here or in another tab. */
  #stirred = true;

  constructor(surroundings: SyncSurroundings) {
    this.#surroundings = surroundings;
  }

  get status(): SyncStatus {
    return this.#status;
  }

  /** Calls back after every change of the status. */
  onStatus(listener: (status: SyncStatus) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Exchanges now, or once more after the round that is under way. Resolves when there is nothing left to do at once. */
  look(): Promise<void> {
    this.#again = true;
    this.#running ??= this.#work().finally(() => {
      this.#running = null;
      // Asked for when the work had just ended.
      if (this.#again && this.#timer === undefined) void this.look();
    });
    return this.#running;
  }

  /** To be told of the saved sites after each change. What waits is sent, unless a failure has to be waited out. */
  sitesChanged(sites: readonly SavedSite[]): void {
    const { refused } = this.#status;
    if (!sites.some((site) => isToSend(site) && refused.get(site.id)?.edition !== site.edition)) return;
    this.#stirred = true;
    if (this.#timer === undefined) void this.look();
  }

  async #work(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    while (this.#again) {
      this.#again = false;
      if (!this.#surroundings.isOnline()) this.#tell({ kind: 'offline', why: '' });
      else if (!(await this.#round())) return;
    }
  }

  /** Whether the next round may follow at once. */
  async #round(): Promise<boolean> {
    const { shelf, server, alone } = this.#surroundings;
    const { refused } = this.#status;
    try {
      const store = this.#known?.store ?? (await server.store());
      if (store === null) {
        this.#tell({ kind: 'none', why: '', store: null });
        return true;
      }
      const stirred = this.#stirred;
      this.#stirred = false;
      const round = await alone(() => syncRound({ shelf, server, known: this.#known, refused, now: new Date() }));
      this.#known = round;
      this.#failures = 0;
      const at = stirred || round.moved ? new Date() : this.#status.at;
      this.#tell({ kind: 'well', why: '', store: round.store, at });
      return true;
    } catch (error) {
      const isServer = error instanceof ServerFailure;
      // It may come back as another one.
      this.#known = null;
      this.#stirred = true;
      const isLocked = isServer && error.isLocked;
      this.#tell({
        kind: isLocked ? 'locked' : 'failed',
        why: isServer ? error.message : 'the storage of this browser cannot be used',
      });
      if (!isLocked) this.#waitAfterFailure(isServer ? error.retryAfterS : 0);
      return false;
    }
  }

  #waitAfterFailure(askedS: number) {
    const waitS = Math.max(askedS, Math.min(FIRST_WAIT_S * 2 ** this.#failures, LONGEST_WAIT_S));
    this.#failures += 1;
    this.#timer = setTimeout(() => void this.look(), waitS * 1000);
  }

  #tell(change: Partial<SyncStatus>) {
    this.#status = { ...this.#status, ...change };
    for (const listener of this.#listeners) listener(this.#status);
  }
}
