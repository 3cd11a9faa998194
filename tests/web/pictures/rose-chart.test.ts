import { describe, expect, test } from 'vitest';
import { extremes, limitInReach, onCurveC, roseChart } from '../../../web/site/pictures/rose-chart.ts';

describe('the rings', () => {
  test.each([
    [
      [60.1, 72.2],
      [60, 65, 70, 75],
    ],
    [
      [140.2, 163],
      [140, 150, 160, 170],
    ],
    [
      [61.2, 61.4],
      [61, 61.5],
    ],
    [
      [60, 60],
      [60, 60.5],
    ],
    [
      [-12, 31],
      [-20, 0, 20, 40],
    ],
  ])('for %j are %j', (values, rings) => {
    expect(roseChart([0, 0], 100, values).rings).toEqual(rings);
  });

  test('lie evenly, the warmest outside, the coolest well off the middle', () => {
    const chart = roseChart([200, 200], 100, [60.1, 72.2]);
    expect(chart.radiusPx(75)).toBeCloseTo(100, 9);
    expect(chart.radiusPx(60)).toBeCloseTo(30, 9);
    expect(chart.at(90, 75)).toEqual([300, 200]);
  });
});

const points = Array.from({ length: 36 }, (_, k) => ({ azimuthDeg: k * 10, peakInsideAirC: 60 + k / 10 }));

test('between two bearings the curve is straight, also past north', () => {
  expect(onCurveC(points, 100)).toBeCloseTo(61, 9);
  expect(onCurveC(points, 105)).toBeCloseTo(61.05, 9);
  expect(onCurveC(points, 355)).toBeCloseTo((63.5 + 60) / 2, 9);
  expect(onCurveC(points, -10)).toBeCloseTo(63.5, 9);
});

test('coolest and hottest', () => {
  expect(extremes(points)).toEqual({ coolest: points[0], hottest: points[35] });
});

test('a limit far from the peaks is not in reach', () => {
  expect(limitInReach(65, [60, 72])).toBe(true);
  expect(limitInReach(78, [60, 72])).toBe(true);
  expect(limitInReach(85, [60, 72])).toBe(false);
  expect(limitInReach(40, [60, 72])).toBe(false);
});
