import { BadInput } from '../bad-input.ts';
import { type Command, readArgs, type Surroundings } from '../command.ts';

export const DEFAULT_PORT = 8046;
export const DEFAULT_HOST = '127.0.0.1';

const OPTIONS = { port: { type: 'string' }, host: { type: 'string' } } as const;

/** `shadeside serve`: the page and the API over HTTP until it is stopped. */
export const serve: Command = {
  summary: 'serves the page and the API on this machine',
  help: `shadeside serve [--port N] [--host H]

Serves the page and the API until Ctrl+C or a termination signal.

  --port      0 to 65535; ${DEFAULT_PORT} when left out, 0 takes any free port
  --host      the address to listen on; ${DEFAULT_HOST} when left out, which only
              this machine reaches. 0.0.0.0 lets the network in: anyone there
              can then use it, since it asks for no password.`,
  run: async (args, surroundings) => {
    const { port, host } = readListenArgs('serve', args);
    return serveUntilStopped({ host, ports: [port ?? DEFAULT_PORT] }, surroundings);
  },
};

/**
 * Reads `--port` and `--host`; the port is undefined when left out.
 * @throws BadInput
 */
export function readListenArgs(command: string, args: string[]): { port: number | undefined; host: string } {
  const { values } = readArgs(command, args, OPTIONS, 0);
  const { port, host = DEFAULT_HOST } = values;
  if (port !== undefined && !(/^\d{1,5}$/.test(port) && Number(port) <= 65535)) {
    throw new BadInput([`${command}: --port ${port}: allowed are whole numbers from 0 to 65535`]);
  }
  if (host.trim() === '') throw new BadInput([`${command}: --host is empty; an address is needed`]);
  return { port: port === undefined ? undefined : Number(port), host };
}

/** Listens on the first free one of `ports`, prints the address, and gives back the exit code once stopped. */
export async function serveUntilStopped(
  { host, ports }: { host: string; ports: readonly number[] },
  { webDir }: Surroundings,
): Promise<number> {
  // Loaded here, so that the other commands start without a web server.
  const [{ createApp }, { listenOnFirst, ListenError, stopOnSignal }] = await Promise.all([
    import('../app.ts'),
    import('../listen.ts'),
  ]);
  try {
    const listening = await listenOnFirst(createApp({ webDir }), { host, ports });
    process.stdout.write(`Shadeside is at ${listening.url} – Ctrl+C stops it.\n`);
    await stopOnSignal(listening);
    return 0;
  } catch (error) {
    if (!(error instanceof ListenError)) throw error;
    process.stderr.write(`${error.message}\n`);
    return 1;
  }
}
