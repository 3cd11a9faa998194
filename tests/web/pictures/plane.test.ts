import { describe, expect, test } from 'vitest';
import { apartDeg, areaPath, directionDeg, linePath, onCircle } from '../../../web/site/pictures/plane.ts';

test('paths are written to a tenth of a pixel', () => {
  expect(
    linePath([
      [0, 0],
      [1.26, -3.04],
    ]),
  ).toBe('M0 0L1.3 -3');
  expect(
    areaPath([
      [0, 0],
      [4, 0],
      [4, 4],
    ]),
  ).toBe('M0 0L4 0L4 4Z');
  expect(areaPath([])).toBe('');
});

describe('bearings in a picture', () => {
  test.each([
    [0, 100, 90],
    [90, 110, 100],
    [180, 100, 110],
    [270, 90, 100],
  ])('%d degrees lies at %d, %d', (bearingDeg, x, y) => {
    const at = onCircle([100, 100], 10, bearingDeg);
    expect(at[0]).toBeCloseTo(x, 9);
    expect(at[1]).toBeCloseTo(y, 9);
    expect(directionDeg([100, 100], at)).toBeCloseTo(bearingDeg, 9);
  });

  test('are apart by the shorter way round', () => {
    expect(apartDeg(350, 10)).toBe(20);
    expect(apartDeg(-90, 270)).toBe(0);
    expect(apartDeg(0, 180)).toBe(180);
  });
});
