import { expect, test } from 'vitest';
import { AT_REST } from '../../../../web/area/map/frame.ts';
import { nearestPoint, REACH_PX } from '../../../../web/area/map/nearest.ts';

const points = { x: Float64Array.of(100, 140, 100, Number.NaN), y: Float64Array.of(100, 100, 100, 100) };
const order = [0, 1, 2, 3];

test('the nearest within reach, none beyond; a place that the map does not have is never it', () => {
  expect(nearestPoint(points, AT_REST, [125, 100], { order })).toBe(1);
  expect(nearestPoint(points, AT_REST, [140, 100 + REACH_PX], { order })).toBe(1);
  expect(nearestPoint(points, AT_REST, [140, 100.5 + REACH_PX], { order })).toBeNull();
  expect(nearestPoint(points, AT_REST, [700, 100], { order: [3] })).toBeNull();
});

test('of two at one place, the one that is drawn on top', () => {
  expect(nearestPoint(points, AT_REST, [101, 100], { order: [0, 1, 2] })).toBe(2);
  expect(nearestPoint(points, AT_REST, [101, 100], { order: [2, 1, 0] })).toBe(0);
});

test('a finger needs 44 px at every zoom', () => {
  expect(2 * REACH_PX).toBeGreaterThanOrEqual(44);
  const view = { k: 8, x: -700, y: -760 };
  expect(nearestPoint(points, view, [100 + 20, 40], { order: [0] })).toBe(0);
  expect(nearestPoint(points, view, [100 + 23, 40], { order: [0] })).toBeNull();
});
