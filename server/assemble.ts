/** Puts the parts of a server together as its settings say. */
import type { Express } from 'express';
import { isLoopback } from './access/loopback.ts';
import { openTokens, type Tokens } from './access/tokens.ts';
import { createApp } from './app.ts';
import type { Surroundings } from './command.ts';
import { openComputePool } from './compute/pool.ts';
import { openStore } from './data/store.ts';
import type { Log } from './logs/levels.ts';
import { makeLog } from './logs/log.ts';
import { makeMetrics } from './metrics/metrics.ts';
import { openScreenings } from './screenings/jobs.ts';
import type { ServerSettings } from './settings.ts';

export interface Assembled {
  readonly app: Express;
  readonly log: Log;
  /** The token that was made because there was none; it is told this once. */
  readonly firstToken: string | undefined;
  /** Whether a token is asked for. */
  readonly guarded: boolean;
  /** Where a damaged database was put, in whose place another was begun. */
  readonly keptAside: string | null;
  /** Stops what goes on by itself, so that its listeners keep nobody waiting: screenings and their events. */
  stop(): Promise<void>;
  /** After `stop`. */
  close(): Promise<void>;
}

/** @throws StoreError */
export function assemble(settings: ServerSettings, { webDir }: Surroundings): Assembled {
  const { host, proxies, https, workers, waiting, limitS, perMinute, tableMb } = settings;
  const log = makeLog(settings.log);
  const store = openStore(settings.dataDir);
  if (store.keptAside !== null) log.error('damaged database kept aside');
  // What a proxy passes on comes from anywhere, whatever the server itself listens on.
  const guarded = !isLoopback(host) || proxies > 0;
  const tokens = guarded ? openTokens(store) : undefined;
  const firstToken = tokens && firstOf(tokens);
  if (firstToken !== undefined) log.info('first token made');
  const screenings = openScreenings(store, {
    mostTableBytes: tableMb * 1e6,
    workers,
    onFailed: (screening, error) => log.error({ screening, err: error }, 'screening failed'),
  });
  const compute = openComputePool({
    threads: workers,
    room: waiting,
    limitS,
    onLost: (error) => log.error({ err: error }, 'thread lost'),
  });
  const metrics = makeMetrics({ compute, store, ofProcess: true });
  const access = { tokens, thisMachineOnly: !guarded, https };
  const app = createApp({ webDir, store, screenings, compute, metrics, access, log, proxies, perMinute });
  return {
    app,
    log,
    firstToken,
    guarded,
    keptAside: store.keptAside,
    stop: () => screenings.stop(),
    close: async () => {
      await screenings.stop();
      await compute.close();
      store.close();
    },
  };
}

/** A token where there is none that is valid; the others go on. */
function firstOf(tokens: Tokens): string | undefined {
  return tokens.list().some(({ revokedAt }) => revokedAt === null) ? undefined : tokens.make('first');
}
