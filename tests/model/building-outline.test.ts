/** Outlines of buildings: which way edges face, where walls stand on them, and how a wing shades. */
import { describe, expect, test } from 'vitest';
import { edgeFacing, otherEdgesFrom, outlineEdges, outlineFault, seenFrom } from '../../model/building-outline.ts';
import { evaluateDay, parseSite, SiteError, type SiteInput } from '../../model/index.ts';
import { sunVector } from '../../model/shading/sunlit-fraction.ts';
import { siteDay } from '../../model/siting/design-day.ts';
import { prepareWallShade } from '../../model/siting/wall-shade.ts';
import { siteWith, wallFacing } from './sites.ts';

/** 10 m from west to east, 6 m from south to north, clockwise from the south-west. */
const RECTANGLE: [number, number][] = [
  [0, 0],
  [0, 6],
  [10, 6],
  [10, 0],
];

/** The same with a wing of 4 m by 5 m that runs south from its eastern end. */
const WITH_WING: [number, number][] = [
  [0, 0],
  [0, 6],
  [10, 6],
  [10, -5],
  [6, -5],
  [6, 0],
];

describe('edges', () => {
  test.each([
    ['clockwise', RECTANGLE],
    ['anticlockwise', [...RECTANGLE].reverse()],
  ])('face outward, corners given %s', (_, corners) => {
    const bearings = outlineEdges(corners).map(({ azimuthDeg }) => Math.round(azimuthDeg));
    expect([...bearings].sort((a, b) => a - b)).toEqual([0, 90, 180, 270]);
    const south = outlineEdges(corners).find(({ azimuthDeg }) => Math.round(azimuthDeg) === 180);
    expect(south?.lengthM).toBe(10);
    // Who faces a south wall has west to the left.
    expect(south?.left).toEqual([0, 0]);
    expect(south?.right).toEqual([10, 0]);
  });

  test('number k runs from corner k to the next', () => {
    expect(outlineEdges(RECTANGLE).map(({ azimuthDeg }) => azimuthDeg)).toEqual([270, 0, 90, 180]);
  });

  test('a wall stands on the longest edge that faces its way within ten degrees', () => {
    expect(edgeFacing(WITH_WING, 180)).toBe(5);
    expect(edgeFacing(WITH_WING, 171)).toBe(5);
    expect(edgeFacing(WITH_WING, 90)).toBe(2);
    expect(edgeFacing(WITH_WING, 45)).toBeUndefined();
  });

  test('corners are seen from a place on an edge: to the right, and out', () => {
    const seen = seenFrom(WITH_WING, { edge: 5, alongM: 2 });
    expect(seen([6, -5])).toEqual([4, 5]);
    expect(seen([0, 6])).toEqual([-2, -6]);
    expect(otherEdgesFrom(WITH_WING, { edge: 5, alongM: 2 })).toHaveLength(5);
  });

  test.each([
    [
      [
        [0, 0],
        [10, 6],
        [10, 0],
        [0, 6],
      ],
      /crosses itself/,
    ],
    [
      [
        [0, 0],
        [5, 0],
        [10, 0],
      ],
      /encloses no ground/,
    ],
    [
      [
        [0, 0],
        [0, 0],
        [10, 0],
        [10, 6],
      ],
      /one spot/,
    ],
  ] as [[number, number][], RegExp][])('%j is no outline', (corners, wrong) => {
    expect(outlineFault(corners)).toMatch(wrong);
  });

  test('rectangles and wings are outlines', () => {
    expect(outlineFault(RECTANGLE)).toBeNull();
    expect(outlineFault(WITH_WING)).toBeNull();
  });
});

describe('a building shades itself', () => {
  const building = (outlineM: [number, number][], heightM = 5) => ({ outlineM, heightM });
  const south = (outlineM: [number, number][], wall: object = {}) =>
    siteWith({
      building: building(outlineM),
      place: { latitudeDeg: 45 },
      climate: { designDay: { date: '2026-03-21', maxC: 20, dailyRangeK: 8, dewPointC: 0 } },
      walls: wallFacing(180, { edge: outlineM === RECTANGLE ? 3 : 5, ...wall }),
    });
  const insolation = (site: ReturnType<typeof siteWith>, hours: (hour: number) => boolean) => {
    const day = evaluateDay(site, 'wall');
    return day.faceIrradianceWm2.front.reduce((sum, wm2, k) => sum + (hours(k / 12) ? wm2 : 0), 0);
  };

  test('a wing to the east takes the morning sun from the south wall beside it, not the afternoon sun', () => {
    const [plain, wing] = [south(RECTANGLE, { alongM: 5 }), south(WITH_WING, { alongM: 5 })];
    const morning = (hour: number) => hour < 11;
    const afternoon = (hour: number) => hour > 14;
    expect(insolation(wing, morning)).toBeLessThan(0.6 * insolation(plain, morning));
    expect(insolation(wing, afternoon)).toBeGreaterThan(0.75 * insolation(plain, afternoon));
  });

  test('the wing takes less the further away it stands', () => {
    const all = () => true;
    const [near, far] = [south(WITH_WING, { alongM: 5 }), south(WITH_WING, { alongM: 1 })];
    expect(insolation(far, all)).toBeGreaterThan(insolation(near, all));
  });

  test('a side wall of the same place and size shades the same', () => {
    const wing = south(WITH_WING, { alongM: 4 });
    const side = south(
      [
        [0, 0],
        [0, 6],
        [6, 6],
        [6, 0],
      ],
      {
        edge: 3,
        alongM: 4,
        heightM: 5,
        obstructions: [{ kind: 'sideWall', side: 'right', distanceM: 2, depthM: 5, heightM: 5 }],
      },
    );
    const [a, b] = [wing, side].map((site) => evaluateDay(site, 'wall').peakInsideAirC);
    expect(Math.abs((a as number) - (b as number))).toBeLessThan(0.1);
  });

  test('a wing that leaves the wall at an angle hides the sun before its end and not beyond', () => {
    // From (6, 0) out to (10, -4): as one faces the wall from its middle, from 3 m to the right to 7 m right and 4 m out.
    const outlineM: [number, number][] = [
      [0, 0],
      [0, 6],
      [10, 6],
      [10, -4],
      [6, 0],
    ];
    const site = siteWith({ building: building(outlineM), walls: wallFacing(180, { edge: 4, alongM: 3, heightM: 5 }) });
    const { scene } = prepareWallShade(site, site.walls[0] as (typeof site.walls)[number], siteDay(site));
    const sunAt = (azimuthDeg: number) => scene.sunRays(sunVector({ elevationDeg: 10, azimuthDeg }))([0, 0.1, 1.4]);
    // The line to the sun meets out = right - 3 at right = 3.1 / (1 - tan(azimuth - 90)): 4.9 m at 110 degrees, 8.2 m at 122.
    expect(sunAt(110)).toBe(0);
    expect(sunAt(122)).toBe(1);
    expect(sunAt(250)).toBe(1);
  });

  test('a box at the end of a wall sees round it', () => {
    const view = (alongM: number) => {
      const site = south(RECTANGLE, { alongM });
      const shade = prepareWallShade(site, site.walls[0] as (typeof site.walls)[number], siteDay(site));
      return shade.faces.left.view.factors.wall;
    };
    expect(view(5)).toBeGreaterThan(0.47);
    expect(view(0.15)).toBe(0);
    expect(view(0.5)).toBeLessThan(view(5));
  });

  test('energy closes, and the site goes through a file unchanged', () => {
    const site = south(WITH_WING);
    expect(Math.abs(evaluateDay(site, 'wall').energyClosure)).toBeLessThan(0.001);
    expect(parseSite(JSON.parse(JSON.stringify(site)))).toEqual(site);
  });

  test('what was left out is filled in and said: the edge, the middle of it, the height of the wall', () => {
    const site = siteWith({ building: building(WITH_WING), walls: wallFacing(90) });
    expect(site.walls[0]).toMatchObject({ edge: 2, alongM: 5.5, heightM: 5 });
    expect(site.assumed).toEqual(expect.arrayContaining(['walls.0.edge', 'walls.0.alongM', 'walls.0.heightM']));
  });
});

describe('buildings that cannot be', () => {
  const problemsOf = (changes: Partial<SiteInput>) => {
    try {
      siteWith(changes as never);
    } catch (error) {
      if (error instanceof SiteError) return error.message;
    }
    return 'accepted';
  };
  const on = (wall: object, outlineM: unknown = WITH_WING, azimuthDeg = 180): Partial<SiteInput> =>
    ({ building: { outlineM, heightM: 5 }, walls: wallFacing(azimuthDeg, wall) }) as never;

  test.each([
    [
      on({}, WITH_WING, 45),
      /walls\.0\.azimuthDeg: no edge of the building's outline faces that way.*edge 0 faces 270 deg/,
    ],
    [on({ edge: 0 }), /walls\.0\.edge: the wall faces 180 deg and this edge does not/],
    [on({ edge: 9 }), /walls\.0\.edge: the building's outline has no such edge; allowed: 0 to 5/],
    [on({ edge: 5, alongM: 6 }), /walls\.0\.alongM: the box reaches past this edge; allowed: 0\.15 to 5\.85 m/],
    [on({ edge: -1 }), /walls\.0\.edge: edges are counted from 0/],
    [
      on({}, [
        [0, 0],
        [5, 5],
      ]),
      /building\.outlineM: a building has three corners at least/,
    ],
    [
      on({}, [
        [0, 0],
        [10, 6],
        [10, 0],
        [0, 6],
      ]),
      /building\.outlineM: the outline crosses itself/,
    ],
    [
      on({}, [
        [0, 0],
        [0, 'six'],
        [10, 6],
        [10, 0],
      ]),
      /building\.outlineM\.1\.1: "six" is not understood/,
    ],
    [{ walls: wallFacing(180, { edge: 0 }) }, /walls\.0\.edge: goes with a building's outline only/],
    [{ walls: wallFacing(180, { alongM: 2 }) }, /walls\.0\.alongM: goes with a building's outline only/],
  ] as [Partial<SiteInput>, RegExp][])('%j', (changes, message) => {
    expect(problemsOf(changes)).toMatch(message);
  });

  test('another wall of the building through the box', () => {
    // A recess: the box would hang in the corner, deeper than the corner is far.
    const recess: [number, number][] = [
      [0, 0],
      [0, 6],
      [10, 6],
      [10, 0],
      [5, 0],
      [4.8, -0.1],
      [4.6, 0],
    ];
    expect(problemsOf(on({ edge: 3, alongM: 0.1 + 0.06 }, recess))).toBe('accepted');
    expect(
      problemsOf({
        ...on({ edge: 3, alongM: 0.2 }, [
          [0, 0],
          [0, 6],
          [10, 6],
          [10, 0],
          [5, 0],
          [8, -0.5],
          [3, -3],
          [3, 0],
        ]),
      }),
    ).toMatch(/cuts through the box/);
  });
});
