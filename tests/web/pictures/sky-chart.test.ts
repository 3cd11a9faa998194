import { describe, expect, test } from 'vitest';
import { bearingNear, litDegree, pathRuns, silhouetteAreas, skyChart } from '../../../model/index.ts';
import { letterPlaces, showsAnywhere } from '../../../web/site/pictures/sky-chart.ts';
import { pathOf, silhouetteBetween } from './suns.ts';

/** One pixel a degree, for a wall that faces south. */
const chart = skyChart({ left: 0, top: 0, right: 360, bottom: 90 }, 180);

test('the wall faces the middle, the horizon is the foot, the zenith the top', () => {
  expect(chart.at(180, 0)).toEqual([180, 90]);
  expect(chart.at(0, 90)).toEqual([0, 0]);
  expect(chart.at(360, 45)).toEqual([360, 45]);
  expect(chart.at(180, 120)).toEqual([180, 0]);
});

test('a bearing is turned to within half a turn of another', () => {
  expect(bearingNear(350, 8)).toBe(-10);
  expect(bearingNear(10, 278)).toBe(370);
  expect(bearingNear(100, 188)).toBe(100);
});

test('how much of the sun reaches the box has three degrees', () => {
  expect([0, 0.2, 0.5, 1].map(litDegree)).toEqual(['none', 'some', 'most', 'most']);
});

describe('pathRuns', () => {
  test('a point stands for the time until the next one', () => {
    const path = pathOf([
      { minute: 0, azimuthDeg: 100, lit: 0 },
      { minute: 10, azimuthDeg: 110, lit: 1 },
      { minute: 20, azimuthDeg: 120, lit: 1 },
      { minute: 30, azimuthDeg: 130, lit: 0 },
      { minute: 40, azimuthDeg: 140, lit: 0 },
    ]);
    expect(pathRuns(path, chart).map(({ degree, points }) => [degree, points.map(([x]) => Math.round(x))])).toEqual([
      ['none', [100, 110]],
      ['most', [110, 120, 130]],
      ['none', [130, 140]],
    ]);
  });

  test('a path leaves at one side and comes in at the other', () => {
    const path = pathOf([
      { minute: 0, azimuthDeg: 358, elevationDeg: 20 },
      { minute: 10, azimuthDeg: 2, elevationDeg: 24 },
    ]);
    expect(pathRuns(path, chart).map(({ points }) => points)).toEqual([
      [
        [358, 70],
        [360, 68],
      ],
      [
        [0, 68],
        [2, 66],
      ],
    ]);
  });

  test('nothing is drawn between sunset and sunrise', () => {
    const path = pathOf([
      { minute: 0, azimuthDeg: 340, elevationDeg: 1 },
      { minute: 10, azimuthDeg: 343, elevationDeg: 0.2 },
      { minute: 120, azimuthDeg: 17, elevationDeg: 0.3 },
      { minute: 130, azimuthDeg: 20, elevationDeg: 1 },
    ]);
    expect(pathRuns(path, chart).map(({ points }) => points.map(([x]) => x))).toEqual([
      [340, 343],
      [17, 20],
    ]);
  });
});

test('a silhouette runs along its tops and back along its feet', () => {
  const [area] = silhouetteAreas(silhouetteBetween(170, 172, 40, 'eave'), chart);
  expect(area).toEqual([
    [170, 50],
    [171, 50],
    [172, 50],
    [172, 90],
    [171, 90],
    [170, 90],
  ]);
});

test('the letter of a silhouette stands where there is room and nothing nearer covers it', () => {
  const silhouette = silhouetteBetween(100, 160, 40, 'block');
  expect(letterPlaces(silhouette, chart, () => true)[0]).toEqual([120, 70]);
  const [first] = letterPlaces(silhouette, chart, ({ azimuthDeg }) => azimuthDeg > 150);
  expect(first).toEqual([151, 70]);
  expect(letterPlaces(silhouette, chart, () => false)).toEqual([]);
  expect(showsAnywhere(silhouette, () => false)).toBe(false);
  expect(showsAnywhere(silhouette, ({ elevationDeg }) => elevationDeg > 25)).toBe(true);
});
