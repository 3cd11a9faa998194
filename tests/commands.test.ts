/** Every command that README.md and DEVELOPERS.md show is one that works, and no script goes untold. */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DEMO_SITE, USUAL_SITING_RULES } from '../model/index.ts';
import packageFile from '../package.json';
import { runBuilt } from './server/run-built.ts';
import { startServing } from './server/serving.ts';

const ROOT = new URL('../', import.meta.url);
const TEXTS = ['README.md', 'DEVELOPERS.md'].map((name) => readFileSync(new URL(name, ROOT), 'utf8')).join('\n');

/** Lines of the command line as they are shown, such as "rank SITE.json [--json]". */
const SHOWN = [...TEXTS.matchAll(/^ {4}(?:node server\/bin\/shadeside\.mjs|shadeside) (.+)$/gm)].map(
  ([, line = '']) => line.split('#')[0]?.trim() ?? '',
);

let folder: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'shadeside-commands-'));
  writeFileSync(join(folder, 'SITE.json'), JSON.stringify(DEMO_SITE));
  writeFileSync(join(folder, 'SITES.csv'), 'id,latitude,longitude\na,33.2,-113.4\n');
  writeFileSync(join(folder, 'rules.json'), JSON.stringify(USUAL_SITING_RULES));
  await run(['year', 'SITE.json', '--wall', 'west', '--write-epw', 'year.epw']);
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What stands for a word in capitals, by the option before it or by the command. */
const STANDS_FOR: Readonly<Record<string, string>> = {
  '--wall NAME': 'west',
  '--climate NAME': 'dry-basin',
  '--weather FILE': 'year.epw',
  '--write-epw FILE': 'written.epw',
  '--rules FILE': 'rules.json',
  '--samples N': '2',
  '--seed N': '7',
  '--workers N': '1',
  '--port N': '0',
  '--host H': '127.0.0.1',
  '--data DIR': 'data',
  '--log LEVEL': 'silent',
  '--link-base URL': 'https://example.net/',
  '--paper a4': 'a4',
  'lesson FILE': 'four-walls',
  'lesson NAME': 'four-walls',
};

/** Commands that need what another one made, or go on until they are stopped, are run by the tests named here. */
const ELSEWHERE: Readonly<Record<string, string>> = {
  serve: 'tests/server/serve.test.ts',
  token: 'tests/server/access',
  backup: 'tests/server/data/backup.test.ts',
  restore: 'tests/server/data/backup.test.ts',
};

/** Every way to call it: all that is in brackets, and each choice of "a|b" in turn. */
function calls(shown: string): string[][] {
  const words = shown.replace(/[[\]]/g, ' ').trim().split(/\s+/);
  const most = Math.max(...words.map((word) => word.split('|').length));
  return Array.from({ length: most }, (_, turn) =>
    words.map((word) => {
      const choices = word.split('|');
      return choices[Math.min(turn, choices.length - 1)] ?? '';
    }),
  ).map((call) => call.map((word, k) => standIn(call[k - 1] ?? '', call[0] ?? '', word)));
}

function standIn(before: string, command: string, word: string): string {
  if (/^[A-Z]+\.[a-z]+$/.test(word)) return word === 'SITE.json' || word === 'SITES.csv' ? word : `out-${word}`;
  if (!/^[A-Z]+$/.test(word)) return word;
  const found = STANDS_FOR[`${before} ${word}`] ?? STANDS_FOR[`${command} ${word}`];
  if (found === undefined) throw new Error(`what stands for "${before} ${word}"? Say so in STANDS_FOR.`);
  return found;
}

/** Runs it in the folder; files are named by their whole path, since the program starts elsewhere. */
async function run(call: readonly string[]): Promise<void> {
  const files = new Set(['SITE.json', 'SITES.csv', 'rules.json', 'year.epw', 'written.epw']);
  const args = call.map((word) => (files.has(word) || word.startsWith('out-') ? join(folder, word) : word));
  const { code, stderr } = await runBuilt(args);
  expect(`${code} ${stderr}`).toMatch(/^0 /);
}

describe('the command line', () => {
  test('is shown, each command of it', async () => {
    const { stdout } = await runBuilt(['--help']);
    const commands = [...stdout.matchAll(/^ {2}([a-z]+) {2,}\S/gm)].map(([, name = '']) => name);
    expect(commands.length).toBeGreaterThan(8);
    const shown = new Set(SHOWN.map((line) => line.split(' ')[0]));
    expect(commands.filter((name) => !shown.has(name))).toEqual([]);
  });

  const here = SHOWN.filter((shown) => ELSEWHERE[shown.split(' ')[0] ?? ''] === undefined);
  test.each(here)('%s', { timeout: 60_000 }, async (shown) => {
    for (const call of calls(shown)) await run(call);
  });

  test.each(Object.entries(ELSEWHERE))('%s has its own tests', (_command, path) => {
    expect(existsSync(new URL(path, ROOT))).toBe(true);
  });

  test('serve takes the options that are shown', { timeout: 60_000 }, async () => {
    const shown = SHOWN.filter((line) => line.startsWith('serve'));
    expect(shown.length).toBeGreaterThan(0);
    for (const call of shown.flatMap(calls)) {
      const args = call.map((word, k) => (call[k - 1] === '--data' ? join(folder, 'served') : word));
      const serving = await startServing(call.includes('--port') ? args : [...args, '--port', '0']);
      expect((await fetch(`${serving.url}api/health`)).status).toBe(200);
      expect(await serving.stop('SIGTERM')).toBe(0);
    }
  });
});

describe('the scripts of npm', () => {
  /** What npm itself knows. */
  const OF_NPM = new Set(['ci', 'install', 'link', 'rebuild', 'audit']);
  const told = [...TEXTS.matchAll(/(?:`|^ {4})npm (?:run (?:--silent )?)?([a-z-]+)/gm)].map(([, name = '']) => name);

  test('that are told are there', () => {
    const scripts = new Set<string>([...Object.keys(packageFile.scripts), ...OF_NPM]);
    expect([...new Set(told)].filter((name) => !scripts.has(name))).toEqual([]);
  });

  test('are all told, but those that others call', () => {
    const inner = new Set(['postbuild', 'typecheck', 'lint', 'imports', 'engines', 'unused', 'audit', 'build']);
    expect(Object.keys(packageFile.scripts).filter((name) => !inner.has(name) && !told.includes(name))).toEqual([]);
  });
});
