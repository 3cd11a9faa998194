/** Files of a run that would replace each other, or something that is no file. */
import { execFileSync } from 'node:child_process';
import { linkSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { problemsOfFiles, type RunFiles } from '../../../server/screening/run-files.ts';
import { printed } from './printed.ts';
import { ownFolder } from './tables.ts';

const folder = ownFolder();
const at = (name: string) => join(folder, name);
const TABLE = 'id,lat,lon\na,33.2,-113.4\n';

beforeAll(() => {
  for (const name of ['s.csv', 'r.rejects.csv', 'w/a.csv', 'o.csv.unfinished/t.csv']) {
    mkdirSync(join(at(name), '..'), { recursive: true });
    writeFileSync(at(name), TABLE);
  }
  writeFileSync(at('site.json'), '{}');
  for (const taken of ['folder', 'y.rejects.csv']) mkdirSync(at(taken));
  linkSync(at('s.csv'), at('hard.csv'));
  symlinkSync(at('s.csv'), at('soft.csv'));
  symlinkSync(folder, at('folder/round'));
  execFileSync('mkfifo', [at('pipe')]);
});

const problems = (files: Record<string, string>) =>
  problemsOfFiles(
    Object.fromEntries(Object.entries(files).map(([key, name]) => [key, at(name)])) as unknown as RunFiles,
  );

describe('the files of a run', () => {
  test.each([
    [{ table: 's.csv', out: 'o2.csv' }],
    [{ table: 's.csv', out: 'o2.csv', rejects: 'rej.csv', site: 'site.json', weather: 'w' }],
    [{ out: 'hard.csv' }],
  ])('%j may be used', (files) => {
    expect(problems(files)).toEqual([]);
  });

  test.each([
    [{ table: 's.csv', out: 's.csv' }, /^table, results and rejects must be different files/],
    [{ table: 'r.rejects.csv', out: 'r.csv' }, /must be different files; rejected rows go to .*r\.rejects\.csv/],
    [{ table: 's.csv', out: 'o2.csv', rejects: 's.csv' }, /^table, results and rejects must be different files$/],
    [{ table: 's.csv', out: 'o2.csv', rejects: 'folder/../o2.csv' }, /^table, results and rejects/],
    [{ table: 's.csv', out: 'o2.csv', rejects: 'folder/round/o2.csv' }, /^table, results and rejects/],
    [{ table: 's.csv', out: 'hard.csv' }, /^table, results and rejects/],
    [{ table: 's.csv', out: 'soft.csv' }, /^table, results and rejects/],
    [{ table: 'soft.csv', out: 'o2.csv', rejects: 'hard.csv' }, /^table, results and rejects/],
    [{ table: 's.csv', site: 'site.json', out: 'site.json' }, /^site file, results and rejects must be different/],
    [{ table: 's.csv', weather: 'w', out: 'w/a.csv' }, /^weather files, results and rejects must be different/],
    [{ table: 's.csv', out: 'o2.csv', rejects: 'o2.csv.unfinished' }, /^table, results and rejects/],
    [{ table: 'o.csv.unfinished/t.csv', out: 'o.csv' }, /is the run's own folder/],
    [{ table: 's.csv', out: 'folder' }, /--out .*folder: this is a folder, a file is needed$/],
    [{ table: 's.csv', out: 'y.csv' }, /y\.rejects\.csv: this is a folder, a file is needed; --rejects names another$/],
    [{ table: 's.csv', out: 'pipe' }, /--out .*pipe: this is a device or a pipe, a file is needed$/],
    [{ table: 's.csv', out: 'o2.csv', rejects: 'pipe' }, /--rejects .*pipe: this is a device or a pipe/],
    [{ table: 's.csv', out: 's.csv/o.csv' }, /there is no such folder$/],
  ])('%j are refused', (files, problem) => {
    const told = problems(files);
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(problem);
  });

  test.each(['/dev/null', '/dev/stdout'])('%s is no place for a file', (device) => {
    expect(problemsOfFiles({ out: at('o2.csv'), rejects: device })).toEqual([
      `--rejects ${device}: this is a device or a pipe, a file is needed`,
    ]);
  });
});

test('screen says so before anything is written', async () => {
  const before = readdirSync(folder);
  const { code, stdout, stderr } = await printed(['screen', at('r.rejects.csv'), '--out', at('r.csv')]);
  expect(stderr).toMatch(/^screen: table, results and rejects must be different files; .*\n$/);
  expect([code, stdout]).toEqual([2, '']);
  expect(readdirSync(folder)).toEqual(before);
  expect(readFileSync(at('r.rejects.csv'), 'utf8')).toBe(TABLE);
});
