import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  HEAT_CLASS_FROM_C,
  HEAT_CLASSES,
  heatClass,
  heatIndex,
  withinHeatIndexChart,
} from '../../../model/climate/heat-index.ts';

/**
 * The chart of the US National Weather Service, degF, rows by air temperature, columns by relative humidity from 40 % on in
 * steps of 5 (srh.noaa.gov/tsa/?n=heatindex, read as quoted).
 */
const CHART: Readonly<Record<number, readonly number[]>> = {
  80: [80, 80, 81, 81, 82, 82, 83, 84, 84, 85, 86, 86, 87],
  82: [81, 82, 83, 84, 84, 85, 86, 88, 89, 90, 91, 93, 95],
  84: [83, 84, 85, 86, 88, 89, 90, 92, 94, 96, 98, 100, 103],
  86: [85, 87, 88, 89, 91, 93, 95, 97, 100, 102, 105, 108, 112],
  88: [88, 89, 91, 93, 95, 98, 100, 103, 106, 110, 113, 117, 121],
  90: [91, 93, 95, 97, 100, 103, 106, 109, 113, 117, 122, 127, 132],
  92: [94, 96, 99, 101, 105, 108, 112, 116, 121, 126, 131],
  94: [97, 100, 103, 106, 110, 114, 119, 124, 129, 135],
  96: [101, 104, 108, 112, 116, 121, 126, 132],
  98: [105, 109, 113, 117, 123, 128, 134],
  100: [109, 114, 118, 124, 129, 136],
  102: [114, 119, 124, 130, 137],
  104: [119, 124, 131, 137],
  106: [124, 130, 137],
  108: [130, 137],
  110: [136],
};

const celsius = (f: number) => (f - 32) / 1.8;
const indexF = (airF: number, relativeHumidityPercent: number) =>
  32 + 1.8 * heatIndex({ airC: celsius(airF), relativeHumidityPercent });

const cells = Object.entries(CHART).flatMap(([airF, row]) =>
  row.map((chartF, k) => ({ airF: Number(airF), humidity: 40 + 5 * k, chartF })),
);

describe('the published chart', () => {
  test('is met in all of its cells', () => {
    expect(cells).toHaveLength(135);
    // The chart was printed without the later adjustment for nearly saturated air, which adds up to 2.1 degF; half a degree more is its rounding.
    const allowedF = ({ airF, humidity }: (typeof cells)[number]) => (airF <= 87 && humidity > 85 ? 2.6 : 1.05);
    const missed = cells.filter((cell) => Math.abs(indexF(cell.airF, cell.humidity) - cell.chartF) > allowedF(cell));
    expect(missed).toEqual([]);
  });

  test('is met to the printed degree in all but a few', () => {
    const rounded = cells.filter(({ airF, humidity, chartF }) => Math.round(indexF(airF, humidity)) === chartF);
    expect(rounded.length).toBeGreaterThanOrEqual(125);
  });

  test('covers what it has figures for, and cool air', () => {
    for (const { airF, humidity } of cells)
      expect(withinHeatIndexChart({ airC: celsius(airF) - 1e-9, relativeHumidityPercent: humidity })).toBe(true);
    expect(withinHeatIndexChart({ airC: 20, relativeHumidityPercent: 10 })).toBe(true);
    expect(withinHeatIndexChart({ airC: 46, relativeHumidityPercent: 45 })).toBe(false);
    expect(withinHeatIndexChart({ airC: 40, relativeHumidityPercent: 12 })).toBe(false);
  });
});

describe('the adjustments', () => {
  test('dry air at 95 °F loses (13 - RH)/4 degrees', () => {
    // With the root at its 1, the step across 13 % is that of the regression alone.
    const regression = indexF(95, 13);
    expect(indexF(95, 9)).toBeLessThan(regression - 0.9);
  });

  test('nearly saturated air at 82 °F gains', () => {
    expect(indexF(82, 95)).toBeGreaterThan(indexF(82, 85) + 1);
  });

  test('cool air feels about as it is', () => {
    expect(indexF(60, 50)).toBeCloseTo(0.5 * (60 + 61 - 9.6 + 4.7), 6);
  });
});

test('moister air never feels cooler where the chart has figures', () => {
  const humidity = fc.double({ min: 40, max: 99, noNaN: true });
  fc.assert(
    fc.property(fc.double({ min: 27, max: 43, noNaN: true }), humidity, (airC, relativeHumidityPercent) => {
      const now = heatIndex({ airC, relativeHumidityPercent });
      expect(heatIndex({ airC, relativeHumidityPercent: relativeHumidityPercent + 1 })).toBeGreaterThan(now - 0.05);
    }),
  );
});

test('classes begin where the Weather Service lets them begin', () => {
  expect(HEAT_CLASSES.map((name) => Math.round(HEAT_CLASS_FROM_C[name] * 1.8 + 32))).toEqual([80, 90, 103, 125]);
  expect(heatClass(26.6)).toBeNull();
  expect(heatClass(26.7)).toBe('caution');
  expect(heatClass(39.3)).toBe('extreme caution');
  expect(heatClass(39.5)).toBe('danger');
  expect(heatClass(60)).toBe('extreme danger');
});
