import { expect, test } from 'vitest';
import { shadeBelowM, sunFromAbove, sunFromSide, sunWays } from '../../../web/lesson/played/sun-dome.ts';

const near = (point: readonly number[], wanted: readonly number[]) =>
  point.forEach((value, k) => {
    expect(value).toBeCloseTo(wanted[k] ?? Number.NaN, 9);
  });

test('from above, north is up and east to the right; overhead lies in the middle', () => {
  near(sunFromAbove({ elevationDeg: 0, azimuthDeg: 0 }, 10), [0, -10]);
  near(sunFromAbove({ elevationDeg: 0, azimuthDeg: 90 }, 10), [10, 0]);
  near(sunFromAbove({ elevationDeg: 60, azimuthDeg: 180 }, 10), [0, 5]);
  near(sunFromAbove({ elevationDeg: 90, azimuthDeg: 123 }, 10), [0, 0]);
});

test('from the side, what lies before the wall is to the right, whichever way the wall faces', () => {
  for (const wall of [0, 90, 200, 278]) {
    near(sunFromSide({ elevationDeg: 0, azimuthDeg: wall }, wall, 10), [10, 0]);
    near(sunFromSide({ elevationDeg: 30, azimuthDeg: wall + 180 }, wall, 10), [-10 * Math.cos(Math.PI / 6), -5]);
    near(sunFromSide({ elevationDeg: 90, azimuthDeg: wall + 90 }, wall, 10), [0, -10]);
  }
});

test('shade of an eave reaches as far down as it is deep where the sun stands at 45 degrees before it', () => {
  const at = (elevationDeg: number, azimuthDeg: number) => sunFromSide({ elevationDeg, azimuthDeg }, 180, 1);
  expect(shadeBelowM(at(45, 180), 0.6)).toBeCloseTo(0.6, 9);
  expect(shadeBelowM(at(80, 180), 0.6)).toBeGreaterThan(3);
  expect(shadeBelowM(at(45, 0), 0.6)).toBeNull();
  expect(shadeBelowM(at(-5, 180), 0.6)).toBeNull();
});

test('the way of the sun is drawn while it is up, in two pieces where it sets in between', () => {
  const suns = [-5, 5, 10, -5, 3, 4].map((elevationDeg) => ({ elevationDeg, azimuthDeg: 100 }));
  const ways = sunWays(suns, (sun) => [sun.elevationDeg, 0]);
  expect(ways).toEqual([
    [
      [5, 0],
      [10, 0],
    ],
    [
      [3, 0],
      [4, 0],
    ],
  ]);
});
