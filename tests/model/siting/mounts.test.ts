/** Flat on the wall, on brackets, on a post of its own. */
import { describe, expect, test } from 'vitest';
import { evaluateDay, FACES, type SiteInput } from '../../../model/index.ts';
import { dayForcing, wallNetwork } from '../../../model/siting/day-forcing.ts';
import { siteDay } from '../../../model/siting/design-day.ts';
import { prepareWallShade } from '../../../model/siting/wall-shade.ts';
import { wallSun } from '../../../model/siting/wall-sun.ts';
import { marchPeriodicDay } from '../../../model/thermal/periodic-day.ts';
import { cell } from '../../../model/thermal/step-table.ts';
import { siteWith, wallFacing } from '../sites.ts';

type Box = Partial<SiteInput['box']>;

const FLAT: Box = { standOffM: 0 };
const BRACKETS: Box = { standOffM: 0.1 };
const POST: Box = { mount: 'post', postDistanceM: 3 };

const dayOf = (box: Box, azimuthDeg = 270, more: object = {}) =>
  evaluateDay(siteWith({ walls: wallFacing(azimuthDeg), box, ...more }), 'wall');

describe('at equal sun', () => {
  /** Peak inside under the same sun on front, sides, lid and floor, and none on the back. */
  const peakUnderEqualSun = (box: Box, azimuthDeg: number) => {
    const site = siteWith({ walls: wallFacing(azimuthDeg), box });
    const onBrackets = siteWith({ walls: wallFacing(azimuthDeg), box: BRACKETS });
    const wall = site.walls[0] as (typeof site.walls)[number];
    const day = siteDay(site);
    const shade = prepareWallShade(site, wall, day);
    const reflectors = { albedo: 0.2, wallAbsorptance: 0.7 };
    const shared = wallSun(prepareWallShade(onBrackets, wall, day), day.steps, reflectors);
    const own = wallSun(shade, day.steps, reflectors);
    const network = wallNetwork(site, wall, shade);
    const sun = { ...own, faces: shared.faces };
    const forcing = dayForcing({ site, wall, day, shade, sun, network });
    const march = marchPeriodicDay(network, forcing);
    const inside = network.indexOf('insideAir');
    return Math.max(...day.steps.map((_, k) => cell(march.temperaturesK, k, inside)));
  };

  test.each([90, 180, 270])(
    'on a wall that faces %d: a post is cooler than brackets, and those than flat',
    (azimuthDeg) => {
      const [post, brackets, flat] = [POST, BRACKETS, FLAT].map((box) => peakUnderEqualSun(box, azimuthDeg));
      expect(post).toBeLessThan((brackets as number) - 0.3);
      expect(brackets).toBeLessThan((flat as number) - 0.3);
    },
  );
});

describe('on a post', () => {
  test('before a west wall the box is cooler than on brackets, and those cooler than flat, in the real sun, too', () => {
    const [post, brackets, flat] = [POST, BRACKETS, FLAT].map((box) => dayOf(box).peakInsideAirC);
    expect(post).toBeLessThan(brackets as number);
    expect(brackets).toBeLessThan(flat as number);
  });

  test('the sun reaches the back once it stands over the wall, and never that of a box on the wall', () => {
    expect(Math.max(...dayOf(BRACKETS).faceIrradianceWm2.back)).toBe(0);
    const far = dayOf({ mount: 'post', postDistanceM: 60 }).faceIrradianceWm2.back;
    // A west wall: the back of the box looks east.
    expect(Math.max(...far.slice(0, 144))).toBeGreaterThan(500);
    expect(Math.max(...far.slice(204))).toBeLessThan(250);
  });

  test('far from any wall, opposite bearings mirror: front and back change places', () => {
    const box: Box = { mount: 'post', postDistanceM: 200, depthM: 0.3, widthM: 0.3 };
    const [east, west] = [90, 270].map((azimuthDeg) => dayOf(box, azimuthDeg));
    const sum = (values: readonly number[] | undefined) => (values ?? []).reduce((a, b) => a + b, 0);
    expect(Math.abs(sum(east?.faceIrradianceWm2.back) / sum(west?.faceIrradianceWm2.front) - 1)).toBeLessThan(0.03);
    expect(Math.abs((east?.peakInsideAirC ?? 0) - (west?.peakInsideAirC ?? 0))).toBeLessThan(0.3);
  });

  test('far from the wall, back and front see the sky alike', () => {
    const site = siteWith({ walls: wallFacing(270), box: { mount: 'post', postDistanceM: 200 } });
    const wall = site.walls[0] as (typeof site.walls)[number];
    const network = wallNetwork(site, wall, prepareWallShade(site, wall, siteDay(site)));
    const toSky = (face: string) =>
      network.links
        .filter((link) => link.from === face && link.to === 'sky' && link.label === 'longwaveSky')
        .reduce((sum, link) => sum + (link.kind === 'radiation' ? link.exchangeAreaM2 : 0), 0);
    expect(Math.abs(toSky('back') / toSky('front') - 1)).toBeLessThan(0.03);
    expect(network.names).not.toContain('wallBehind');
  });

  test('energy closes and the ledger sums to zero, with nothing through the mounting', () => {
    for (const hood of [null, { faces: [...FACES], gapM: 0.03 }]) {
      const day = dayOf({ ...POST, hood });
      expect(Math.abs(day.energyClosure)).toBeLessThan(0.001);
      const flows = Object.values(day.ledgerAtPeak);
      const incoming = flows.reduce((sum, watts) => sum + Math.max(0, watts), 0);
      expect(Math.abs(flows.reduce((sum, watts) => sum + watts, 0))).toBeLessThan(0.002 * incoming);
      expect(day.ledgerAtPeak.mounting).toBe(0);
    }
  });

  test('a hood may cover the back, which on a wall it may not', () => {
    const hood = { faces: ['front', 'back', 'top'] as const };
    expect(dayOf({ ...POST, hood: { faces: [...hood.faces] } }).peakInsideAirC).toBeLessThan(
      dayOf(POST).peakInsideAirC,
    );
    expect(() => dayOf({ hood: { faces: [...hood.faces] } })).toThrow(/box\.hood\.faces\.1: a hood covers the back/);
  });

  test('a fence between the wall and the box is fine, one through the box is not', () => {
    const fence = (distanceM: number) =>
      siteWith({ walls: wallFacing(270, { obstructions: [{ kind: 'front', distanceM, heightM: 2 }] }), box: POST });
    expect(() => fence(1)).not.toThrow();
    expect(() => fence(3.05)).toThrow(/cuts through the box; allowed: from 3\.12 m/);
    expect(() => fence(3.2)).not.toThrow();
  });
});
