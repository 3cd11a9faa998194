/** A disk that fails under the command line: one sentence, no stack. */
import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, openSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { SERVER_BUILD } from '../../server/bin/prepare.mjs';
import { withPlainErrors } from '../../server/cli.ts';
import { fileFailure, isFull } from '../../server/file-failure.ts';
import { runBuilt } from './run-built.ts';
import { manyRows } from './screening/tables.ts';

const folder = mkdtempSync(join(tmpdir(), 'shadeside-failure-'));
afterAll(() => rmSync(folder, { recursive: true }));

const failed = (code: string, more = {}) => Object.assign(new Error('inner words'), { code, ...more });

async function told(error: unknown) {
  let stderr = '';
  const spy = vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    stderr += text.toString();
    return true;
  });
  try {
    return { code: await withPlainErrors(() => Promise.reject(error)), stderr };
  } finally {
    spy.mockRestore();
  }
}

describe('the command line', () => {
  test.each([
    ['ENOSPC', {}, 'The disk is full (ENOSPC).'],
    ['SQLITE_FULL', {}, 'The disk is full (SQLITE_FULL).'],
    ['EACCES', { path: '/a/b' }, '/a/b: there is no permission for this (EACCES).'],
    ['EPERM', { path: '/a/b' }, '/a/b: there is no permission for this (EPERM).'],
    ['EROFS', { path: '/a/b' }, '/a/b: this can only be read (EROFS).'],
    ['ENOENT', { path: '/a/b' }, '/a/b: there is no such file or folder (ENOENT).'],
    ['EISDIR', { path: '/a/b' }, '/a/b: this is a folder, a file is needed (EISDIR).'],
    ['EXDEV', { path: '/a/b', dest: '/c' }, '/c: this lies on another disk (EXDEV).'],
    ['SQLITE_READONLY_DIRECTORY', {}, 'This can only be read (SQLITE_READONLY_DIRECTORY).'],
    ['SQLITE_CANTOPEN', {}, 'A database cannot be opened (SQLITE_CANTOPEN).'],
  ])('tells %s in a sentence', async (code, more, sentence) => {
    expect(await told(failed(code, more))).toEqual({ code: 1, stderr: `${sentence}\n` });
  });

  test.each([
    failed('ERR_INVALID_ARG_TYPE'),
    failed('SQLITE_ERROR'),
    failed('EINVAL'),
    new TypeError('x'),
    'text',
    null,
  ])('throws on what is a bug: %s', async (error) => {
    await expect(told(error)).rejects.toBe(error);
    expect(fileFailure(error)).toBeUndefined();
  });

  test('only a full disk is full', () => {
    expect(['ENOSPC', 'EDQUOT', 'SQLITE_FULL', 'EACCES', 'x'].map((code) => isFull(failed(code)))).toEqual([
      ...[true, true, true, false, false],
    ]);
  });
});

test.runIf(existsSync('/dev/full'))('a file for which there is no room is told, and is no bad input', async () => {
  const { code, stdout, stderr } = await runBuilt(['year', '--wall', 'west', '--write-epw', '/dev/full']);
  expect(stderr).toMatch(/\n\/dev\/full: the disk is full \(ENOSPC\)\.\n$/);
  expect([code, stdout]).toEqual([1, '']);
});

test.runIf(existsSync('/dev/full'))('a full disk behind a ">" is told', () => {
  const script = `const { main } = await import(${JSON.stringify(`file://${SERVER_BUILD}/cli.js`)});
    process.exitCode = await main(['day', '--wall', 'west', '--csv'], { webDir: '' });`;
  const args = ['--input-type=module', '--eval', script];
  const { status, stderr } = spawnSync(process.execPath, args, {
    stdio: ['ignore', openSync('/dev/full', 'w'), 'pipe'],
  });
  expect(stderr.toString()).toMatch(/standard output: The disk is full \(ENOSPC\)\.\n$/);
  expect(stderr.toString()).not.toContain('    at ');
  expect(status).toBe(1);
});

/** Whether a small disk could be put there, which only root may. */
function mounted(path: string, size: string): boolean {
  mkdirSync(path);
  return spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${size}`, 'none', path]).status === 0;
}

const disk = join(folder, 'disk');
const isDisk = mounted(disk, '160k');
afterAll(() => isDisk && execFileSync('umount', [disk]));

describe.runIf(isDisk)('a screening on a disk that fills up', () => {
  const table = join(folder, 'big.csv');
  const screen = (...more: string[]) =>
    runBuilt(['screen', table, '--out', join(disk, 'o.csv'), '--workers', '1', ...more]);

  test('says so, and goes on where it was once there is room', async () => {
    writeFileSync(table, manyRows(150, 50));
    const { code, stderr, stdout } = await screen();
    expect(stderr).toMatch(
      /The disk is full \(\w+\)\. Free some space; what was done is kept\. To go on: shadeside screen .* --resume\n$/,
    );
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect([code, stdout]).toEqual([1, '']);
    execFileSync('mount', ['-o', 'remount,size=20m', disk]);
    const again = await screen('--resume');
    expect([again.code, again.stderr]).toEqual([0, '']);
    expect(readdirSync(disk).sort()).toEqual(['o.csv', 'o.rejects.csv']);
  }, 120_000);
});

const nobody = { uid: 65_534 };
const canBeNobody =
  process.getuid?.() === 0 && spawnSync('cat', [join(SERVER_BUILD, 'cli.js')], { ...nobody, cwd: '/' }).status === 0;

test.runIf(canBeNobody)(
  'a folder that one may not write in is told by every command',
  async () => {
    const closed = join(folder, 'closed');
    mkdirSync(closed);
    const table = join(folder, 'small.csv');
    writeFileSync(table, manyRows(2));
    for (const path of [folder, closed]) chmodSync(path, 0o555);
    const run = (...args: string[]) => runBuilt(args, '', { ...nobody, cwd: '/' });
    const runs = await Promise.all([
      run('screen', table, '--out', join(closed, 'o.csv')),
      run('sheet', '--out', join(closed, 'o.pdf')),
      run('year', '--wall', 'west', '--write-epw', join(closed, 'o.epw')),
      run('token', 'list', '--data', join(closed, 'data')),
      run('restore', join(closed, 'no'), '--data', join(closed, 'data')),
    ]);
    for (const { code, stdout, stderr } of runs) {
      expect(stderr).not.toContain('    at ');
      expect(stdout).toBe('');
      expect([1, 2]).toContain(code);
    }
    expect(runs[0]?.stderr).toMatch(/^screen: --out .*: no permission to write in this folder\n$/);
  },
  60_000,
);
