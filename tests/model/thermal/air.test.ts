import { describe, expect, test } from 'vitest';
import { airDensity, airProperties } from '../../../model/thermal/air.ts';
import { filmAirTable } from '../../../model/thermal/film-air.ts';

describe('air at sea level (Incropera table A.4, value from memory)', () => {
  test.each([
    // K, nu 1e-6 m2/s, k W/(m K), alpha 1e-6 m2/s, Pr
    [250, 11.44, 0.0223, 15.9, 0.72],
    [300, 15.89, 0.0263, 22.5, 0.706],
    [350, 20.92, 0.03, 29.9, 0.7],
    [400, 26.41, 0.0338, 38.3, 0.69],
  ])('%i K', (kelvin, nu, k, alpha, pr) => {
    const air = airProperties(kelvin, 101_325);
    expect(Math.abs(air.kinematicViscosityM2s / (nu * 1e-6) - 1)).toBeLessThan(0.02);
    expect(Math.abs(air.conductivityWmK / k - 1)).toBeLessThan(0.02);
    expect(Math.abs(air.prandtl / pr - 1)).toBeLessThan(0.03);
    expect(Math.abs(air.kinematicViscosityM2s / air.prandtl / (alpha * 1e-6) - 1)).toBeLessThan(0.03);
  });

  test('density 1.177 kg/m3 at 300 K; thinner air is lighter and less buoyant', () => {
    expect(airDensity(300, 101_325)).toBeCloseTo(1.177, 3);
    expect(airProperties(300, 80_000).buoyancyPerKM3).toBeLessThan(airProperties(300, 101_325).buoyancyPerKM3 * 0.65);
    expect(airProperties(300, 80_000).conductivityWmK).toBe(airProperties(300, 101_325).conductivityWmK);
  });
});

test('the table follows the formulas within one in two thousand', () => {
  const film = filmAirTable(90_000);
  for (let kelvin = 200; kelvin < 450; kelvin += 1.37) {
    const exact = airProperties(kelvin, 90_000);
    const read = film(kelvin + 10, kelvin - 10);
    for (const key of Object.keys(exact) as (keyof typeof exact)[]) {
      expect(Math.abs(read[key] / exact[key] - 1), `${key} at ${kelvin}`).toBeLessThan(5e-4);
    }
  }
});

test('far outside the table its ends stand in', () => {
  const film = filmAirTable(101_325);
  expect(Number.isFinite(film(5000, 5000).conductivityWmK)).toBe(true);
  expect(Number.isFinite(film(1, 1).conductivityWmK)).toBe(true);
});
