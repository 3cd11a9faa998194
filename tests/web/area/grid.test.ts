import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gridSize as serverGridSize } from '../../../server/screening/grid.ts';
import { boxOfCorners, gridSize, MOST_POINTS, readGrid, usualStepDeg } from '../../../web/area/grid.ts';

const typed = (change: Partial<Record<'south' | 'west' | 'north' | 'east' | 'stepDeg', string>> = {}) =>
  readGrid({ south: '33', west: '-114', north: '34', east: '-113', stepDeg: '0.1', ...change });

test('counts points as the server does, across the 180th meridian, too', () => {
  const deg = (most: number) => fc.integer({ min: -most * 100, max: most * 100 }).map((value) => value / 100);
  fc.assert(
    fc.property(deg(90), deg(90), deg(180), deg(180), fc.integer({ min: 1, max: 900 }), (a, b, west, east, step) => {
      const [south, north] = [Math.min(a, b), Math.max(a, b)];
      const stepDeg = step / 10;
      expect(gridSize({ south, west, north, east, stepDeg })).toBe(
        serverGridSize({ southDeg: south, westDeg: west, northDeg: north, eastDeg: east, stepDeg }),
      );
    }),
  );
});

describe('typed corners', () => {
  test('are read with comma, real minus and degree sign', () => {
    expect(typed({ west: '−114,0°', east: '-113 °' })).toMatchObject({ points: 121, problems: {} });
  });

  test('that are missing are no problem yet; wrong ones say what is allowed', () => {
    expect(typed({ stepDeg: '' })).toEqual({ grid: null, points: 0, problems: {} });
    expect(typed({ south: '91', east: 'x', stepDeg: '0' })).toMatchObject({
      grid: null,
      problems: {
        south: expect.stringMatching(/−90 to 90/),
        east: expect.stringMatching(/−180 to 180/),
        stepDeg: expect.stringMatching(/above 0/),
      },
    });
    expect(typed({ south: '35' }).problems).toEqual({ south: expect.stringContaining('north of the north') });
  });

  test('with too many points are refused', () => {
    const { grid, problems } = typed({ stepDeg: '0.0001' });
    expect(grid).toBeNull();
    expect(problems.stepDeg).toContain('5 million');
    expect(MOST_POINTS).toBe(5_000_000);
  });
});

test('two corners make a box the shorter way round, with a step of some hundred points', () => {
  expect(boxOfCorners([-113, 33], [-114.128, 34.5])).toEqual({ south: 33, west: -114.13, north: 34.5, east: -113 });
  const pacific = boxOfCorners([-178, -20], [177, -15]);
  expect(pacific).toMatchObject({ west: 177, east: -178 });
  for (const box of [pacific, boxOfCorners([10, 40], [10.02, 40.01]), boxOfCorners([-170, -80], [5, 80])]) {
    const points = gridSize({ ...box, stepDeg: usualStepDeg(box) });
    expect(points).toBeGreaterThan(0);
    expect(points).toBeLessThanOrEqual(400);
  }
});
