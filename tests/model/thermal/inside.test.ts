/** What the inside of a box is linked with: areas, directions and factors, read off the links. */
import { describe, expect, test } from 'vitest';
import { airProperties } from '../../../model/thermal/air.ts';
import { batteryAreaM2, batteryCapacityJK } from '../../../model/thermal/battery.ts';
import { filmAirTable } from '../../../model/thermal/film-air.ts';
import { type Inside, insideCapacitiesJK, insideLinks } from '../../../model/thermal/inside.ts';
import { plateFacingDown, plateFacingUp } from '../../../model/thermal/natural-convection.ts';
import type { Link } from '../../../model/thermal/network.ts';
import { stackFlowCoefficient } from '../../../model/thermal/vents.ts';

const SEA_LEVEL = 101_325;
const BOX: Inside = {
  widthM: 0.4,
  heightM: 0.6,
  depthM: 0.2,
  massKg: 8,
  vents: null,
  battery: null,
  compartments: null,
};
const AREAS = { front: 0.24, left: 0.12, right: 0.12, top: 0.08, bottom: 0.08, back: 0.24 };
const links = (box: Partial<Inside> = {}, factor = 1) =>
  insideLinks({ ...BOX, ...box }, AREAS, { film: filmAirTable(SEA_LEVEL), pressurePa: SEA_LEVEL, factor });

type Convection = Extract<Link, { kind: 'convection' }>;
const convection = (all: readonly Link[], air: string) =>
  all.filter((link): link is Convection => link.kind === 'convection' && link.to === air);
const areaOf = (all: readonly Link[], air: string, from: string) =>
  convection(all, air).find((link) => link.from === from)?.areaM2;

describe('one room', () => {
  test('its air touches all six sides and both sides of a board of three fifths of the back', () => {
    expect(convection(links(), 'insideAir').map(({ from, areaM2 }) => [from, areaM2])).toEqual([
      ['front', 0.24],
      ['left', 0.12],
      ['right', 0.12],
      ['back', 0.24],
      ['top', 0.08],
      ['bottom', 0.08],
      ['electronics', 2 * 0.6 * 0.24],
    ]);
  });

  test('the factor multiplies convection and nothing else', () => {
    const [once, twice] = [links(), links({}, 2)];
    for (const [k, link] of once.entries()) {
      const other = twice[k] as Link;
      if (link.kind === 'convection') expect((other as Convection).areaM2).toBeCloseTo(2 * link.areaM2, 12);
      else expect(other).toEqual(link);
    }
  });
});

describe('two rooms', () => {
  const both = links({ compartments: { lowerShare: 0.25, lowerPowerW: 0 }, battery: { massKg: 24, powerW: 0 } });

  test('share the sides by their height, each has its own lid or floor, and the sheet lies between', () => {
    for (const face of ['front', 'left', 'right', 'back'] as const) {
      expect(areaOf(both, 'insideAir', face)).toBeCloseTo(0.75 * AREAS[face], 12);
      expect(areaOf(both, 'lowerAir', face)).toBeCloseTo(0.25 * AREAS[face], 12);
    }
    expect(areaOf(both, 'insideAir', 'top')).toBe(0.08);
    expect(areaOf(both, 'lowerAir', 'bottom')).toBe(0.08);
    expect(areaOf(both, 'insideAir', 'bottom')).toBeUndefined();
    for (const air of ['insideAir', 'lowerAir']) expect(areaOf(both, air, 'partition')).toBeCloseTo(0.08, 12);
    expect(areaOf(both, 'lowerAir', 'battery')).toBeGreaterThan(0);
    expect(areaOf(both, 'insideAir', 'battery')).toBeUndefined();
  });

  test('a warm sheet warms the room above it well and the one below it badly', () => {
    const at = (air: string) =>
      (convection(both, air).find(({ from }) => from === 'partition') as Convection).coefficient(320, 300, 0);
    const length = (0.4 * 0.2) / (2 * 0.6);
    const film = airProperties(310, SEA_LEVEL);
    expect(Math.abs(at('insideAir') / plateFacingUp(length)(film, 320, 300) - 1)).toBeLessThan(0.001);
    expect(Math.abs(at('lowerAir') / plateFacingDown(length)(film, 320, 300) - 1)).toBeLessThan(0.001);
    expect(at('insideAir')).toBeGreaterThan(1.5 * at('lowerAir'));
  });

  test('radiation stays within a room', () => {
    const upper = new Set(['front', 'left', 'right', 'back', 'top', 'partition', 'electronics']);
    for (const link of both.filter(({ kind }) => kind === 'radiation')) {
      const ends = [link.from, link.to];
      expect(ends.includes('electronics') && ends.includes('bottom')).toBe(false);
      if (ends.includes('electronics')) expect(ends.every((end) => upper.has(end))).toBe(true);
      if (ends.includes('battery')) expect(ends.some((end) => end === 'top' || end === 'electronics')).toBe(false);
    }
  });

  test('the air of both is that of one', () => {
    const one = insideCapacitiesJK(BOX, SEA_LEVEL);
    const two = insideCapacitiesJK({ ...BOX, compartments: { lowerShare: 0.25, lowerPowerW: 0 } }, SEA_LEVEL);
    expect((two['insideAir'] as number) + (two['lowerAir'] as number)).toBeCloseTo(one['insideAir'] as number, 9);
    expect(two['lowerAir']).toBeCloseTo(0.25 * (one['insideAir'] as number), 9);
    expect(two['partition']).toBeGreaterThan(0);
  });
});

describe('a battery of 24 kg', () => {
  // 24 / 2400 = 0.01 m3, a cube of 0.2154 m: five sides of 0.0464 m2, 24 * 900 J/K.
  test('is a cube of ten litres with five sides in the air', () => {
    expect(batteryAreaM2({ massKg: 24, powerW: 0 })).toBeCloseTo(0.2321, 4);
    expect(batteryCapacityJK({ massKg: 24, powerW: 0 })).toBe(21_600);
    expect(areaOf(links({ battery: { massKg: 24, powerW: 0 } }), 'insideAir', 'battery')).toBeCloseTo(0.2321, 4);
  });
});

test('thin air carries less through the vents, in proportion to its pressure', () => {
  const vents = { lowAreaM2: 0.01, highAreaM2: 0.005, heightM: 0.4, dischargeCoefficient: 0.6 };
  const at = (pressurePa: number) => stackFlowCoefficient(vents, pressurePa)(320, 300, 0);
  expect(at(70_000) / at(SEA_LEVEL)).toBeCloseTo(70_000 / SEA_LEVEL, 9);
});
