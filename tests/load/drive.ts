/** Sends a bounded number of requests to a server on this machine and notes how long each answer took. */
import autocannon, { type Request, type Result } from 'autocannon';

export interface Drive {
  readonly clients: number;
  readonly amount: number;
  /** Each client goes round these. */
  readonly requests: readonly Request[];
}

export interface Driven {
  /** How long answers took, by status, ms. */
  readonly timesMs: ReadonlyMap<number, readonly number[]>;
  /** Connections that broke or ran out of time. */
  readonly errors: number;
  readonly seconds: number;
}

/** A client waits longer than any answer may take, s. */
const PATIENCE_S = 300;

export async function drive(address: string, { clients, amount, requests }: Drive): Promise<Driven> {
  const timesMs = new Map<number, number[]>();
  const start = performance.now();
  const { errors } = await new Promise<Result>((resolve, reject) => {
    const options = { url: address, connections: clients, amount, timeout: PATIENCE_S, requests: [...requests] };
    const running = autocannon(options, (error, result) => (error ? reject(error) : resolve(result)));
    running.on('response', (_client, status, _bytes, ms) => {
      const times = timesMs.get(status) ?? [];
      times.push(ms);
      timesMs.set(status, times);
    });
  });
  return { timesMs, errors, seconds: (performance.now() - start) / 1000 };
}

/** The smallest of `values` that a share of them, 0 to 1, does not exceed. */
export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}
