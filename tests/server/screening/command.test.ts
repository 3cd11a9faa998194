/** `shadeside screen` from the build: worker threads, kills, messages. */
import { existsSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { runBuilt, spawnBuilt } from '../run-built.ts';
import { printed } from './printed.ts';
import { manyRows, ownFolder, rowsOf, screened } from './tables.ts';

const folder = ownFolder();

function file(name: string, content: string): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

/** Runs it and kills it a while after it changed a file; gives back whether it ended by itself before. */
async function killedAfter(ms: number, args: string[], path: string): Promise<boolean> {
  const state = () => (existsSync(path) ? `${statSync(path).mtimeMs} ${statSync(path).size}` : '');
  const before = state();
  const child = spawnBuilt(args);
  const closed = new Promise((resolve) => child.on('close', resolve));
  while (state() === before && child.exitCode === null) await new Promise((resolve) => setTimeout(resolve, 5));
  const timer = setTimeout(() => child.kill('SIGKILL'), ms);
  const code = await closed;
  clearTimeout(timer);
  return code === 0;
}

/** The same numbers on every run (Park and Miller's generator). */
function* random(seed: number): Generator<number> {
  for (let state = seed; ; ) {
    state = (state * 48_271) % 2_147_483_647;
    yield state / 2_147_483_647;
  }
}

describe('screen', () => {
  test('killed at ten random moments and gone on with, ends byte by byte like a run in one go', async () => {
    const rows = 112;
    const table = manyRows(rows, 50);
    const one = join(folder, 'one.csv');
    await screened(folder, table, { out: one });
    const args = [
      'screen',
      file('many.csv', table),
      '--out',
      join(folder, 'many.out.csv'),
      '--workers',
      '1',
      '--resume',
    ];
    const queue = join(folder, 'many.out.csv.unfinished/queue.sqlite-wal');
    const part = join(folder, 'many.out.csv.unfinished/results.part');
    const moments = random(7);
    let kills = 0;
    let ended = false;
    while (!ended) {
      // By turns from when the queue is opened, which is while threads start, and from when results are written.
      const { ms, from } = kills % 2 === 0 ? { ms: 600, from: queue } : { ms: 150, from: part };
      ended = await killedAfter(kills < 10 ? ms * (moments.next().value ?? 0) : 120_000, args, from);
      if (!ended) kills += 1;
      // Done before ten kills: once more from the beginning.
      if (ended && kills < 10) {
        expect(readFileSync(join(folder, 'many.out.csv'))).toEqual(readFileSync(one));
        rmSync(join(folder, 'many.out.csv'));
        ended = false;
      }
    }
    expect(kills).toBe(10);
    expect(readFileSync(join(folder, 'many.out.csv'))).toEqual(readFileSync(one));
    expect(readFileSync(join(folder, 'many.out.rejects.csv'))).toEqual(readFileSync(join(folder, 'one.rejects.csv')));
    expect(existsSync(join(folder, 'many.out.csv.unfinished'))).toBe(false);
    expect(rowsOf(readFileSync(one, 'utf8'))).toHaveLength(rows - Math.floor(rows / 50));
  }, 120_000);

  test('sums up what goes on the truck, where the climate comes from and what was rejected', async () => {
    const table = file('few.csv', 'lat;lon;bearings\n33,5;-113;N\n33.5;-113;N\n-20;30;S\n');
    const to = join(folder, 'few.geojson');
    const { code, stdout, stderr } = await runBuilt(['screen', table, '--out', to, '--workers', '1']);
    expect(stderr).toBe('');
    expect(stdout).toMatch(/^2 addresses screened/);
    expect(stdout).toMatch(/assumed +2 +100\.0 %/);
    expect(stdout).toMatch(/1 row rejected[\s\S]*1 {2}lat: decimal comma/);
    expect(stdout.replace(/\s+/g, ' ')).toContain('blended from the invented samples');
    for (const line of stdout.split('\n')) expect([...line].length).toBeLessThanOrEqual(80 + folder.length);
    expect(JSON.parse(readFileSync(to, 'utf8')).features).toHaveLength(2);
    expect(code).toBe(0);
  });

  test('Ctrl+C stops it with a checkpoint and says how to go on', async () => {
    const table = file('to stop.csv', manyRows(5000));
    const to = join(folder, 'stop.out.csv');
    const child = spawnBuilt(['screen', table, '--out', to, '--workers', '1']);
    let stderr = '';
    child.stderr.on('data', (chunk: Buffer) => {
      stderr += chunk.toString();
    });
    while (!existsSync(`${to}.unfinished/results.part`)) await new Promise((resolve) => setTimeout(resolve, 20));
    child.kill('SIGINT');
    const code = await new Promise((resolve) => child.on('close', resolve));
    expect(stderr).toMatch(
      /^Stopped after \d+ rows\. To go on: shadeside screen '.*to stop\.csv' --out .* --resume\n$/,
    );
    expect(code).toBe(1);
    expect(existsSync(to)).toBe(false);
    const again = await runBuilt(['screen', table, '--out', to]);
    expect(again.stderr).toMatch(/an unfinished run; --resume goes on with it, --restart throws it away\n$/);
    expect(again.code).toBe(2);
  });

  test('no rows are told, a grid is screened, and a finished run is not gone on with', async () => {
    const none = await printed(['screen', file('none.csv', 'lat,lon\n'), '--out', join(folder, 'none.out.csv')]);
    expect(none.stdout).toMatch(/^No rows: .*none\.out\.csv holds its header only\.\n$/);
    const to = join(folder, 'grid.csv');
    const box = ['--grid', '-113,33,-113,33.5', '--step', '0.5', '--climate', 'dry-basin'];
    await printed(['screen', ...box, '--out', to, '--workers', '1']);
    const whole = readFileSync(to);
    expect(rowsOf(whole.toString()).map((row) => [row['row'], row['latitude'], row['climate_used']])).toEqual([
      ['1', '33', 'dry-basin'],
      ['2', '33.5', 'dry-basin'],
    ]);
    const again = await printed(['screen', ...box, '--out', to, '--resume']);
    expect(again.stderr).toBe(`${to} is finished; there is nothing to go on with.\n`);
    expect(again.code).toBe(0);
    expect(readFileSync(to)).toEqual(whole);
  });

  test.each<[string[], RegExp[]]>([
    [[], [/a table or --grid is needed/, /--out FILE is needed/]],
    [
      ['x.csv', '--out', 'x.csv', '--format', 'xls', '--climate', 'moon'],
      [/different files/, /--format xls/, /--climate moon/],
    ],
    [['none.csv', '--out', 'y.csv'], [/none\.csv: there is no such file/]],
    [
      ['--grid', '1,2,3', '--out', 'y.csv'],
      [/west,south,east,north/, /--step is needed/],
    ],
    [['x.csv', '--out', 'y.csv', '--workers', '0'], [/--workers 0: allowed are whole numbers from 1 to 64/]],
    [
      ['x.csv', '--out', 'nowhere/y.csv', '--resume', '--restart'],
      [/no such folder/, /do not go together/],
    ],
  ])('%j is refused, one line a problem', async (args, lines) => {
    const { code, stdout, stderr } = await printed(['screen', ...args]);
    const told = stderr.trimEnd().split('\n');
    expect(told).toHaveLength(lines.length);
    for (const [k, line] of lines.entries()) expect(told[k]).toMatch(line);
    expect(stdout).toBe('');
    expect(code).toBe(2);
  });

  test('a table of which no row can be read is refused as a whole', async () => {
    const table = file('comma.csv', 'lat;lon\n33,5;-113\n34,5;-113\n');
    const to = join(folder, 'comma.out.csv');
    const { code, stderr } = await runBuilt(['screen', table, '--out', to]);
    expect(stderr).toMatch(
      /row 2, column lat: "33,5": decimal comma; write 33\.5\n.*row 3.*\n.*nothing was written\n$/,
    );
    expect(code).toBe(2);
    expect(existsSync(`${to}.unfinished`)).toBe(false);
  });
});
