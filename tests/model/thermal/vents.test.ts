/** Vents, battery, second room and duty: hand balances, limits and signs. */
import { describe, expect, test } from 'vitest';
import { DUTIES, evaluateDay, type SiteInput } from '../../../model/index.ts';
import { stackFlowCoefficient, ventsOpen } from '../../../model/thermal/vents.ts';
import { siteWith, wallFacing } from '../sites.ts';

type Box = Partial<SiteInput['box']>;

const BIG: Box = { widthM: 0.4, heightM: 0.6, depthM: 0.25, massKg: 8, powerW: 30 };
const day = (box: Box = {}, more: object = {}) =>
  evaluateDay(siteWith({ walls: wallFacing(270), box: { ...BIG, ...box }, ...more }), 'wall');
const open = (lowAreaM2: number, highAreaM2: number): Box => ({ vents: { lowAreaM2, highAreaM2 } });

const sumsToNothing = (ledger: ReturnType<typeof day>['ledgerAtPeak']) => {
  const flows = Object.values(ledger);
  const incoming = flows.reduce((sum, watts) => sum + Math.max(0, watts), 0);
  expect(Math.abs(flows.reduce((sum, watts) => sum + watts, 0))).toBeLessThan(0.002 * incoming);
};

describe('stack flow', () => {
  const vents = { lowAreaM2: 0.004, highAreaM2: 0.004, heightM: 0.5, dischargeCoefficient: 0.6 };

  test('by hand: Cd A sqrt(2 g H dT / T), A of two equal openings in series is 0.707 of one', () => {
    // 0.6 * 0.002828 * sqrt(2 * 9.80665 * 0.5 * 20 / 333.15) = 0.0013022 m3/s of air of 101325 / (287.05 * 313.15) kg/m3.
    const expected = ((0.6 * 0.004) / Math.SQRT2) * Math.sqrt((2 * 9.80665 * 0.5 * 20) / 333.15);
    const density = 101325 / (287.05 * 313.15);
    const coefficient = stackFlowCoefficient(vents, 101325)(333.15, 313.15, 0);
    expect(Math.abs(coefficient / (density * 1006 * expected) - 1)).toBeLessThan(1e-9);
    expect(coefficient * 20).toBeGreaterThan(28);
    expect(coefficient * 20).toBeLessThan(31);
  });

  test('runs either way, the same for the same difference, and stops with it', () => {
    const coefficient = stackFlowCoefficient(vents, 101325);
    expect(coefficient(300, 300, 0)).toBe(0);
    expect(Math.abs(coefficient(310, 300, 0) / coefficient(300, 310, 0) - 1)).toBeLessThan(0.05);
  });

  test('one opening without the other is none', () => {
    expect(ventsOpen({ ...vents, lowAreaM2: 0 })).toBe(false);
    expect(ventsOpen({ ...vents, highAreaM2: 0 })).toBe(false);
    expect(ventsOpen({ ...vents, heightM: 0 })).toBe(false);
    expect(ventsOpen(null)).toBe(false);
    expect(ventsOpen(vents)).toBe(true);
  });
});

describe('vents in a box', () => {
  test('of no area equal none, to the last digit', () => {
    expect(day(open(0, 0)).insideAirC).toEqual(day().insideAirC);
    expect(day(open(0.01, 0)).insideAirC).toEqual(day().insideAirC);
  });

  test('cool a sunny box, the more the wider, and carry what the ledger says', () => {
    const [none, small, large] = [day(), day(open(0.001, 0.001)), day(open(0.006, 0.006))];
    expect(small.peakInsideAirC).toBeLessThan(none.peakInsideAirC - 1);
    expect(large.peakInsideAirC).toBeLessThan(small.peakInsideAirC - 1);
    expect(large.ledgerAtPeak.vents).toBeLessThan(-10);
    expect(none.ledgerAtPeak.vents).toBe(0);
    for (const result of [small, large]) {
      expect(Math.abs(result.energyClosure)).toBeLessThan(0.001);
      sumsToNothing(result.ledgerAtPeak);
    }
  });

  test('harm a box that is cooler than the air: heavy, in the shade, without heat of its own', () => {
    const heavy = { powerW: 0, massKg: 300, solarAbsorptance: 0.1 };
    const shade = { walls: wallFacing(0, { eave: { depthM: 3, heightAboveBoxM: 0.2 }, construction: 'concrete' }) };
    const [closed, vented] = [day(heavy, shade), day({ ...heavy, ...open(0.02, 0.02) }, shade)];
    expect(vented.peakInsideAirC).toBeGreaterThan(closed.peakInsideAirC + 0.5);
  });
});

describe('a battery', () => {
  test('is slow: its peak comes later and lower than that of the air', () => {
    const result = day({ battery: { massKg: 20 } });
    const battery = result.batteryC as number[];
    expect(Math.max(...battery)).toBeLessThan(result.peakInsideAirC);
    expect(battery.indexOf(Math.max(...battery))).toBeGreaterThan(result.insideAirC.indexOf(result.peakInsideAirC));
    expect(Math.abs(result.energyClosure)).toBeLessThan(0.001);
    sumsToNothing(result.ledgerAtPeak);
  });

  test('takes the edge off the day of the air, and warms it by what it gives off', () => {
    expect(day({ battery: { massKg: 20 } }).peakInsideAirC).toBeLessThan(day().peakInsideAirC);
    const charging = day({ battery: { massKg: 20, powerW: 10 } });
    expect(charging.peakInsideAirC).toBeGreaterThan(day({ battery: { massKg: 20 } }).peakInsideAirC + 1);
    expect(charging.ledgerAtPeak.dissipation).toBeCloseTo(40, 9);
  });

  test('none is null', () => {
    expect(day().batteryC).toBeNull();
    expect(day().lowerAirC).toBeNull();
  });
});

describe('two rooms', () => {
  test('heat of the upper one leaves the lower one cooler', () => {
    const result = day({ compartments: { lowerShare: 0.4 } });
    expect(Math.max(...(result.lowerAirC as number[]))).toBeLessThan(result.peakInsideAirC - 1);
    expect(Math.abs(result.energyClosure)).toBeLessThan(0.001);
    sumsToNothing(result.ledgerAtPeak);
  });

  test('moving half of the heat below cools the upper room and warms the lower one; the sum stays', () => {
    const above = day({ compartments: { lowerShare: 0.5 } });
    const shared = day({ compartments: { lowerShare: 0.5, lowerPowerW: 15 } });
    expect(shared.peakInsideAirC).toBeLessThan(above.peakInsideAirC);
    expect(Math.max(...(shared.lowerAirC as number[]))).toBeGreaterThan(Math.max(...(above.lowerAirC as number[])));
    expect(shared.ledgerAtPeak.dissipation).toBeCloseTo(30, 9);
  });

  test('a battery stands in the lower room, away from the heat of the electronics', () => {
    const battery = { massKg: 20 };
    const peak = (box: Box) => Math.max(...(day({ battery, ...box }).batteryC as number[]));
    expect(peak({ compartments: { lowerShare: 0.5 } })).toBeLessThan(peak({}));
  });

  test('both rooms see all of the skin between them', () => {
    // Without heat inside and in the dark both are as warm as the box was before.
    const night = (box: Box) => day({ powerW: 0, ...box }).insideAirC[4 * 12] as number;
    expect(Math.abs(night({ compartments: { lowerShare: 0.5 } }) - night({}))).toBeLessThan(0.5);
  });
});

describe('duty', () => {
  test('constant is the entered power; at night less is cooler then; charging is hotter by day', () => {
    const at = (result: ReturnType<typeof day>, hour: number) => result.insideAirC[hour * 12] as number;
    const [constant, daily, charging] = [day(), day({ duty: 'dayAndNight' }), day({ duty: 'chargingAfterOutage' })];
    expect(at(daily, 4)).toBeLessThan(at(constant, 4) - 0.5);
    expect(at(daily, 16)).toBeCloseTo(at(constant, 16), 0);
    expect(charging.peakInsideAirC).toBeGreaterThan(constant.peakInsideAirC + 1);
    expect(charging.ledgerAtPeak.dissipation).toBeCloseTo(45, 9);
  });

  test.each(Object.entries(DUTIES))('%s has 24 hours and an origin', (_, { hourly, origin, label }) => {
    expect(hourly).toHaveLength(24);
    expect(hourly.every((share) => share > 0 && share <= 2)).toBe(true);
    expect(origin).toMatch(/common practice, no source/);
    expect(label.length).toBeGreaterThan(5);
  });
});
