import { expect, test } from 'vitest';
import { dewPoint, relativeHumidity, wettingPoint } from '../../../model/climate/humidity.ts';

test('water settles at the dew point, frost at the warmer frost point', () => {
  expect(wettingPoint(12.5, 30)).toBe(12.5);
  expect(wettingPoint(0, 30)).toBe(0);
  expect(wettingPoint(-1e-9, 30)).toBeCloseTo(0, 6);
  // Smithsonian Meteorological Tables, dew point and frost point of equal vapour pressure; values from memory.
  expect(wettingPoint(-10, 30)).toBeCloseTo(-8.9, 1);
  expect(wettingPoint(-20, 30)).toBeCloseTo(-17.9, 1);
  expect(wettingPoint(-30, 30)).toBeCloseTo(-27.1, 1);
  // Fog that is saturated over water holds more than ice lets air hold: the surplus settles, and the air is at its frost point.
  expect(wettingPoint(-30, -30)).toBe(-30);
});

test('air that is saturated over ice at -20 degC, 82.3 percent over water, has its frost point there', () => {
  // Ratio of saturation over ice to that over water at -20 degC, 1.032/1.254 hPa (WMO tables, value from memory).
  expect(relativeHumidity(-20, dewPoint(-20, (100 * 1.032) / 1.254))).toBeCloseTo(82.3, 1);
  expect(wettingPoint(dewPoint(-20, (100 * 1.032) / 1.254), -15)).toBeCloseTo(-20, 1);
});
