import { expect, test } from 'vitest';
import { besideLevels, dayChart, placeLetters, roomForLevels } from '../../../web/lesson/comparison/chart-scale.ts';
import { WEST } from './played-days.ts';

const SIZE = { widthPx: 900, heightPx: 400, fontPx: 24 };

function chartOf(widthPx = SIZE.widthPx, maxC = WEST.site.limits.maxC, units: 'metric' | 'us' = 'metric') {
  const site = { ...WEST.site, limits: { ...WEST.site.limits, maxC } };
  const curves = [WEST.result.insideAirC, WEST.result.outsideAirC];
  return dayChart({ day: WEST.result, site, curves, units, ...SIZE, widthPx });
}

test('all of the day lies within the frame, hours from left to right', () => {
  const chart = chartOf();
  for (const celsius of [...WEST.result.insideAirC, ...WEST.result.outsideAirC]) {
    expect(chart.y(celsius)).toBeGreaterThan(chart.top);
    expect(chart.y(celsius)).toBeLessThan(chart.bottom);
  }
  expect(chart.x(0)).toBe(chart.left);
  expect(chart.x(WEST.result.stepsUtc.length)).toBe(chart.right);
  expect(chart.xTicks[0]).toMatchObject({ label: '00:00', x: chart.left });
});

test('a limit near the day is in the picture, one far above it is not', () => {
  expect(chartOf().limitY).toBeGreaterThan(chartOf().top);
  expect(chartOf().limitText).toBe('limit 65 °C');
  expect(chartOf(900, 65, 'us').limitText).toBe('limit 149 °F');
  expect(chartOf(900, 200).limitY).toBeNull();
});

test('labels of hours and degrees have room, on a phone as well', () => {
  for (const width of [328, 600, 900, 1800]) {
    const { xTicks, yTicks } = chartOf(width);
    expect(xTicks.length).toBeGreaterThanOrEqual(2);
    expect(yTicks.length).toBeGreaterThanOrEqual(2);
    xTicks.slice(1).forEach(({ x }, k) => {
      expect(x - (xTicks[k]?.x ?? 0)).toBeGreaterThan(SIZE.fontPx * 3.3);
    });
    yTicks.slice(1).forEach(({ y }, k) => {
      expect((yTicks[k]?.y ?? 0) - y).toBeGreaterThan(SIZE.fontPx);
    });
  }
});

test('letters of peaks at one point stand beside each other', () => {
  const named = ['A', 'B', 'C'].map((letter) => ({ letter, at: [100, 100] as const }));
  const placed = placeLetters(named, 20);
  expect(new Set(placed.map(({ at }) => at.join())).size).toBe(3);
});

test('words of two levels stand on the sides away from each other, and within the chart', () => {
  const drawn = [...WEST.result.insideAirC, ...WEST.result.outsideAirC];
  const peakC = WEST.result.peakInsideAirC;
  for (const { widthPx, heightPx, fontPx } of [SIZE, { widthPx: 328, heightPx: 240, fontPx: 16 }]) {
    for (const apartK of [-40, -5, -0.5, 0, 0.5, 5, 25]) {
      const levels = [peakC + apartK, peakC];
      const curves = [drawn, roomForLevels(levels, drawn)];
      const chart = dayChart({
        day: WEST.result,
        site: WEST.site,
        curves,
        units: 'us',
        widthPx,
        heightPx,
        fontPx,
      });
      const lines = levels.map((celsius) => chart.y(celsius));
      const words = besideLevels(lines, fontPx);
      const [upper, lower] = apartK >= 0 ? [0, 1] : [1, 0];
      // A word reaches from its baseline upwards, less than a letter.
      expect(words[upper]).toBeLessThan(lines[upper] as number);
      expect((words[lower] as number) - 0.9 * fontPx).toBeGreaterThan(lines[lower] as number);
      expect((words[upper] as number) - fontPx).toBeGreaterThan(0);
      expect(words[lower]).toBeLessThan(chart.bottom);
    }
  }
});
