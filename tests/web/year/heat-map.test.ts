import { describe, expect, test } from 'vitest';
import { heatMap } from '../../../web/site/year/heat-map.ts';
import { marginClassOf } from '../../../web/site/year/margin-classes.ts';
import { yearDays } from '../../../web/site/year/year-calendar.ts';
import { inventedYear } from './years.ts';

const limits = { minC: -40, maxC: 65 };
const year = inventedYear();
for (const [hour, celsius] of year.hourlyLimitedC.entries()) {
  // Hot afternoons in summer, cool nights; the first value stands at 01:00.
  year.hourlyLimitedC[hour] = celsius + 30 * Math.sin((Math.PI * hour) / 8760) * Math.sin((Math.PI * (hour + 1)) / 12);
}
const days = yearDays(year);

/** Area of the rectangles of a path, px2. */
const area = (d: string) =>
  [...d.matchAll(/M[\d.]+ [\d.]+h([\d.]+)v([\d.]+)h-[\d.]+z/g)].reduce(
    (sum, [, w, h]) => sum + Number(w) * Number(h),
    0,
  );

describe.each([
  [328, 2],
  [739, 1],
])('at %i px', (widthPx, bands) => {
  const map = heatMap(days, { limits, units: 'metric', widthPx });

  test('the days fill so many strips, within the picture', () => {
    expect(map.bands).toHaveLength(bands);
    expect(map.left + map.width).toBeLessThanOrEqual(widthPx);
    expect(map.bands.flatMap((band) => band.days)).toEqual(days);
    expect(map.bands.flatMap(({ months }) => months.map(({ month }) => month))).toEqual(
      Array.from({ length: 12 }, (_, k) => k + 1),
    );
  });

  test('every hour is painted once, in its class', () => {
    const cellPx = (map.width / Math.max(...map.bands.map((band) => band.days.length))) * (map.bandHeight / 24);
    const counts = new Map<number, number>();
    for (const celsius of days.flatMap(({ limitedC }) => limitedC)) {
      const index = marginClassOf(celsius, limits, 'metric');
      counts.set(index, (counts.get(index) ?? 0) + 1);
    }
    expect(map.paths.map(({ index }) => index)).toEqual([...counts.keys()].sort((a, b) => a - b));
    expect(counts.size).toBeGreaterThan(4);
    for (const { index, d } of map.paths) {
      expect(Math.abs(area(d) / cellPx / (counts.get(index) as number) - 1)).toBeLessThan(0.02);
    }
  });

  test('a place of the picture tells its day and hour, midnight at the foot', () => {
    for (const { top, days: part } of map.bands) {
      const foot = map.at(map.left + 0.1, top + map.bandHeight - 0.1);
      expect([foot?.day, foot?.hour]).toEqual([part[0], 0]);
      const head = map.at(map.left + 0.1, top + 0.1);
      expect([head?.day, head?.hour]).toEqual([part[0], 23]);
    }
    expect(map.at(map.left - 1, 20)).toBeNull();
    expect(map.at(map.left + map.width + 4, 20)).toBeNull();
    expect(map.at(map.left + 5, map.height - 1)).toBeNull();
  });
});
