/**
 * `npm run load`: drives the built server, started on this machine, with bounded numbers of requests.
 *
 *     npm run load                       rankings at 1, 16 and 128 clients, health meanwhile, more clients than there is room for
 *     npm run load -- --requests 50000   a mix of requests, and the memory of the server at the start, in the middle and at the end
 *
 * Ends with code 1 when the server fell over, answered with a status that it should not, or left health unanswered.
 */
import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { type Serving, startServing } from '../server/serving.ts';
import { type Driven, drive, percentile } from './drive.ts';
import { probeHealth } from './health-probe.ts';
import { BOXES, MIX, MIX_WORDS, PLACES, RANKS } from './requests.ts';

const RUNS = [
  { clients: 1, amount: 40 },
  { clients: 16, amount: 240 },
  { clients: 128, amount: 512 },
] as const;

/** More clients than threads and line together hold. */
const OVERLOAD = { clients: 64, amount: 640, waiting: 8 } as const;

const MIX_CLIENTS = 16;

const { values } = parseArgs({ options: { requests: { type: 'string' } } });
const amount = values.requests === undefined ? undefined : Number(values.requests);
if (amount !== undefined && !(Number.isInteger(amount) && amount >= 100 && amount <= 1_000_000)) {
  console.error(`--requests ${values.requests}: allowed are whole numbers from 100 to 1000000`);
  process.exit(2);
}

// The server that was started ends with this process.
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => process.exit(1));

console.log(`${availableParallelism()} processors, shared by the server, its threads and the clients.`);
console.log(`Rankings of four walls at ${PLACES} places, with ${BOXES} boxes.\n`);
const faults = amount === undefined ? [...(await rankings()), ...(await overload())] : await memory(amount);
for (const fault of faults) console.error(`FAULT: ${fault}`);
process.exitCode = faults.length > 0 ? 1 : 0;

/** Rankings of the demo site at several numbers of clients. */
async function rankings(): Promise<string[]> {
  const faults: string[] = [];
  await serving([], async ({ url }) => {
    // The threads load their code at the first request.
    await drive(url, { clients: 2, amount: 8, requests: RANKS });
    row('clients', 'requests', 'p50 ms', 'p95 ms', 'p99 ms', 'per s', 'health p50', 'health p99');
    for (const run of RUNS) {
      const probe = probeHealth(url);
      const driven = await drive(url, { ...run, requests: RANKS });
      const health = await probe.stop();
      const times = driven.timesMs.get(200) ?? [];
      row(
        run.clients,
        run.amount,
        ...[0.5, 0.95, 0.99].map((share) => percentile(times, share).toFixed(0)),
        (times.length / driven.seconds).toFixed(1),
        ...[0.5, 0.99].map((share) => percentile(health, share).toFixed(1)),
      );
      faults.push(...faultsOf(`${run.clients} clients`, driven, [200]));
    }
  });
  return faults;
}

/** More clients than there is room for: some are told to come again, none is left alone. */
async function overload(): Promise<string[]> {
  const faults: string[] = [];
  const { waiting, ...run } = OVERLOAD;
  await serving(['--waiting', String(waiting)], async ({ url }) => {
    const probe = probeHealth(url);
    const driven = await drive(url, { ...run, requests: RANKS });
    const health = await probe.stop();
    const done = driven.timesMs.get(200)?.length ?? 0;
    const refused = driven.timesMs.get(503) ?? [];
    console.log(
      `\n${run.clients} clients, ${run.amount} requests, room for ${waiting} to wait: ${done} ranked, ${refused.length} told to come ` +
        `again (503, p99 ${percentile(refused, 0.99).toFixed(0)} ms); health p99 ${percentile(health, 0.99).toFixed(1)} ms`,
    );
    faults.push(...faultsOf('overload', driven, [200, 503]));
    if (refused.length === 0) faults.push('overload: nobody was told to come again');
    const after = await drive(url, { clients: 1, amount: 1, requests: RANKS });
    faults.push(...faultsOf('after the overload', after, [200]));
  });
  return faults;
}

/** A long mix; what the server holds in memory is told, not judged: what it may be depends on the machine. */
async function memory(requests: number): Promise<string[]> {
  const faults: string[] = [];
  await serving([], async ({ url }) => {
    // What is made once, such as code and pools, is there before the first look.
    await drive(url, { clients: MIX_CLIENTS, amount: Math.ceil(requests / 10), requests: MIX });
    console.log(`${requests} requests, after ${Math.ceil(requests / 10)} to warm up: ${MIX_WORDS}\n`);
    row('requests', 'RSS MB', 'heap MB');
    row(0, ...(await memoryMb(url)));
    let seconds = 0;
    for (const part of [1, 2, 3, 4]) {
      const driven = await drive(url, { clients: MIX_CLIENTS, amount: Math.ceil(requests / 4), requests: MIX });
      seconds += driven.seconds;
      faults.push(...faultsOf(`part ${part}`, driven, [200, 400, 404]));
      row(Math.ceil(requests / 4) * part, ...(await memoryMb(url)));
    }
    console.log(`\n${(requests / seconds).toFixed(0)} requests a second`);
  });
  return faults;
}

/** Memory of the whole server with its threads, and the heap of the thread that answers. */
async function memoryMb(url: string): Promise<string[]> {
  const text = await (await fetch(`${url}api/metrics`)).text();
  return ['process_resident_memory_bytes', 'nodejs_heap_size_used_bytes'].map((name) =>
    (Number(new RegExp(`^${name} (\\S+)`, 'm').exec(text)?.[1]) / 2 ** 20).toFixed(1),
  );
}

function faultsOf(what: string, { timesMs, errors }: Driven, allowed: readonly number[]): string[] {
  const wrong = [...timesMs].filter(([status]) => !allowed.includes(status));
  return [
    ...wrong.map(([status, times]) => `${what}: ${times.length} answers with status ${status}`),
    ...(errors > 0 ? [`${what}: ${errors} requests without an answer`] : []),
  ];
}

async function serving(args: string[], work: (server: Serving) => Promise<void>): Promise<void> {
  const server = await startServing(['serve', '--port', '0', '--rate', '0', '--log', 'warn', ...args]);
  try {
    await work(server);
  } finally {
    await server.stop('SIGTERM');
  }
}

function row(...cells: (string | number)[]): void {
  console.log(cells.map((cell) => String(cell).padStart(10)).join('  '));
}
