import { describe, expect, test } from 'vitest';
import { bandCounts, bandOf, marginBands, NO_WALL } from '../../../web/area/margin-bands.ts';

describe.each(['metric', 'us'] as const)('classes in %s units', (units) => {
  const bands = marginBands(units);

  test('are told apart by sign, by colour and by words', () => {
    for (const part of ['d', 'fill', 'words'] as const)
      expect(new Set(bands.map((band) => band[part])).size).toBe(bands.length);
    expect(bands.every(({ words }) => words !== '')).toBe(true);
  });

  test('at the limit is not over it; no wall is a class of its own', () => {
    expect(bands[bandOf(0, units)]?.words).toMatch(/^up to .* below the limit$/);
    expect(bands[bandOf(-0.01, units)]?.words).toMatch(/^up to .* over$/);
    expect(bands[bandOf(-200, units)]?.words).toMatch(/^more than .* over the limit$/);
    expect(bandOf(null, units)).toBe(NO_WALL);
    expect(bands).toHaveLength(NO_WALL + 1);
  });

  test('every margin counts once', () => {
    const margins = [null, -30, -7, -2, 0, 0.1, 7, 30, null];
    const counts = bandCounts(margins, units);
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(margins.length);
    expect(counts[NO_WALL]).toBe(2);
    expect(counts).toEqual(bands.map((_, k) => margins.filter((margin) => bandOf(margin, units) === k).length));
  });
});
