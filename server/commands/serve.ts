import type { Command, Surroundings } from '../command.ts';
import {
  DEFAULT_DATA,
  DEFAULT_HOST,
  DEFAULT_LIMIT_S,
  DEFAULT_PORT,
  DEFAULT_TABLE_MB,
  DEFAULT_WAITING,
  readServerSettings,
  type ServerSettings,
} from '../settings.ts';

/** `shadeside serve`: the page and the API over HTTP until it is stopped. */
export const serve: Command = {
  summary: 'serves the page and the API on this machine',
  help: `shadeside serve [--port N] [--host H] [--data DIR]
                [--workers N] [--waiting N] [--limit S] [--table-mb N]

Serves the page and the API until Ctrl+C or a termination signal.

  --port      0 to 65535; ${DEFAULT_PORT} when left out, 0 takes any free port
  --host      the address to listen on; ${DEFAULT_HOST} when left out, which only
              this machine reaches. 0.0.0.0 lets the network in: anyone there
              can then use it, since it asks for no password.
  --data      the folder that sites and screenings are kept in; it is made
              where it is missing; ${DEFAULT_DATA} when left out
  --workers   threads that work on rankings, days and advice, and as many on a
              screening; one for each processor when left out
  --waiting   requests that may wait for one of them, ${DEFAULT_WAITING} when left out;
              what is beyond is told to come again later
  --limit     seconds that one request may be worked on, ${DEFAULT_LIMIT_S} when left out
  --table-mb  largest table that may be uploaded for a screening, MB;
              ${DEFAULT_TABLE_MB} when left out

What is left out may stand in a variable, such as SHADESIDE_PORT or
SHADESIDE_DATA.`,
  run: async (args, surroundings) => {
    const settings = readServerSettings('serve', args, process.env);
    return serveUntilStopped(settings, [settings.port ?? DEFAULT_PORT], surroundings);
  },
};

/** Listens on the first free one of `ports`, prints the address, and gives back the exit code once stopped. */
export async function serveUntilStopped(
  { host, dataDir, workers, waiting, limitS, tableMb }: ServerSettings,
  ports: readonly number[],
  { webDir }: Surroundings,
): Promise<number> {
  // Loaded here, so that the other commands start without a web server.
  const [
    { createApp },
    { openComputePool },
    { listenOnFirst, ListenError, stopOnSignal },
    { makeMetrics },
    { openStore, StoreError },
    { openScreenings },
  ] = await Promise.all([
    import('../app.ts'),
    import('../compute/pool.ts'),
    import('../listen.ts'),
    import('../metrics/metrics.ts'),
    import('../data/store.ts'),
    import('../screenings/jobs.ts'),
  ]);
  try {
    const store = openStore(dataDir);
    const screenings = openScreenings(store, { mostTableBytes: tableMb * 1e6, workers });
    const compute = openComputePool({ threads: workers, room: waiting, limitS });
    const metrics = makeMetrics({ compute, store, ofProcess: true });
    try {
      const listening = await listenOnFirst(createApp({ webDir, store, screenings, compute, metrics }), {
        host,
        ports,
      });
      process.stdout.write(`Shadeside is at ${listening.url} – Ctrl+C stops it.\n`);
      // Screenings stop at once: their events end, and their listeners do not keep the server waiting.
      const stop = async () => void (await Promise.all([screenings.stop(), listening.stop()]));
      await stopOnSignal({ ...listening, stop });
    } finally {
      await screenings.stop();
      await compute.close();
      store.close();
    }
    return 0;
  } catch (error) {
    if (!(error instanceof ListenError || error instanceof StoreError)) throw error;
    process.stderr.write(`${error.message}\n`);
    return 1;
  }
}
