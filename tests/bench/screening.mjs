/**
 * What a screening costs: addresses a second with one and with two worker threads, and the memory that the process ever held, of a
 * short table and of a longer one. Compare figures within one run only.
 *
 *     node tests/bench/screening.mjs                 a minute or two; `npm run bench` ends with it
 *     node tests/bench/screening.mjs --rows 100000   one table of so many rows, half of them repeated, half garbage: memory and rows
 */
import { spawn } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

const SHADESIDE = fileURLToPath(new URL('../../server/bin/shadeside.mjs', import.meta.url));
const BEARINGS = 8;
const MILD = 'temperate-maritime';
const CLIMATES = /** @type {const} */ ([
  ['a mild climate: no wall passes its limit, so no remedies are tried', MILD],
  ['a hot one: remedies are tried until one suffices', 'dry-basin'],
]);
const SHORT = 100;
const LONGER = 600;
const { values } = parseArgs({ options: { rows: { type: 'string' } } });
const folder = mkdtempSync(join(tmpdir(), 'shadeside-bench-'));

try {
  if (values.rows === undefined) await pace();
  else await long(Number(values.rows));
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/** Addresses a second, and memory of a short and a longer table. Start and end of the process are the same in both and cancel. */
async function pace() {
  const short = table('short.csv', SHORT, addressOf);
  const longer = table('longer.csv', LONGER, addressOf);
  const counts = availableParallelism() > 1 ? [1, 2] : [1];
  for (const [what, climate] of CLIMATES) {
    console.log(`\n${what} (--climate ${climate})`);
    /** @type {{ path: string, workers: number, rows: number, seconds: number, peakMb: number }[]} */
    const runs = [];
    for (const path of [short, longer]) {
      for (const workers of counts) runs.push({ path, workers, ...(await screen(path, workers, climate)) });
    }
    const perSecond = counts.map((workers) => {
      const [few, many] = runs.filter((run) => run.workers === workers);
      return few && many ? (many.rows - few.rows) / (many.seconds - few.seconds) : Number.NaN;
    });
    for (const [k, workers] of counts.entries()) {
      const rate = perSecond[k] ?? Number.NaN;
      print(`addresses a second, ${workers} worker${workers > 1 ? 's' : ''}`, rate.toFixed(1));
      print('  their walls a second, remedies not counted', (rate * BEARINGS).toFixed(0));
    }
    if (counts.length > 1) print('ratio of two workers to one', ((perSecond[1] ?? 0) / (perSecond[0] ?? 1)).toFixed(2));
    for (const path of [short, longer]) {
      const peaks = runs.filter((run) => run.path === path).map(({ peakMb }) => peakMb);
      print(`most memory, ${path === short ? SHORT : LONGER} rows, MB`, Math.max(...peaks).toFixed(0));
    }
  }
}

/** @param {number} rows */
async function long(rows) {
  const path = table('long.csv', rows, (row) => (row % 2 ? addressOf(row % 200) : `${row},not a latitude,`));
  const { seconds, peakMb } = await screen(path, Math.min(2, availableParallelism()), MILD);
  print(`${rows} rows, half garbage, half of a hundred addresses, s`, seconds.toFixed(0));
  print('most memory, MB', peakMb.toFixed(0));
}

/** An address of no town: places on a spiral, no two alike. @param {number} row */
function addressOf(row) {
  const latitude = 20 + ((row * 0.618034) % 1) * 20;
  const longitude = -120 + ((row * 0.754878) % 1) * 40;
  return `${row},${latitude.toFixed(5)},${longitude.toFixed(5)}`;
}

/**
 * @param {string} name
 * @param {number} rows
 * @param {(row: number) => string} rowOf
 */
function table(name, rows, rowOf) {
  const path = join(folder, name);
  const file = openSync(path, 'w');
  writeSync(file, 'id,latitude,longitude\n');
  for (let row = 0; row < rows; row += 1000) {
    const part = Array.from({ length: Math.min(1000, rows - row) }, (_, k) => `${rowOf(row + k)}\n`);
    writeSync(file, part.join(''));
  }
  closeSync(file);
  return path;
}

/**
 * Runs a screening as its own process.
 * @param {string} path
 * @param {number} workers
 * @param {string} climate
 * @returns {Promise<{ rows: number, seconds: number, peakMb: number }>}
 */
function screen(path, workers, climate) {
  const out = join(folder, `out-${Math.random()}.csv`);
  const began = performance.now();
  const args = [SHADESIDE, 'screen', path, '--out', out, '--workers', String(workers), '--climate', climate];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'ignore', 'pipe'] });
  let peakMb = 0;
  let said = '';
  child.stderr.on('data', (chunk) => {
    said += chunk;
  });
  const watch = setInterval(() => {
    peakMb = Math.max(peakMb, peakOf(child.pid));
  }, 50);
  return new Promise((resolve, reject) => {
    child.on('close', (code) => {
      clearInterval(watch);
      const seconds = (performance.now() - began) / 1000;
      if (code !== 0) return reject(new Error(`the screening ended with ${code}: ${said}`));
      const rows = readFileSync(out, 'utf8').trimEnd().split('\n').length - 1;
      resolve({ rows, seconds, peakMb });
    });
  });
}

/** The most memory that a process ever held, MB; Linux tells it. @param {number | undefined} pid */
function peakOf(pid) {
  try {
    return Number(/VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) / 1024;
  } catch {
    return Number.NaN;
  }
}

/**
 * @param {string} what
 * @param {string} figure
 */
function print(what, figure) {
  console.log(`${what.padEnd(56)} ${figure.padStart(8)}`);
}
