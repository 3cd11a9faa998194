import { describe, expect, test } from 'vitest';
import type { Screening } from '../../../web/area/api.ts';
import { durationText, foundWords, progressText, shareDone } from '../../../web/area/run-words.ts';

const RUN: Screening = {
  id: 'a',
  name: 'huts',
  status: 'running',
  error: null,
  createdAt: '2026-01-01T00:00:00Z',
  startedAt: null,
  endedAt: null,
  rows: { done: 1200, rejected: 3, total: 50_000 },
  ratePerS: 95.2,
  etaS: 512,
  origin: 'table',
};
const plainSpaces = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

describe('progress', () => {
  test('says rows, rejected ones, rate and time left', () => {
    expect(plainSpaces(progressText(RUN))).toBe('1 200 of 50 000 rows, 3 rejected; 95 a second, about 9 min to go');
  });

  test('leaves out what is not known, and a total that was too low', () => {
    const unknown = { ...RUN, rows: { done: 12, rejected: 0, total: null }, ratePerS: null, etaS: null };
    expect(plainSpaces(progressText(unknown))).toBe('12 rows');
    expect(shareDone(unknown)).toBeNull();
    const more = { ...RUN, rows: { done: 60, rejected: 0, total: 50 } };
    expect(plainSpaces(progressText(more))).toMatch(/^60 rows;/);
    expect(shareDone(more)).toBe(1);
  });
});

test.each([
  [0.2, '1 s'],
  [89, '89 s'],
  [600, '10 min'],
  [7500, '2 h 5 min'],
])('%d seconds are %s', (seconds, text) => expect(plainSpaces(durationText(seconds))).toBe(text));

test('what was found, with none and one and all', () => {
  const words = (addresses: number, insideLimit: number) =>
    plainSpaces(foundWords({ rows: addresses, addresses, insideLimit, rejected: 0, blank: 0 }));
  expect(words(40, 23)).toMatch(/^23 of 40 addresses stay /);
  expect(words(40, 0)).toMatch(/^None of 40 addresses stay /);
  expect(words(40, 40)).toMatch(/^All of 40 addresses stay /);
  expect(words(1, 1)).toMatch(/^The only address stays inside /);
  expect(words(1, 0)).toMatch(/^The only address does not stay inside /);
  expect(words(0, 0)).toBe('No address could be judged.');
});
