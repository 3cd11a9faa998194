/** Views and shadows against closed forms and hand geometry. */
import { describe, expect, test } from 'vitest';
import { FACES, perFace } from '../../../model/faces.ts';
import { sunOnGroundShare } from '../../../model/shading/ground-shadow.ts';
import { skylineThrough } from '../../../model/shading/horizon.ts';
import { buildScene, type SceneInput } from '../../../model/shading/scene.ts';
import { sunlitCosine, sunPoints, sunVector } from '../../../model/shading/sunlit-fraction.ts';
import { faceView } from '../../../model/shading/view-factors.ts';
import { boxPanels, faceAreasM2, pointOf, wallFrame } from '../../../model/shading/wall-frame.ts';
import { cosDeg, sinDeg } from '../../../model/solar/angles.ts';

const BOX = {
  widthM: 0.3,
  heightM: 0.35,
  depthM: 0.12,
  mountHeightM: 1.4,
  mount: 'wall',
  standOffM: 0.01,
  postDistanceM: 2,
} as const;
const BARE: SceneInput = {
  azimuthDeg: 180,
  wallHeightM: 3,
  boxTopM: BOX.mountHeightM + BOX.heightM / 2,
  eave: null,
  building: null,
  obstructions: [],
  horizon: [],
  season: { month: 7, southern: false },
};

const scene = (changes: Partial<SceneInput> = {}) => buildScene({ ...BARE, ...changes });
const views = (changes: Partial<SceneInput> = {}) => {
  const built = scene(changes);
  const panels = boxPanels(built.frame, BOX);
  return perFace((face) => faceView(built, panels[face]));
};

describe('the frame of a wall', () => {
  test('a south wall looks south, its right hand is east', () => {
    const { out, right } = wallFrame(180);
    expect(out[1]).toBeCloseTo(-1, 12);
    expect(right[0]).toBeCloseTo(1, 12);
  });

  test('faces look outward and have the areas of the box', () => {
    const panels = boxPanels(wallFrame(90), BOX);
    expect(panels.front.normal[0]).toBeCloseTo(1, 12);
    // Facing an east wall one looks west: the right hand is north.
    expect(panels.right.normal[1]).toBeCloseTo(1, 12);
    expect(panels.top.normal[2]).toBe(1);
    const { front, left, top } = faceAreasM2(BOX);
    expect([front, left, top]).toEqual([0.3 * 0.35, 0.12 * 0.35, 0.3 * 0.12]);
  });
});

describe('view factors before a bare wall of endless length', () => {
  const bare = views();

  test.each(FACES)('%s: shares sum to 1', (face) => {
    const { sky, ground, wall, obstruction } = bare[face].factors;
    expect(sky + ground + wall + obstruction).toBeCloseTo(1, 12);
  });

  test('front: half sky, half ground', () => {
    expect(bare.front.factors.sky).toBeCloseTo(0.5, 3);
    expect(bare.front.factors.ground).toBeCloseTo(0.5, 3);
  });

  test('sides: half wall by symmetry, the rest split between sky and ground', () => {
    // The wall is 3 m high and the box stands 0.07 m before it: it covers nearly all of that half.
    expect(bare.left.factors.wall).toBeGreaterThan(0.47);
    expect(bare.left.factors.wall).toBeLessThanOrEqual(0.5);
    expect(bare.left.factors).toEqual(bare.right.factors);
  });

  test('top: sky and wall; bottom: ground and wall', () => {
    expect(bare.top.factors.ground).toBe(0);
    expect(bare.top.factors.wall).toBeGreaterThan(0.45);
    expect(bare.bottom.factors.sky).toBe(0);
    expect(bare.bottom.factors.ground).toBeGreaterThan(0.5);
  });

  test('the front sees ground within a distance as the closed form says: 1 - h / sqrt(h^2 + x^2)', () => {
    // Element of an upright plate at height h over a strip of endless length (Howell, Catalog of Radiation Heat Transfer
    // Configuration Factors, two-dimensional crossed strings; value from memory, recomputed).
    const seen = bare.front.groundPoints.all;
    const share = (x: number) => seen.filter((p) => p[1] - 0.13 <= x).length / seen.length;
    for (const x of [0.7, 1.4, 3]) expect(Math.abs(share(x) - (1 - 1.4 / Math.hypot(1.4, x)))).toBeLessThan(0.04);
  });

  test('all of the horizon band before the front is open, half before a side', () => {
    expect(bare.front.horizonBand).toBeCloseTo(1, 6);
    expect(bare.left.horizonBand).toBeCloseTo(0.5, 2);
  });
});

describe('an eave', () => {
  const eave = { depthM: 1, heightAboveBoxM: 0.5, widthM: 200, offsetM: 0, transmittance: 0 };

  test('takes sky from the front as the closed form says: (1 - cos) / 2 of the angle it covers', () => {
    // From the middle of the front, 0.13 m out and 0.675 m below an endless eave: angle from the zenith to its edge.
    const toEdge = Math.atan2(1 - 0.13, 0.5 + BOX.heightM / 2);
    const expected = (1 - Math.cos(toEdge)) / 2;
    expect(Math.abs(views({ eave }).front.factors.obstruction - expected)).toBeLessThan(0.02);
  });

  test('shadow line: the sun reaches what lies below depth times the tangent of the profile angle', () => {
    const built = scene({ eave });
    const direction = sunVector({ elevationDeg: 45, azimuthDeg: 180 });
    const eaveUp = BARE.boxTopM + 0.5;
    const lineUp = eaveUp - 1;
    const onWall = (upM: number) => pointOf(built.frame, { rightM: 0, outM: 1e-6, upM });
    expect(built.sunRays(direction)(built.inWall(onWall(lineUp + 0.01)))).toBe(0);
    expect(built.sunRays(direction)(built.inWall(onWall(lineUp - 0.01)))).toBe(1);
  });

  test('a narrow eave lets the sun in from the side', () => {
    const built = scene({ eave: { ...eave, widthM: 0.4 } });
    const point = pointOf(built.frame, { rightM: 0, outM: 0.13, upM: 1.4 });
    expect(built.sunRays(sunVector({ elevationDeg: 60, azimuthDeg: 180 }))(built.inWall(point))).toBe(0);
    expect(built.sunRays(sunVector({ elevationDeg: 60, azimuthDeg: 110 }))(built.inWall(point))).toBe(1);
  });

  test('an offset to the right shades the right: on a south wall, the morning side', () => {
    const built = scene({ eave: { depthM: 0.6, heightAboveBoxM: 0.3, widthM: 1, offsetM: 1, transmittance: 0 } });
    const point = (rightM: number) => pointOf(built.frame, { rightM, outM: 0.13, upM: 1.4 });
    const noon = sunVector({ elevationDeg: 70, azimuthDeg: 180 });
    expect(built.sunRays(noon)(built.inWall(point(1)))).toBe(0);
    expect(built.sunRays(noon)(built.inWall(point(-1)))).toBe(1);
    // East is to the right of a person who faces a south wall.
    expect(point(1)[0]).toBeGreaterThan(0);
  });

  test('of no depth is none', () => {
    expect(views({ eave: { ...eave, depthM: 0 } })).toEqual(views());
  });
});

describe('a skyline', () => {
  test('goes straight between its points and round the circle', () => {
    const skyline = skylineThrough([
      [350, 10],
      [10, 20],
      [180, 0],
    ]);
    expect(skyline(0)).toBeCloseTo(15, 9);
    expect(skyline(360)).toBeCloseTo(15, 9);
    expect(skyline(95)).toBeCloseTo(10, 9);
    expect(skyline(350)).toBeCloseTo(10, 9);
    expect(skylineThrough([])(77)).toBe(0);
    expect(skylineThrough([[50, 12]])(300)).toBe(12);
    expect(
      skylineThrough([
        [50, 12],
        [50, 30],
      ])(200),
    ).toBeGreaterThan(0);
  });

  test('of 0 changes nothing', () => {
    expect(
      views({
        horizon: [
          [0, 0],
          [180, 0],
        ],
      }),
    ).toEqual(views());
  });

  test('of 90 removes all beam and sky', () => {
    const closed = views({ horizon: [[0, 90]] });
    for (const face of FACES) expect(closed[face].factors.sky).toBe(0);
    expect(closed.front.horizonBand).toBe(0);
    const built = scene({ horizon: [[0, 90]] });
    expect(built.sunRays(sunVector({ elevationDeg: 89, azimuthDeg: 180 }))(built.inWall([0, -1, 1]))).toBe(0);
  });

  test('hides the sun below it and not above it', () => {
    const built = scene({ horizon: [[0, 25]] });
    expect(built.sunRays(sunVector({ elevationDeg: 24, azimuthDeg: 200 }))(built.inWall([0, -1, 1]))).toBe(0);
    expect(built.sunRays(sunVector({ elevationDeg: 26, azimuthDeg: 200 }))(built.inWall([0, -1, 1]))).toBe(1);
  });
});

describe('sunlit faces', () => {
  const built = scene();
  const panels = boxPanels(built.frame, BOX);
  const cosine = (face: (typeof FACES)[number], elevationDeg: number, azimuthDeg: number) => {
    const direction = sunVector({ elevationDeg, azimuthDeg });
    return sunlitCosine(built, panels[face], sunPoints(panels[face], built, []), {
      direction,
      rays: built.sunRays(direction),
    });
  };

  test('a face takes the cosine of incidence, and none when turned away', () => {
    expect(cosine('front', 30, 180)).toBeCloseTo(cosDeg(30), 9);
    expect(cosine('top', 30, 180)).toBeCloseTo(sinDeg(30), 9);
    expect(cosine('bottom', 30, 180)).toBe(0);
    expect(cosine('right', 30, 110)).toBeGreaterThan(0);
    expect(cosine('left', 30, 110)).toBe(0);
  });

  test('no face sees the sun through the building, nor below the horizon', () => {
    for (const face of FACES) {
      expect(cosine(face, 30, 0)).toBe(0);
      expect(cosine(face, 20, 80)).toBe(0);
      expect(cosine(face, -5, 180)).toBe(0);
    }
  });
});

describe('shadow on the ground', () => {
  const front = views().front.groundPoints;

  test('of a wall reaches its height times the cotangent of the sun behind it', () => {
    const built = scene();
    const behind = sunVector({ elevationDeg: 45, azimuthDeg: 0 });
    expect(built.sunRays(behind)(built.inWall([0, -2.9, 0]))).toBe(0);
    expect(built.sunRays(behind)(built.inWall([0, -3.1, 0]))).toBe(1);
    expect(built.sunRays(sunVector({ elevationDeg: 45, azimuthDeg: 180 }))(built.inWall([0, -0.5, 0]))).toBe(1);
  });

  test('takes more of the view the lower the sun stands behind the wall, and none while it stands before it', () => {
    const share = (elevationDeg: number, azimuthDeg: number) => {
      const direction = sunVector({ elevationDeg, azimuthDeg });
      return 1 - sunOnGroundShare(scene(), front, { direction, rays: scene().sunRays(direction) });
    };
    expect(share(60, 180)).toBe(0);
    expect(share(60, 0)).toBeGreaterThan(0);
    expect(share(20, 0)).toBeGreaterThan(share(60, 0));
    expect(share(-1, 180)).toBe(1);
  });

  test('of an eave lies before the wall at noon', () => {
    const built = scene({ eave: { depthM: 1.5, heightAboveBoxM: 1, widthM: 50, offsetM: 0, transmittance: 0 } });
    const high = sunVector({ elevationDeg: 85, azimuthDeg: 180 });
    expect(built.sunRays(high)(built.inWall([0, -0.5, 0]))).toBe(0);
    expect(built.sunRays(high)(built.inWall([0, -2, 0]))).toBe(1);
  });
});
