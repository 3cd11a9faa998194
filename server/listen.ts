/** Puts the app on a port, and takes it down without cutting off answers that are on their way. */
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Express } from 'express';
import { endSlowBodies } from './slow-bodies.ts';

/** Thrown when no port could be had; the message says what to do. */
export class ListenError extends Error {
  readonly code: string;

  constructor(code: string, message: string) {
    super(message);
    this.name = 'ListenError';
    this.code = code;
  }
}

export interface Listening {
  readonly url: string;
  /** Takes no new connections; resolves when open requests are answered, or after two seconds without them. */
  stop(): Promise<void>;
}

const STOP_PATIENCE_MS = 2000;

/**
 * Listens on the first free one of `ports`.
 * @throws ListenError when none can be had
 */
export async function listenOnFirst(
  app: Express,
  { host, ports }: { host: string; ports: readonly number[] },
): Promise<Listening> {
  const [port, ...others] = ports;
  try {
    return await listen(app, host, port ?? 0);
  } catch (error) {
    if (others.length === 0 || !(error instanceof ListenError) || error.code !== 'EADDRINUSE') throw error;
    return listenOnFirst(app, { host, ports: others });
  }
}

function listen(app: Express, host: string, port: number): Promise<Listening> {
  return new Promise((resolve, reject) => {
    const server = app.listen(port, host, (error?: Error) => {
      if (error) reject(listenError(error, host, port));
      else resolve({ url: urlOf(server.address() as AddressInfo), stop: () => stop(server) });
    });
    endSlowBodies(server);
  });
}

function listenError(error: NodeJS.ErrnoException, host: string, port: number): ListenError {
  const code = error.code ?? '';
  const reasons: Record<string, string> = {
    EADDRINUSE: `Port ${port} is in use by another program; choose another one with --port N.`,
    EACCES: `Port ${port} may not be used by this account; choose one above 1023 with --port N.`,
    EADDRNOTAVAIL: `${host} is no address of this machine; choose another one with --host H.`,
    ENOTFOUND: `The host name ${host} is not known; choose another one with --host H.`,
  };
  return new ListenError(code, reasons[code] ?? `Cannot listen on ${host}, port ${port} (${code || error.message}).`);
}

/** The address to type into a browser: any-address is reached as this machine. */
function urlOf({ address, family, port }: AddressInfo): string {
  if (address === '0.0.0.0' || address === '::') return `http://localhost:${port}/`;
  return `http://${family === 'IPv6' ? `[${address}]` : address}:${port}/`;
}

function stop(server: Server): Promise<void> {
  return new Promise((resolve) => {
    // A browser keeps its connection open once its answer has come: it is let go as soon as it is idle.
    const idle = setInterval(() => server.closeIdleConnections(), 50);
    const impatient = setTimeout(() => server.closeAllConnections(), STOP_PATIENCE_MS);
    server.close(() => {
      clearInterval(idle);
      clearTimeout(impatient);
      resolve();
    });
  });
}

/** Waits for Ctrl+C or a termination signal, then stops. A second signal ends the process at once. */
export async function stopOnSignal(listening: Listening): Promise<void> {
  await new Promise<void>((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
  await listening.stop();
}
