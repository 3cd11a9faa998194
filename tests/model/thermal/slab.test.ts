import { expect, test } from 'vitest';
import { airFrom, airProperties } from '../../../model/thermal/air.ts';
import { blended, flatPlateForced } from '../../../model/thermal/forced-convection.ts';
import { channelCoefficient } from '../../../model/thermal/gap.ts';
import { rayleigh, verticalPlateNu } from '../../../model/thermal/natural-convection.ts';
import { dailyCapacityJm2K, dailyPenetrationM } from '../../../model/thermal/slab.ts';

const SOIL = { conductivityWmK: 1, densityKgM3: 1600, specificHeatJkgK: 1250 };

test('daily penetration: sqrt(2 alpha / omega), 0.117 m in this soil (recomputed)', () => {
  expect(dailyPenetrationM(SOIL)).toBeCloseTo(0.1172, 3);
});

test('a thin layer shows all of its capacity, a thick one that of half the penetration depth', () => {
  const thin = 0.01;
  expect(dailyCapacityJm2K(SOIL, thin) / (2e6 * thin)).toBeCloseTo(1, 3);
  expect(dailyCapacityJm2K(SOIL, 2) / ((2e6 * dailyPenetrationM(SOIL)) / 2)).toBeCloseTo(1, 6);
  expect(dailyCapacityJm2K(SOIL, 200)).toBeCloseTo(dailyCapacityJm2K(SOIL, 3), 3);
});

test('Incropera example 7.1 style: laminar plate, Re 9597, Pr 0.687, L 0.5 m, k 36.4e-3: h = 4.18 (value from memory)', () => {
  const air = airFrom({
    conductivityWmK: 0.0364,
    kinematicViscosityM2s: 5.21e-4,
    thermalDiffusivityM2s: 5.21e-4 / 0.687,
    expansionPerK: 1 / 437,
  });
  expect(flatPlateForced(air, 10, 0.5)).toBeCloseTo(4.18, 1);
});

test('forced convection: none without wind, no step where the layer turns turbulent, more wind more heat', () => {
  const air = airProperties(310, 101_325);
  expect(flatPlateForced(air, 0, 0.3)).toBe(0);
  const critical = (5e5 * air.kinematicViscosityM2s) / 0.3;
  expect(flatPlateForced(air, critical * 1.0001, 0.3) / flatPlateForced(air, critical * 0.9999, 0.3)).toBeCloseTo(1, 2);
  expect(flatPlateForced(air, 4, 0.3)).toBeCloseTo(2 * flatPlateForced(air, 1, 0.3), 9);
  expect(blended(5, 0)).toBe(5);
  expect(blended(3, 3)).toBeCloseTo(3 * Math.cbrt(2), 9);
});

test('a channel that widens tends to a single plate, one that closes to nothing', () => {
  const air = airProperties(320, 101_325);
  const single = (rayleigh(air, 20, 0.35) ** 0.25 * 0.59 * air.conductivityWmK) / 0.35;
  expect(channelCoefficient(air, 20, 0.3, 0.35) / single).toBeCloseTo(1, 2);
  expect(channelCoefficient(air, 20, 0.002, 0.35)).toBeLessThan(0.05);
  expect(channelCoefficient(air, 0, 0.05, 0.35)).toBe(0);
  // Within a fifth of Churchill and Chu on the same plate.
  const plate = (verticalPlateNu(rayleigh(air, 20, 0.35), air.plateFactor) * air.conductivityWmK) / 0.35;
  expect(Math.abs(single / plate - 1)).toBeLessThan(0.2);
});
