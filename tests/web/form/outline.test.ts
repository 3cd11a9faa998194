import { describe, expect, test } from 'vitest';
import { outlineEdges, type PlanPoint } from '../../../model/index.ts';
import type { Draft } from '../../../web/site/draft.ts';
import {
  enteredOutline,
  rectangleCorners,
  rectangleOf,
  withCornerAfter,
  withoutBuilding,
  withoutCorner,
} from '../../../web/site/form/outline.ts';

const rectangle = { bearingDeg: 188, lengthM: 14, widthM: 8, firstCorner: [0, 0] as PlanPoint, anticlockwise: false };

describe('a rectangle', () => {
  test('faces the bearing and 90, 180 and 270 degrees on', () => {
    const edges = outlineEdges(rectangleCorners(rectangle, 'metric'));
    expect(edges.map(({ azimuthDeg }) => Math.round(azimuthDeg))).toEqual([188, 278, 8, 98]);
    expect(edges.map(({ lengthM }) => Math.round(lengthM * 100) / 100)).toEqual([14, 8, 14, 8]);
  });

  test.each(['metric', 'us'] as const)('is known again by its corners, in %s units and either order', (units) => {
    for (const anticlockwise of [false, true]) {
      for (const bearingDeg of [0, 8, 98.3, 188, 359.9]) {
        const entered = { ...rectangle, bearingDeg, anticlockwise, lengthM: 12.192, widthM: 6.096 };
        const found = rectangleOf(rectangleCorners(entered, units), units);
        expect(found?.bearingDeg).toBeCloseTo(bearingDeg, 6);
        expect(found?.lengthM).toBeCloseTo(12.192, 2);
        expect(found?.widthM).toBeCloseTo(6.096, 2);
        expect(found?.anticlockwise).toBe(anticlockwise);
      }
    }
  });

  test('is not what has a corner pulled away', () => {
    const corners = rectangleCorners(rectangle, 'metric');
    expect(rectangleOf(corners.with(2, [0, 3]), 'metric')).toBeNull();
    expect(rectangleOf(corners.slice(1), 'metric')).toBeNull();
  });
});

describe('corners in a draft', () => {
  const square: Draft = {
    building: {
      outlineM: [
        [0, 0],
        [0, 10],
        [10, 10],
        [10, 0],
      ],
    },
    walls: [{ edge: 0, alongM: 4 }, { edge: 2 }, { edge: 3 }, {}, 'no wall'],
  };
  const edges = (draft: Draft) => (draft['walls'] as { edge?: number }[]).map(({ edge }) => edge);

  test('one comes in halfway, and walls stay on their edges', () => {
    const changed = withCornerAfter(square, 1, 'metric');
    expect(enteredOutline(changed)?.[2]).toEqual([5, 10]);
    expect(edges(changed)).toEqual([0, 3, 4, undefined, undefined]);
    expect(enteredOutline(withCornerAfter(square, 3, 'metric'))?.[4]).toEqual([5, 0]);
  });

  test('one goes, and its edges become one', () => {
    expect(edges(withoutCorner(square, 1))).toEqual([0, 1, 2, undefined, undefined]);
    expect(edges(withoutCorner(square, 0))).toEqual([2, 1, 2, undefined, undefined]);
  });

  test('the building goes with what only its walls have', () => {
    expect(withoutBuilding(square)).toEqual({ walls: [{}, {}, {}, {}, 'no wall'] });
  });

  test.each([
    undefined,
    7,
    [[0, 0]],
    [
      [0, 0],
      [1, '3 ft'],
      [2, 2],
    ],
    [
      [0, 0],
      [1, null],
      [2, 2],
    ],
  ])('%j is no outline yet', (outlineM) => {
    expect(enteredOutline({ building: { outlineM } })).toBeNull();
  });
});
