/** What the sun diagram, the plan and the rose are drawn from, against hand geometry and the day itself. */
import { describe, expect, test } from 'vitest';
import { bearingRose, evaluateDay, SiteError, sunDiagram, wallPlan } from '../../../model/index.ts';
import { siteWith, wallFacing } from '../sites.ts';

const at = (latitudeDeg: number, more: object = {}) => ({
  place: { latitudeDeg, longitudeDeg: 0, timeZone: 'Etc/UTC' },
  climate: { designDay: { date: '2026-07-05', maxC: 35, dailyRangeK: 12, dewPointC: 8 } },
  ...more,
});

describe('the sun diagram', () => {
  test('holds seven months and the design day; the noon sun stands 90 - latitude + declination high', () => {
    const { paths } = sunDiagram(siteWith(at(40, { walls: wallFacing(180) })), 'wall');
    expect(paths.map(({ date }) => date)).toEqual([
      '2026-12-21',
      '2026-01-21',
      '2026-02-21',
      '2026-03-21',
      '2026-04-21',
      '2026-05-21',
      '2026-06-21',
      '2026-07-05',
    ]);
    expect(paths.filter(({ isDesignDay }) => isDesignDay)).toHaveLength(1);
    const noonOf = (date: string) =>
      Math.max(...(paths.find((path) => path.date === date)?.points.map(({ elevationDeg }) => elevationDeg) ?? []));
    expect(Math.abs(noonOf('2026-06-21') - (50 + 23.44))).toBeLessThan(0.1);
    expect(Math.abs(noonOf('2026-12-21') - (50 - 23.44))).toBeLessThan(0.1);
    expect(Math.abs(noonOf('2026-03-21') - 50)).toBeLessThan(0.5);
  });

  test('a bare north wall at 40 N is lit in the mornings and evenings of summer only', () => {
    const { paths } = sunDiagram(siteWith(at(40, { walls: wallFacing(0, { heightM: 30 }) })), 'wall');
    const hours = Object.fromEntries(paths.map(({ date, litHours }) => [date, litHours]));
    expect(hours['2026-12-21']).toBe(0);
    expect(hours['2026-06-21']).toBeGreaterThan(5);
    const june = paths.find(({ date }) => date === '2026-06-21');
    const noon = june?.points.find(({ utc }) => utc.getUTCHours() === 12);
    expect(noon?.lit).toBe(0);
    const midmorning = june?.points.find(({ utc }) => utc.getUTCHours() === 6);
    expect(midmorning?.lit).toBe(1);
    expect(midmorning?.reaches.front).toBe(1);
  });

  test('where a silhouette hides the sun, the box is not lit by it', () => {
    const obstructions = [{ kind: 'front', distanceM: 3, heightM: 6, widthM: 60 }];
    const site = siteWith(at(50, { walls: wallFacing(180, { obstructions }) }));
    const { paths, silhouettes } = sunDiagram(site, 'wall');
    const fence = silhouettes.find(({ kind }) => kind === 'front');
    expect(fence?.index).toBe(0);
    const december = paths[0]?.points.filter(({ azimuthDeg }) => Math.abs(azimuthDeg - 180) < 30) ?? [];
    expect(december.length).toBeGreaterThan(10);
    for (const point of december) {
      const band = fence?.runs.flat().find(({ bearingDeg }) => Math.abs(bearingDeg - point.azimuthDeg) <= 0.5);
      if (band === undefined || band.highDeg < point.elevationDeg + 3) continue;
      expect(point.lit).toBe(0);
    }
    expect(december.filter(({ lit }) => lit === 0).length).toBeGreaterThan(10);
  });

  test('names what stands there: wall, building, eave, skyline, tree; a tree in leaf hides more', () => {
    const walls = wallFacing(180, {
      eave: { depthM: 0.6, heightAboveBoxM: 0.4 },
      obstructions: [{ kind: 'tree', rightM: 3, outM: 6, heightM: 7, crownDiameterM: 4 }],
      horizon: [[90, 12]],
    });
    const outlineM = [
      [0, 0],
      [0, 8],
      [12, 8],
      [12, 0],
    ];
    const inMonth = (date: string) => {
      const designDay = { date, maxC: 35, dailyRangeK: 12, dewPointC: 8 };
      return sunDiagram(
        siteWith({ ...at(45), climate: { designDay }, walls, building: { outlineM } } as never),
        'wall',
      );
    };
    const summer = inMonth('2026-07-05').silhouettes;
    expect(summer.map(({ kind }) => kind)).toEqual(['skyline', 'tree', 'building', 'eave', 'wall']);
    const tree = (silhouettes: typeof summer) => silhouettes.find(({ kind }) => kind === 'tree')?.transmittance;
    expect(tree(summer)).toBe(0.15);
    expect(tree(inMonth('2026-01-05').silhouettes)).toBe(0.6);
  });

  test.each([78, -78, 0, 90])('at latitude %d it is drawn all the same', (latitudeDeg) => {
    const { paths } = sunDiagram(siteWith(at(latitudeDeg, { walls: wallFacing(90) })), 'wall');
    const points = paths.flatMap((path) => path.points);
    expect(points.every(({ elevationDeg, lit }) => elevationDeg > 0 && lit >= 0 && lit <= 1)).toBe(true);
    // Polar day: the sun is up from one midnight to the next.
    if (latitudeDeg === 78) {
      expect(paths.at(-1)?.points).toHaveLength(144);
      expect(paths.at(-1)?.end).not.toBeNull();
    }
    if (latitudeDeg === -78) expect(paths.at(-1)?.points).toHaveLength(0);
  });
});

describe('hours of the sun diagram', () => {
  test.each([
    ['2026-06-21', 24],
    ['2026-03-29', 23],
    ['2026-10-25', 25],
  ])('%s has %d of them at most, and as many where the sun is up and free all day', (date, hours) => {
    // Far enough to either pole that the sun is up all that day; a post lets it reach the box from all sides.
    const latitudeDeg = date === '2026-10-25' ? -90 : 90;
    const site = siteWith({
      place: { latitudeDeg, longitudeDeg: 0, timeZone: 'Europe/Berlin' },
      climate: { designDay: { date, maxC: 0, dailyRangeK: 2, dewPointC: -10 } },
      box: { mount: 'post', postDistanceM: 50 },
      walls: wallFacing(180, { heightM: 1.5 }),
    });
    const path = sunDiagram(site, 'wall').paths.at(-1);
    expect(path?.points).toHaveLength(6 * hours);
    expect(path?.end?.utc.getTime()).toBe((path?.points[0]?.utc.getTime() ?? 0) + hours * 3_600_000);
    expect(path?.litHours).toBeLessThanOrEqual(hours);
    expect(path?.litHours).toBeGreaterThan(hours - 1);
  });
});

describe('the plan', () => {
  test('puts box, eave and obstructions where they stand, metres east and north of the foot of the wall', () => {
    const walls = wallFacing(180, {
      eave: { depthM: 0.6, heightAboveBoxM: 0.4, widthM: 2 },
      obstructions: [{ kind: 'block', rightM: 4, outM: 5, widthM: 2, depthM: 3, heightM: 2.5 }],
    });
    const plan = wallPlan(siteWith(at(40, { walls })), 'wall');
    // South of the wall is negative; the right hand of who faces a south wall is east.
    const [eave, block] = plan.shapes;
    const span = (shape: typeof eave, axis: 0 | 1) => {
      const values = shape?.outline.map((corner) => corner[axis]) ?? [];
      return [Math.min(...values), Math.max(...values)].map((value) => Math.round(value * 1000) / 1000);
    };
    expect(span(eave, 0)).toEqual([-1, 1]);
    expect(span(eave, 1)).toEqual([-0.6, 0]);
    expect(span(block, 0)).toEqual([3, 5]);
    expect(span(block, 1)).toEqual([-8, -5]);
    expect(block?.topM).toBe(2.5);
    expect(plan.endless).toBe(true);
    expect(plan.building).toBeNull();
  });

  test('turns the building so that its edge lies along the wall, the box before the place on it', () => {
    const outlineM = [
      [100, 50],
      [100, 58],
      [112, 58],
      [112, 50],
    ];
    const site = siteWith({ ...at(40), walls: wallFacing(180, { alongM: 3 }), building: { outlineM } } as never);
    const plan = wallPlan(site, 'wall');
    const rounded = plan.building?.map((corner) => corner.map((value) => Math.round(value * 1e6) / 1e6 + 0));
    expect(rounded).toEqual([
      [-3, 0],
      [-3, 8],
      [9, 8],
      [9, 0],
    ]);
    expect(plan.wallLine.map(([e]) => Math.round(e))).toEqual([-3, 9]);
    expect(plan.endless).toBe(false);
  });

  test('follows the sun through the design day and says which faces it reaches', () => {
    const site = siteWith(at(40, { walls: wallFacing(270) }));
    const { sun } = wallPlan(site, 'wall');
    expect(sun).toHaveLength(144);
    const day = evaluateDay(site, 'wall');
    const afternoon = sun.find(({ utc }) => utc.getUTCHours() === 16);
    expect(afternoon?.reaches.front).toBe(1);
    expect(afternoon?.reaches.bottom).toBe(0);
    expect(sun.find(({ utc }) => utc.getUTCHours() === 8)?.reaches.front).toBe(0);
    const lit = sun.filter((step) => step.lit > 0).length / 6;
    expect(Math.abs(lit - day.sunHours)).toBeLessThan(1);
  });
});

describe('the rose', () => {
  test('has a peak for every ten degrees, as a bare wall of that bearing has', () => {
    const walls = wallFacing(270, { construction: 'block', eave: { depthM: 1, heightAboveBoxM: 0.3 } });
    const points = [...bearingRose(siteWith(at(33, { walls })), 'wall')];
    expect(points.map(({ azimuthDeg }) => azimuthDeg)).toEqual(Array.from({ length: 36 }, (_, k) => 10 * k));
    const bare = siteWith(at(33, { walls: wallFacing(270, { construction: 'block' }) }));
    expect(points[27]?.peakInsideAirC).toBe(evaluateDay(bare, 'wall').peakInsideAirC);
    // The afternoon sun meets the hottest air: the hottest wall looks west, the coolest north.
    const hottest = points.reduce((best, point) => (point.peakInsideAirC > best.peakInsideAirC ? point : best));
    const coolest = points.reduce((best, point) => (point.peakInsideAirC < best.peakInsideAirC ? point : best));
    expect(Math.abs(hottest.azimuthDeg - 265)).toBeLessThanOrEqual(35);
    expect(Math.min(coolest.azimuthDeg, 360 - coolest.azimuthDeg)).toBeLessThanOrEqual(40);
  });

  test('south of the equator the coolest wall looks south', () => {
    const points = [
      ...bearingRose(
        siteWith(
          at(-33, {
            walls: wallFacing(0),
            climate: { designDay: { date: '2026-01-05', maxC: 35, dailyRangeK: 12, dewPointC: 8 } },
          }),
        ),
        'wall',
      ),
    ];
    const coolest = points.reduce((best, point) => (point.peakInsideAirC < best.peakInsideAirC ? point : best));
    expect(Math.abs(coolest.azimuthDeg - 180)).toBeLessThanOrEqual(40);
  });
});

test('a wall that the site does not have is an error', () => {
  for (const draw of [sunDiagram, wallPlan]) expect(() => draw(siteWith(), 'attic')).toThrow(SiteError);
  expect(() => bearingRose(siteWith(), 'attic').next()).toThrow(SiteError);
});
