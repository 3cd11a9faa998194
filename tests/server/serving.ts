/** The built server as a process. */
import { spawnBuilt } from './run-built.ts';

export interface Serving {
  readonly url: string;
  /** Everything printed until the address came. */
  readonly printed: string;
  /** Gives back the exit code. */
  stop(signal: 'SIGINT' | 'SIGTERM' | 'SIGKILL'): Promise<number | null>;
}

/** Starts `shadeside` (or `npm start`) and waits for the address that it prints. */
export function startServing(args: string[], entry: 'cli' | 'start' = 'cli'): Promise<Serving> {
  const child = spawnBuilt(args, entry);
  const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
  // It does not outlast who started it, either.
  const end = () => child.kill('SIGTERM');
  process.once('exit', end);
  child.once('close', () => process.off('exit', end));
  let printed = '';
  return new Promise((resolve, reject) => {
    child.stderr.on('data', (chunk: Buffer) => {
      printed += chunk.toString();
    });
    child.stdout.on('data', (chunk: Buffer) => {
      printed += chunk.toString();
      const url = /http:\/\/\S+\//.exec(printed)?.[0];
      if (url === undefined) return;
      const stop: Serving['stop'] = (signal) => {
        child.kill(signal);
        return ended;
      };
      resolve({ url, printed, stop });
    });
    ended.then((code) => reject(new Error(`ended with code ${code}: ${printed}`)));
  });
}
