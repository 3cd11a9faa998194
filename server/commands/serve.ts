import type { Command, Surroundings } from '../command.ts';
import { programName } from '../program-name.ts';
import {
  DEFAULT_DATA,
  DEFAULT_HOST,
  DEFAULT_LIMIT_S,
  DEFAULT_PORT,
  DEFAULT_RATE,
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
                [--proxy N] [--https yes|no] [--rate N] [--log LEVEL]

Serves the page and the API until Ctrl+C or a termination signal.

  --port      0 to 65535; ${DEFAULT_PORT} when left out, 0 takes any free port
  --host      the address to listen on; ${DEFAULT_HOST} when left out, which only
              this machine reaches. 0.0.0.0 lets the network in: the API then
              asks for a token, which is printed at the first start
  --data      the folder that sites and screenings are kept in; it is made
              where it is missing; ${DEFAULT_DATA} when left out
  --workers   threads that work on rankings, days and advice, and as many on a
              screening; one for each processor when left out
  --waiting   requests that may wait for one of them, ${DEFAULT_WAITING} when left out;
              what is beyond is told to come again later
  --limit     seconds that one request may be worked on, ${DEFAULT_LIMIT_S} when left out
  --table-mb  largest table that may be uploaded for a screening, MB;
              ${DEFAULT_TABLE_MB} when left out
  --proxy     how many reverse proxies stand before the server, 0 when left
              out; with one, a token is asked for, whatever the host
  --https     yes where people reach it by https: cookies then travel by
              nothing else, and browsers are told to stay with https
  --rate      API requests a minute from one address, ${DEFAULT_RATE} when left out, 0 for
              any number
  --log       silent, error, warn, info or debug: what goes to stderr as JSON

What is left out may stand in a variable, such as SHADESIDE_PORT or
SHADESIDE_DATA.`,
  run: async (args, surroundings) => {
    const settings = readServerSettings('serve', args, process.env);
    return serveUntilStopped(settings, [settings.port ?? DEFAULT_PORT], surroundings);
  },
};

const DAMAGED =
  'The database was damaged. A new one was begun; sites that browsers hold are sent again. The damaged one is kept as';

/** Listens on the first free one of `ports`, prints the address, and gives back the exit code once stopped. */
export async function serveUntilStopped(
  settings: ServerSettings,
  ports: readonly number[],
  surroundings: Surroundings,
): Promise<number> {
  // Loaded here, so that the other commands start without a web server.
  const [{ assemble }, { listenOnFirst, ListenError, stopOnSignal }, { StoreError }] = await Promise.all([
    import('../assemble.ts'),
    import('../listen.ts'),
    import('../data/store.ts'),
  ]);
  try {
    const { app, log, firstToken, guarded, keptAside, stop, close } = assemble(settings, surroundings);
    if (keptAside !== null) process.stderr.write(`${DAMAGED} ${keptAside}\n`);
    try {
      const listening = await listenOnFirst(app, { host: settings.host, ports });
      process.stdout.write(`${welcome(listening.url, { firstToken, guarded })}\n`);
      log.info({ guarded, workers: settings.workers }, 'listening');
      await stopOnSignal({ ...listening, stop: async () => void (await Promise.all([stop(), listening.stop()])) });
      log.info('stopped');
    } finally {
      await close();
    }
    return 0;
  } catch (error) {
    if (!(error instanceof ListenError || error instanceof StoreError)) throw error;
    process.stderr.write(`${error.message}\n`);
    return 1;
  }
}

function welcome(url: string, { firstToken, guarded }: { firstToken: string | undefined; guarded: boolean }): string {
  const lines = [`Shadeside is at ${url} – Ctrl+C stops it.`];
  if (firstToken !== undefined) {
    lines.push(`Token for others than this machine, shown this once: ${firstToken}`);
    lines.push(
      `Enter it in the page, or send it as Authorization: Bearer TOKEN. ${programName()} token new makes more.`,
    );
  } else if (guarded) {
    lines.push(
      `The API asks for a token; ${programName()} token list shows which there are, ${programName()} token new makes one.`,
    );
  }
  return lines.join('\n');
}
