import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, expect, test, vi } from 'vitest';
import { main } from '../../../server/cli.ts';
import { PAPERS } from '../../../server/sheet/paper.ts';
import { SMALL_SITE } from '../sites.ts';
import { pagesOf, textOf } from './pdf-text.ts';

const folder = mkdtempSync(join(tmpdir(), 'shadeside-sheet-'));
afterAll(() => rmSync(folder, { recursive: true }));
afterEach(() => vi.restoreAllMocks());

const site = join(folder, 'site.json');
writeFileSync(site, JSON.stringify(SMALL_SITE));

/** Runs the command in this process; what it says of bad input is given back. */
async function sheet(...args: string[]): Promise<{ code: number; told: string }> {
  const stderr = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  const code = await main(['sheet', ...args], { webDir: 'none' });
  return { code, told: stderr.mock.calls.map(([text]) => String(text)).join('') };
}

test('writes the sheet whole, over an older one, and leaves nothing beside it', async () => {
  const out = join(folder, 'sheet.pdf');
  writeFileSync(out, 'older');
  const { code, told } = await sheet(site, '--out', out, '--wall', 'south', '--paper', 'letter', '--units', 'metric');
  expect([code, told]).toEqual([0, '']);
  const pdf = readFileSync(out);
  expect(pagesOf(pdf)).toEqual([PAPERS.letter]);
  expect(textOf(pdf)).toContain('No address of a page was given');
  expect(readdirSync(folder).sort()).toEqual(['sheet.pdf', 'site.json']);
});

test.each([
  { args: [], told: /--out is needed/ },
  { args: ['--out', 'x.pdf', '--paper', 'a3'], told: /--paper a3: allowed are a4 and letter/ },
  { args: ['--out', 'x.pdf', '--units', 'feet'], told: /--units feet/ },
  { args: ['--out', 'x.pdf', '--link-base', 'javascript:x'], told: /--link-base javascript:x: allowed is an http/ },
  { args: ['--out', 'x.pdf', '--wall', 'moon'], told: /there is no wall "moon"/ },
])('refuses $args and writes nothing', async ({ args, told }) => {
  const before = readdirSync(folder);
  const paths = args.map((arg) => (arg === 'x.pdf' ? join(folder, arg) : arg));
  const run = await sheet(site, ...paths);
  expect(run.code).toBe(2);
  expect(run.told).toMatch(told);
  expect(run.told.trimEnd().split('\n')).toHaveLength(1);
  expect(readdirSync(folder)).toEqual(before);
});

test('a folder that is not there is told, not made', async () => {
  const { code, told } = await sheet(site, '--out', join(folder, 'none/sheet.pdf'));
  expect(code).toBe(2);
  expect(told).toMatch(/cannot be written \(ENOENT\)/);
});

test('however often commands run, they listen to the output once', async () => {
  await sheet();
  const listeners = process.stdout.listenerCount('error');
  await sheet();
  expect(process.stdout.listenerCount('error')).toBe(listeners);
});
