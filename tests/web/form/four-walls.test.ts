import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEMO_SITE } from '../../../model/index.ts';
import type { Draft } from '../../../web/site/draft.ts';
import { hasFourWalls, wallWord, withFourWalls } from '../../../web/site/form/four-walls.ts';
import { enteredOutline, rectangleOf } from '../../../web/site/form/outline.ts';

const DEMO = DEMO_SITE as Draft;
const BARE: Draft = { ...DEMO, building: null };
type Wall = { name: string; azimuthDeg: number; electrodeDistanceM?: number };
const walls = (draft: Draft) => draft['walls'] as Wall[];
const bearings = (draft: Draft) => walls(draft).map(({ azimuthDeg }) => azimuthDeg);

describe('one bearing', () => {
  test('makes four walls where there are others, named by the way they face', () => {
    const made = withFourWalls(
      { ...BARE, walls: [{ name: 'yard', azimuthDeg: 10, construction: 'brick' }] },
      50,
      'metric',
    );
    expect(walls(made)).toEqual([
      { name: 'north-east', azimuthDeg: 50, construction: 'brick' },
      { name: 'south-east', azimuthDeg: 140, construction: 'brick' },
      { name: 'south-west', azimuthDeg: 230, construction: 'brick' },
      { name: 'north-west', azimuthDeg: 320, construction: 'brick' },
    ]);
    expect(hasFourWalls(made)).toBe(true);
  });

  test('turns four walls the shorter way; each keeps what is known of it', () => {
    const turned = withFourWalls(BARE, 350, 'metric');
    expect(bearings(turned)).toEqual([350, 80, 170, 260]);
    expect(walls(turned).map(({ electrodeDistanceM }) => electrodeDistanceM)).toEqual([21, 14, 11, 1.5]);
    // Any of the four may be the one that was measured.
    for (const bearing of [80, 170, 260]) expect(withFourWalls(BARE, bearing, 'metric')).toEqual(turned);
  });

  test('renames walls that are named by the way they face, and no others', () => {
    const named = walls(BARE).map((wall, k) => (k === 0 ? { ...wall, name: 'workshop' } : wall));
    const turned = withFourWalls({ ...BARE, walls: named }, 40, 'metric');
    expect(walls(turned).map(({ name }) => name)).toEqual(['workshop', 'south-east', 'south-west', 'north-west']);
  });

  test('turns a rectangular outline along, its size kept', () => {
    const before = rectangleOf(enteredOutline(DEMO) ?? [], 'metric');
    const turned = withFourWalls(DEMO, 20, 'metric');
    const after = rectangleOf(enteredOutline(turned) ?? [], 'metric');
    expect(after?.lengthM).toBeCloseTo(before?.lengthM ?? 0, 1);
    expect(after?.widthM).toBeCloseTo(before?.widthM ?? 0, 1);
    expect(bearings(turned)).toContain(after?.bearingDeg);
  });

  test('half-way between two quarters no bearing comes twice', () => {
    const draft = withFourWalls({ ...BARE, walls: [{ name: 'a', azimuthDeg: 0 }] }, 315.9, 'metric');
    expect(bearings(draft)).toEqual([315.9, 45.9, 135.9, 225.9]);
    expect(bearings(withFourWalls(draft, 0.9, 'metric')).sort((a, b) => a - b)).toEqual([0.9, 90.9, 180.9, 270.9]);
  });

  test('always makes four walls at right angles, of different names', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3600 }), fc.integer({ min: 0, max: 3600 }), (from, to) => {
        const draft = withFourWalls({ ...BARE, walls: [{ name: 'a', azimuthDeg: 0 }] }, from / 10, 'metric');
        const turned = withFourWalls(draft, to / 10, 'metric');
        expect(hasFourWalls(turned)).toBe(true);
        expect(bearings(turned).some((bearing) => Math.abs(bearing - ((to / 10) % 360)) < 1e-9)).toBe(true);
        expect(new Set(walls(turned).map(({ name }) => name)).size).toBe(4);
      }),
    );
  });
});

test.each([
  [0, 'north'],
  [22.4, 'north'],
  [22.6, 'north-east'],
  [359, 'north'],
  [360, 'north'],
  [188, 'south'],
])('a wall that faces %s is called %s', (bearing, word) => {
  expect(wallWord(bearing)).toBe(word);
});

test.each([
  [[0, 90, 180, 270], true],
  [[270, 0.5, 90, 180], true],
  [[0, 90, 180], false],
  [[0, 90, 180, 280], false],
  [[0, 90, 180, 'W'], false],
  [[0, 0, 180, 180], false],
])('bearings %j are four at right angles: %s', (azimuths, four) => {
  expect(hasFourWalls({ walls: azimuths.map((azimuthDeg) => ({ azimuthDeg })) })).toBe(four);
});
