/** Results and rejects on another file system than each other. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { moveWhole } from '../../../server/atomic-file.ts';
import { manyRows, ownFolder, screened } from './tables.ts';

const folder = ownFolder();
const MEMORY = '/dev/shm';
const hasOther = existsSync(MEMORY) && statSync(MEMORY).dev !== statSync(folder).dev;
const other = hasOther ? mkdtempSync(join(MEMORY, 'shadeside-')) : folder;
afterAll(() => rmSync(other, { recursive: true, force: true }));

const table = manyRows(4, 2);

describe.runIf(hasOther)('rejects on another disk', () => {
  test('arrive there whole, and the folder of the run goes', async () => {
    await screened(folder, table, { out: join(folder, 'here.csv') });
    const rejects = join(other, 'rejects.csv');
    await screened(folder, table, { out: join(folder, 'there.csv'), rejects });
    expect(readFileSync(rejects)).toEqual(readFileSync(join(folder, 'here.rejects.csv')));
    expect(readdirSync(other)).toEqual(['rejects.csv']);
    expect(readFileSync(join(folder, 'there.csv'))).toEqual(readFileSync(join(folder, 'here.csv')));
    expect(existsSync(join(folder, 'there.csv.unfinished'))).toBe(false);
  });

  test('that cannot take their place stay in the run, which goes on to another one', async () => {
    const out = join(folder, 'stuck.csv');
    const gone = join(other, 'gone');
    await expect(screened(folder, table, { out, rejects: join(gone, 'rejects.csv') })).rejects.toThrow('ENOENT');
    expect(existsSync(out)).toBe(false);
    const rejects = join(other, 'late.csv');
    await screened(folder, table, { out, rejects, unfinished: 'resume' });
    expect(readFileSync(rejects)).toEqual(readFileSync(join(folder, 'here.rejects.csv')));
    expect(existsSync(`${out}.unfinished`)).toBe(false);
  });

  test('a copy that fails leaves nothing of itself and the file where it was', () => {
    const from = join(folder, 'here.csv');
    expect(() => moveWhole(from, other)).toThrow();
    expect(existsSync(from)).toBe(true);
    expect(readdirSync(MEMORY).filter((name) => name.startsWith(basename(other)))).toEqual([basename(other)]);
  });
});
