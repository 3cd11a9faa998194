import { expect, test } from 'vitest';
import { BadInput } from '../../../server/bad-input.ts';
import { failureSentence } from '../../../server/screenings/failure.ts';

const failed = (code: string) => failureSentence(Object.assign(new Error('/secret/path'), { code }));

test.each([
  ['ENOSPC', /^The disk is full/],
  ['SQLITE_FULL', /^The disk is full/],
  ['EACCES', /could not be written or read \(EACCES\)/],
  ['SQLITE_IOERR_WRITE', /could not be written or read \(SQLITE_IOERR_WRITE\)/],
  ['ERR_WORKER_OUT_OF_MEMORY', /^The program failed/],
])('%s is told in a sentence without paths', (code, sentence) => {
  expect(failed(code)).toMatch(sentence);
  expect(failed(code)).not.toContain('/');
});

test('what the engine finds missing is told without paths, too', () => {
  expect(failureSentence(new BadInput(['/secret/path: files of the run are missing']))).toMatch(
    /missing or damaged; take/,
  );
  expect(failureSentence('thrown text')).toMatch(/^The program failed/);
});
