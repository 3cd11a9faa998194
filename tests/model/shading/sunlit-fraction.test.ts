/** The sampling of partial shade against a grid of ten thousand points. */
import { describe, expect, test } from 'vitest';
import { buildScene, type SceneInput } from '../../../model/shading/scene.ts';
import { sunlitCosine, sunPoints, sunVector } from '../../../model/shading/sunlit-fraction.ts';
import { boxPanels, samplePoints } from '../../../model/shading/wall-frame.ts';
import { sunPosition } from '../../../model/solar/sun-position.ts';

const BOX = {
  widthM: 0.8,
  heightM: 1,
  depthM: 0.3,
  mountHeightM: 1.4,
  mount: 'wall',
  standOffM: 0.02,
  postDistanceM: 2,
} as const;

const EAVE = { depthM: 0.5, heightAboveBoxM: 0.2, widthM: 1.2, offsetM: 0.3, transmittance: 0 };
const BARE: SceneInput = {
  azimuthDeg: 200,
  wallHeightM: 4,
  boxTopM: 1.9,
  eave: null,
  building: null,
  obstructions: [],
  horizon: [],
  season: { month: 6, southern: false },
};

const SCENES: [string, Partial<SceneInput>][] = [
  ['a narrow eave, off the middle', { eave: EAVE }],
  [
    'a post close by',
    { obstructions: [{ kind: 'block', rightM: 0.2, outM: 0.8, widthM: 0.15, depthM: 0.15, heightM: 4 }] },
  ],
  [
    'a low fence and a side wall',
    {
      obstructions: [
        { kind: 'front', distanceM: 1.2, heightM: 1.5, widthM: 3, offsetM: 1, transmittance: 0.3 },
        { kind: 'sideWall', side: 'right', distanceM: 0.9, depthM: 0.7, heightM: 1.6 },
      ],
    },
  ],
];

/** Every ten minutes of a day at 40 N. */
const suns = Array.from({ length: 144 }, (_, k) => sunPosition(new Date(Date.UTC(2026, 4, 20, 0, 10 * k)), 40, 0))
  .filter(({ elevationDeg }) => elevationDeg > 0)
  .map(sunVector);

describe.each(SCENES)('%s', (_, changes) => {
  const scene = buildScene({ ...BARE, ...changes });
  const sunlight = suns.map((direction) => ({ direction, rays: scene.sunRays(direction) }));
  const panels = boxPanels(scene.frame, BOX);

  test.each(['front', 'left', 'right', 'top'] as const)(
    '%s: the sum of the day lies within two in a hundred',
    (face) => {
      const panel = panels[face];
      const points = sunPoints(panel, scene, sunlight);
      const dense = samplePoints(panel, 100, 100).map(scene.inWall);
      const every = { scouts: dense, all: dense };
      const sumOf = (chosen: typeof points) =>
        sunlight.reduce((sum, sun) => sum + sunlitCosine(scene, panel, chosen, sun), 0);
      const exact = sumOf(every);
      expect(exact).toBeGreaterThan(1);
      expect(Math.abs(sumOf(points) / exact - 1)).toBeLessThan(0.02);
    },
  );
});

test('where few points do not settle the sum, more are taken', () => {
  const scene = buildScene({ ...BARE, eave: EAVE });
  const sunlight = suns.map((direction) => ({ direction, rays: scene.sunRays(direction) }));
  const { front } = boxPanels(scene.frame, BOX);
  expect(sunPoints(front, scene, sunlight).all.length).toBeGreaterThan(32);
  expect(sunPoints(front, buildScene(BARE), []).all.length).toBeLessThan(32);
});
