/** Obstructions against closed forms of view factors and hand geometry of shadows. */
import { describe, expect, test } from 'vitest';
import type { Site, SiteInput } from '../../../model/index.ts';
import { evaluateDay, parseSite, SiteError } from '../../../model/index.ts';
import { meets } from '../../../model/shading/bodies.ts';
import { buildScene, type SceneInput } from '../../../model/shading/scene.ts';
import { sunVector } from '../../../model/shading/sunlit-fraction.ts';
import { faceView } from '../../../model/shading/view-factors.ts';
import { boxPanels, pointOf } from '../../../model/shading/wall-frame.ts';
import { siteWith, wallFacing } from '../sites.ts';

type Obstruction = Site['walls'][number]['obstructions'][number];
type Entered = NonNullable<SiteInput['walls'][number]['obstructions']>[number];

const BOX = {
  widthM: 0.02,
  heightM: 0.02,
  depthM: 0.05,
  mountHeightM: 1.5,
  mount: 'wall',
  standOffM: 0,
  postDistanceM: 2,
} as const;
const NORTHERN_JULY = { month: 7, southern: false };

function sceneWith(obstructions: Obstruction[], changes: Partial<SceneInput> = {}) {
  const boxTopM = BOX.mountHeightM + BOX.heightM / 2;
  const bare = {
    azimuthDeg: 180,
    wallHeightM: 6,
    boxTopM,
    eave: null,
    building: null,
    horizon: [],
    season: NORTHERN_JULY,
  };
  return buildScene({ ...bare, obstructions, ...changes });
}

function front(changes: Partial<Extract<Obstruction, { kind: 'front' }>> = {}): Obstruction {
  return { kind: 'front', distanceM: 4, heightM: 3, widthM: 400, offsetM: 0, transmittance: 0, ...changes };
}

const frontView = (scene: ReturnType<typeof sceneWith>) => faceView(scene, boxPanels(scene.frame, BOX).front).factors;

describe('views against closed forms (Howell, A Catalog of Radiation Heat Transfer Configuration Factors; value from memory)', () => {
  /** Within one in a hundred; what makes up less than a sixteenth of the view to 0.0006 of it. */
  const near = (seen: number, expected: number) =>
    expect(Math.abs(seen - expected)).toBeLessThan(Math.max(0.01 * expected, 0.0006));

  test.each([1, 2, 4, 8].flatMap((distanceM) => [2, 3, 6].map((heightM) => ({ distanceM, heightM }))))(
    'an endless facade across a yard, $heightM m high at $distanceM m: (sin of its top + sin of its foot) / 2',
    ({ distanceM, heightM }) => {
      const across = distanceM - 0.05;
      const expected = (Math.sin(Math.atan2(heightM - 1.5, across)) + Math.sin(Math.atan2(1.5, across))) / 2;
      near(frontView(sceneWith([front({ distanceM, heightM })])).obstruction, expected);
    },
  );

  test.each([0.5, 1, 2, 4].flatMap((distanceM) => [0.8, 1.6, 4].map((widthM) => ({ distanceM, widthM }))))(
    'a parallel rectangle straight before a small face, $widthM m wide at $distanceM m: four times the corner form',
    ({ distanceM, widthM }) => {
      // Element to a parallel rectangle with one corner opposite: X = a / c, Y = b / c.
      const corner = (X: number, Y: number) => {
        const [x, y] = [Math.sqrt(1 + X * X), Math.sqrt(1 + Y * Y)];
        return ((X / x) * Math.atan(Y / x) + (Y / y) * Math.atan(X / y)) / (2 * Math.PI);
      };
      const c = distanceM - 0.05;
      const expected = 2 * corner(widthM / 2 / c, 1.5 / c) + 2 * corner(widthM / 2 / c, 0.9 / c);
      near(frontView(sceneWith([front({ distanceM, widthM, heightM: 2.4 })])).obstruction, expected);
    },
  );

  test.each([0.3, 0.5, 1, 2].flatMap((distanceM) => [1, 2, 4].map((depthM) => ({ distanceM, depthM }))))(
    'a rectangle at right angles, the side wall of an inside corner $distanceM m away that reaches $depthM m out',
    ({ distanceM, depthM }) => {
      // Element to a rectangle in a plane at right angles, one corner on the normal's foot: h high, from 0 to a out.
      const perpendicular = (h: number, a: number, c: number) => {
        const [x, y] = [a / h, c / h];
        const root = Math.sqrt(x * x + y * y);
        return (Math.atan(1 / y) - (y / root) * Math.atan(1 / root)) / (2 * Math.PI);
      };
      const expected = 2 * perpendicular(1.5, depthM - 0.05, distanceM);
      const side: Obstruction = { kind: 'sideWall', side: 'left', distanceM, depthM, heightM: 3 };
      near(frontView(sceneWith([side])).obstruction, expected);
    },
  );

  test.each(
    [0.3, 0.6, 1, 2].flatMap((depthM) => [0.2, 0.5, 1, 2].map((heightAboveBoxM) => ({ depthM, heightAboveBoxM }))),
  )(
    'an upright plate under an endless overhang, $depthM m deep $heightAboveBoxM m above: sky is half the cosine to its edge',
    ({ depthM, heightAboveBoxM }) => {
      const eave = { depthM, heightAboveBoxM, widthM: 400, offsetM: 0, transmittance: 0 };
      const toEdge = Math.cos(Math.atan2(depthM - 0.05, heightAboveBoxM + 0.01));
      const { sky, ground, obstruction } = frontView(sceneWith([], { eave }));
      near(sky, toEdge / 2);
      near(obstruction, (1 - toEdge) / 2);
      near(ground, 0.5);
    },
  );

  test('slats let through their share of the sky above an eave', () => {
    const eave = { depthM: 1, heightAboveBoxM: 0.5, widthM: 400, offsetM: 0, transmittance: 0 };
    const solid = frontView(sceneWith([], { eave })).obstruction;
    expect(frontView(sceneWith([], { eave: { ...eave, transmittance: 0.4 } })).obstruction).toBeCloseTo(0.6 * solid, 9);
    const open = sceneWith([], { eave: { ...eave, transmittance: 1 } });
    expect(frontView(open)).toEqual(frontView(sceneWith([])));
  });

  test('a screen takes from the view what it does not let through', () => {
    const solid = frontView(sceneWith([front()])).obstruction;
    expect(frontView(sceneWith([front({ transmittance: 0.4 })])).obstruction).toBeCloseTo(0.6 * solid, 9);
    const two = frontView(sceneWith([front({ transmittance: 0.5 }), front({ distanceM: 4.001, transmittance: 0.5 })]));
    expect(two.obstruction).toBeCloseTo(0.75 * solid, 2);
  });

  test('ground behind a solid fence is not seen, behind a screen it is', () => {
    const furthest = (transmittance: number) => {
      const scene = sceneWith([front({ distanceM: 2, heightM: 4, transmittance })]);
      return Math.max(...faceView(scene, boxPanels(scene.frame, BOX).front).groundPoints.all.map(([, out]) => out));
    };
    expect(furthest(0)).toBeLessThanOrEqual(2);
    expect(furthest(0.8)).toBeGreaterThan(2.5);
  });

  test('shares always sum to 1, half-open screens included', () => {
    const factors = frontView(sceneWith([front({ transmittance: 0.4 }), front({ distanceM: 9, heightM: 8 })]));
    expect(factors.sky + factors.ground + factors.wall + factors.obstruction).toBeCloseTo(1, 9);
  });
});

describe('shadows by hand', () => {
  test('a fence of 2 m, 3 m away, hides the sun below atan((2 - 1.5) / 3) from 1.5 m', () => {
    const scene = sceneWith([front({ distanceM: 3, heightM: 2 })]);
    const point = pointOf(scene.frame, { rightM: 0, outM: 0, upM: 1.5 });
    const edge = (Math.atan2(0.5, 3) * 180) / Math.PI;
    expect(scene.sunRays(sunVector({ elevationDeg: edge - 0.1, azimuthDeg: 180 }))(scene.inWall(point))).toBe(0);
    expect(scene.sunRays(sunVector({ elevationDeg: edge + 0.1, azimuthDeg: 180 }))(scene.inWall(point))).toBe(1);
  });

  test('a side wall on the left of a south wall shades the afternoon, one on the right the morning', () => {
    const side = (which: 'left' | 'right'): Obstruction => ({
      kind: 'sideWall',
      side: which,
      distanceM: 0.5,
      depthM: 2,
      heightM: 4,
    });
    const point = (scene: ReturnType<typeof sceneWith>) => pointOf(scene.frame, { rightM: 0, outM: 0.05, upM: 1.5 });
    const [left, right] = [sceneWith([side('left')]), sceneWith([side('right')])];
    const [morning, afternoon] = [120, 240].map((azimuthDeg) => sunVector({ elevationDeg: 30, azimuthDeg }));
    expect(left.sunRays(afternoon as never)(left.inWall(point(left)))).toBe(0);
    expect(left.sunRays(morning as never)(left.inWall(point(left)))).toBe(1);
    expect(right.sunRays(afternoon as never)(right.inWall(point(right)))).toBe(1);
    expect(right.sunRays(morning as never)(right.inWall(point(right)))).toBe(0);
  });

  test('the shadow of a block on the ground is its height over the tangent of the sun', () => {
    const block: Obstruction = { kind: 'block', rightM: 0, outM: 5, widthM: 10, depthM: 2, heightM: 3 };
    const scene = sceneWith([block]);
    const sun = sunVector({ elevationDeg: 45, azimuthDeg: 180 });
    expect(scene.sunRays(sun)(scene.inWall(pointOf(scene.frame, { rightM: 0, outM: 2.1, upM: 0 })))).toBe(0);
    expect(scene.sunRays(sun)(scene.inWall(pointOf(scene.frame, { rightM: 0, outM: 1.9, upM: 0 })))).toBe(1);
  });

  test('a crown is round: its corners are open', () => {
    const crown = { low: [-2, 3, 2], high: [2, 7, 6], shape: 'crown', transmittance: 0 } as const;
    expect(meets(crown, [0, 0, 4], [0, 1, 0], 100)).toBe(true);
    expect(meets(crown, [1.9, 0, 4], [0, 1, 0], 100)).toBe(true);
    expect(meets(crown, [1.9, 0, 5.9], [0, 1, 0], 100)).toBe(false);
    expect(meets(crown, [0, 0, 4], [0, -1, 0], 100)).toBe(false);
    expect(meets(crown, [0, 0, 4], [0, 1, 0], 2.9)).toBe(false);
  });
});

describe('a day behind obstructions', () => {
  const peak = (obstructions: Entered[], more: Parameters<typeof siteWith>[0] = {}) =>
    evaluateDay(siteWith({ walls: wallFacing(270, { obstructions }), ...more }), 'wall').peakInsideAirC;
  const fence: Entered = { kind: 'front', distanceM: 2, heightM: 3 };
  const house: Entered = { kind: 'block', rightM: 4, outM: 6, widthM: 8, depthM: 6, heightM: 6 };
  const tree: Entered = { kind: 'tree', rightM: 0, outM: 5, heightM: 7, crownDiameterM: 5 };

  test('a transmittance of 1 is no obstruction, to the last digit', () => {
    expect(peak([{ ...fence, transmittance: 1 } as Entered])).toBe(peak([]));
  });

  test('the order does not matter', () => {
    expect(peak([tree, fence, house])).toBeCloseTo(peak([house, tree, fence]), 9);
  });

  test('a fence before a west wall cools its box by many kelvins, a screen by fewer', () => {
    const open = peak([]);
    expect(peak([fence])).toBeLessThan(open - 4);
    const screen = peak([{ ...fence, transmittance: 0.5 } as Entered]);
    expect(screen).toBeLessThan(open - 1);
    expect(screen).toBeGreaterThan(peak([fence]));
  });

  test('a tree shades more in summer than in winter, south of the equator half a year later', () => {
    // The same sun and air on both days: an equinox, and months of leaf around one of them.
    const gain = (date: string, latitudeDeg: number) => {
      const climate = { designDay: { date, maxC: 35, dailyRangeK: 10, dewPointC: 5 } };
      const leafy = { ...tree, leafOnMonths: [4, 10] } as Entered;
      const insolation = (obstructions: Entered[]) => {
        const site = siteWith({ climate, place: { latitudeDeg }, walls: wallFacing(270, { obstructions }) });
        return evaluateDay(site, 'wall').faceIrradianceWm2.front.reduce((sum, wm2) => sum + wm2 / 12, 0);
      };
      return 1 - insolation([leafy]) / insolation([]);
    };
    expect(gain('2026-09-23', 35)).toBeGreaterThan(gain('2026-03-20', 35) + 0.1);
    expect(gain('2026-03-20', -35)).toBeGreaterThan(gain('2026-09-23', -35) + 0.1);
  });

  test('energy still closes', () => {
    const walls = wallFacing(270, { obstructions: [tree, fence, house] });
    expect(Math.abs(evaluateDay(siteWith({ walls }), 'wall').energyClosure)).toBeLessThan(0.001);
  });
});

describe('obstructions that cannot be', () => {
  test.each([
    [
      { kind: 'sideWall', side: 'left', distanceM: 0.1, depthM: 1, heightM: 3 },
      /distanceM: cuts through the box; allowed: from 0\.15 m/,
    ],
    [{ kind: 'front', distanceM: 0.1, heightM: 3 }, /distanceM: cuts through the box; allowed: from 0\.13 m/],
    [{ kind: 'block', rightM: 0, outM: 0, widthM: 2, depthM: 1, heightM: 2 }, /outM: cuts through the box/],
    [{ kind: 'tree', rightM: 0, outM: 1, heightM: 6, crownDiameterM: 4, crownBaseM: 1 }, /outM: cuts through the box/],
    [{ kind: 'tree', rightM: 9, outM: 5, heightM: 1, crownDiameterM: 4 }, /heightM: the tree ends below its crown/],
    [{ kind: 'front', distance: 3, heightM: 3 }, /distance: unknown field; did you mean "distanceM"\?/],
    [{ kind: 'front', distanceM: -3, heightM: 3 }, /distanceM: -3 is below 0\.05/],
    [{ kind: 'fence', distanceM: 3 }, /"fence" is no kind; allowed: sideWall, front, block, tree/],
  ])('%j', (obstruction, message) => {
    try {
      siteWith({ walls: wallFacing(270, { obstructions: [obstruction] }) });
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(SiteError);
      expect((error as SiteError).message).toMatch(message);
    }
  });

  test('one beside the box is fine, and goes through a file unchanged', () => {
    const block: Entered = { kind: 'block', rightM: 1.5, outM: 0, widthM: 2, depthM: 1, heightM: 2 };
    const site = siteWith({ walls: wallFacing(270, { obstructions: [block] }) });
    expect(parseSite(JSON.parse(JSON.stringify(site)))).toEqual(site);
  });
});
