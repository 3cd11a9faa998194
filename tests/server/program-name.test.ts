import { execFileSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { programName, shellWord } from '../../server/program-name.ts';

describe('the name of the program', () => {
  test.each([
    ['/usr/local/bin/shadeside', '/home/a', 'shadeside'],
    ['/home/a/s/server/bin/shadeside.mjs', '/home/a/s', 'node server/bin/shadeside.mjs'],
    ['/home/a/s/server/bin/shadeside.mjs', '/home/a/t', 'node ../s/server/bin/shadeside.mjs'],
    ['/s/shadeside.mjs', '/home/a/t', 'node /s/shadeside.mjs'],
    ['/home/my tools/server/bin/shadeside.mjs', '/home', "node 'my tools/server/bin/shadeside.mjs'"],
    ['/home/a/s/server/bin/start.mjs', '/home/a/s', 'node server/bin/shadeside.mjs'],
    ['rank', '/home/a', 'shadeside'],
  ])('started as %s in %s is %s', (script, folder, name) => {
    expect(programName(script, folder)).toBe(name);
  });
});

test.each(['plain.csv', '--grid=-1,2,3,4', 'a dir/b', "it's", '$HOME', '*', '', '=x', 'a"b', 'ü'])(
  'a shell reads %j back as it was',
  (word) => {
    expect(execFileSync('sh', ['-c', `printf %s ${shellWord(word)}`]).toString()).toBe(word);
  },
);

test('what needs no quotes gets none', () => {
  expect(['a/b.csv', '--out', '--grid=-1,2'].map(shellWord)).toEqual(['a/b.csv', '--out', '--grid=-1,2']);
});
