import { existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { makeFolders } from '../../server/make-folders.ts';

const folder = mkdtempSync(join(tmpdir(), 'shadeside-folders-'));
afterAll(() => rmSync(folder, { recursive: true }));

test('folders above are made, too, and what is there stays', () => {
  const deep = join(folder, 'a/b/c');
  makeFolders(deep);
  expect(statSync(deep).isDirectory()).toBe(true);
  writeFileSync(join(deep, 'kept'), '');
  makeFolders(deep);
  expect(existsSync(join(deep, 'kept'))).toBe(true);
});

test('a file in the way is told', () => {
  writeFileSync(join(folder, 'file'), '');
  expect(() => makeFolders(join(folder, 'file'))).toThrow('EEXIST');
  expect(() => makeFolders(join(folder, 'file/inside'))).toThrow('ENOTDIR');
});

test.runIf(existsSync('/proc/self'))('a system folder that takes none ends it', () => {
  expect(() => makeFolders('/proc/shadeside/inside')).toThrow('ENOENT');
});
