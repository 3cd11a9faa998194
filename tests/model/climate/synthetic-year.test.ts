/** Years made of an invented climate: the sample's means, a memory of the day before, and the same year for the same seed. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dailyClearSkyIndices } from '../../../model/climate/clearness.ts';
import { airTemperature, ordinaryTemperature } from '../../../model/climate/daily-range.ts';
import { dailyWeather } from '../../../model/climate/daily-weather.ts';
import { meansOfSample } from '../../../model/climate/design-climate.ts';
import { dewPoint, relativeHumidity } from '../../../model/climate/humidity.ts';
import { DAYS_OF_YEAR, monthlyMeans, throughMonths } from '../../../model/climate/through-months.ts';
import {
  CLIMATE_SAMPLES,
  clearSky,
  type Site,
  SiteError,
  sunPosition,
  syntheticYear,
  type WeatherHour,
  type WeatherYear,
} from '../../../model/index.ts';
import { normal, normalShare, seeded } from '../../../model/random.ts';
import { siteWith } from '../sites.ts';

/** A site in the middle of the latitudes that a sample is meant for. */
function siteOf(sample: (typeof CLIMATE_SAMPLES)[number], south = false): Site {
  const [low = 0, high = 0] = sample.latitudeBandDeg;
  const latitudeDeg = ((low + high) / 2) * (south ? -1 : 1);
  const timeZone = 'Etc/GMT+7';
  const place = { latitudeDeg, longitudeDeg: -106, altitudeM: sample.altitudeM, timeZone };
  return siteWith({ place, climate: { sample: sample.name as 'dry-basin' } });
}

const perDay = (year: WeatherYear, of: (hours: WeatherHour[]) => number): Float64Array =>
  Float64Array.from({ length: DAYS_OF_YEAR }, (_, day) =>
    of(Array.from({ length: 24 }, (__, hour) => year.at(day * 24 + hour))),
  );

const mean = (values: ArrayLike<number>): number => Array.from(values).reduce((a, b) => a + b, 0) / values.length;

/** Correlation of what is left of a series about its course through the months with the same a day later. */
function persistence(daily: Float64Array, means: readonly number[]): number {
  const course = throughMonths(means);
  const left = daily.map((value, day) => value - (course[day] as number));
  let products = 0;
  let squares = 0;
  for (let day = 1; day < DAYS_OF_YEAR; day++) {
    products += (left[day] as number) * (left[day - 1] as number);
    squares += (left[day] as number) ** 2;
  }
  return products / squares;
}

describe.each(CLIMATE_SAMPLES)('a year of $name', (sample) => {
  const south = sample.name === 'mediterranean';
  const site = siteOf(sample, south);
  const year = syntheticYear(site, { seed: 3 });
  const months = Array.from({ length: 12 }, (_, k) => meansOfSample(sample, k + 1, site.place.latitudeDeg));

  test('has the monthly means of the sample: maxima within 0.05 K, minima within 1 K, wind within 1 %', () => {
    const maxC = monthlyMeans(perDay(year, (hours) => Math.max(...hours.map(({ airC }) => airC))));
    const minC = monthlyMeans(perDay(year, (hours) => Math.min(...hours.map(({ airC }) => airC))));
    const windMs = monthlyMeans(perDay(year, (hours) => mean(hours.map((hour) => hour.windMs))));
    // ASHRAE's profiles from 10 m in the open to the height of the box in a suburb.
    const atBox = (270 / 10) ** 0.14 * (site.box.mountHeightM / 370) ** 0.22;
    for (const [k, month] of months.entries()) {
      expect(Math.abs((maxC[k] as number) - month.maxC)).toBeLessThan(0.05);
      expect(Math.abs((minC[k] as number) - month.minC)).toBeLessThan(1);
      expect(Math.abs(((windMs[k] as number) * atBox) / month.windMs - 1)).toBeLessThan(0.01);
    }
  });

  test('has the sunshine of the sample: within 4 % of its share of the clear sky, month by month', () => {
    const { latitudeDeg, longitudeDeg, altitudeM } = site.place;
    const clear = monthlyMeans(
      perDay(year, (hours) =>
        hours.reduce((sum, { sunUtc: utc }) => {
          const { elevationDeg } = sunPosition(utc, latitudeDeg, longitudeDeg);
          const month = sample.months[(utc.getUTCMonth() + (south ? 6 : 0)) % 12];
          const { ghi } = clearSky({ utc, elevationDeg, altitudeM, linkeTurbidity: month?.linkeTurbidity ?? 3 });
          return sum + ghi;
        }, 0),
      ),
    );
    const made = monthlyMeans(perDay(year, (hours) => hours.reduce((sum, { ghi }) => sum + ghi, 0)));
    for (const [k, { clearSkyIndex }] of months.entries()) {
      const index = (made[k] as number) / (clear[k] as number);
      expect(Math.abs(index / clearSkyIndex - 1)).toBeLessThan(0.04);
    }
  });

  test('is weather: light closes at the declared time, dew below air, nothing negative, no beam by night', () => {
    expect(year).toMatchObject({ format: 'synthetic', length: 8760, windHeightM: 10, zoneOffsetH: -7 });
    expect(year.timeBase).toMatchObject({ declaredShiftMin: -30, usedShiftMin: -30, corrected: false });
    expect(year.timeBase.residualWm2).toBeLessThan(6);
    const rows = Array.from({ length: year.length }, (_, row) => year.at(row));
    const wrong = rows.filter(({ airC, dewPointC, ghi, dni, dhi, windMs, horizontalInfraredWm2 = 0 }, row) => {
      const possible = Math.min(ghi, dni, dhi, windMs) >= 0 && dni < 1200 && dewPointC <= airC;
      // Rows 0 to 2 of a day are its first three hours.
      const dark = row % 24 >= 3 || ghi === 0;
      return !(possible && dark && horizontalInfraredWm2 > 80 && horizontalInfraredWm2 < 550);
    });
    expect(wrong).toEqual([]);
  });

  test('is near the design day at its hottest', () => {
    const hottest = Math.max(...perDay(year, (hours) => Math.max(...hours.map(({ airC }) => airC))));
    const design = Math.max(...sample.months.map(({ maxC }) => maxC));
    expect(Math.abs(hottest - design)).toBeLessThan(4);
  });
});

describe('memory and chance', () => {
  const [dry, , , maritime] = CLIMATE_SAMPLES as unknown as [Sample, Sample, Sample, Sample];
  type Sample = (typeof CLIMATE_SAMPLES)[number];

  test('warm spells last: the lag-one correlation of daily maxima is 0.62 less what the fixed monthly means take', () => {
    const means = maritime.monthlyMeans.map((month) => month.maxC);
    const clear = new Array<number>(12).fill(0.7);
    const found = Array.from({ length: 30 }, (_, seed) =>
      persistence(dailyWeather(maritime.monthlyMeans, clear, seeded(seed)).maxC, means),
    );
    expect(mean(found)).toBeGreaterThan(0.48);
    expect(mean(found)).toBeLessThan(0.64);
    const hourly = perDay(syntheticYear(siteOf(maritime)), (hours) => Math.max(...hours.map(({ airC }) => airC)));
    expect(Math.abs(persistence(hourly, means) - mean(found))).toBeLessThan(0.15);
  });

  test('days have the spread of the sample, and warm days are a little brighter (Richardson: 0.19)', () => {
    const months = maritime.monthlyMeans;
    const departures: number[] = [];
    let together = 0;
    let [warmth, brightness] = [0, 0];
    for (let seed = 0; seed < 20; seed++) {
      const days = dailyWeather(months, new Array<number>(12).fill(0.7), seeded(seed));
      const course = throughMonths(months.map(({ maxC }) => maxC));
      const spread = throughMonths(months.map(({ spreadK }) => spreadK));
      const bright = monthlyMeans(days.clearSkyIndex);
      for (let day = 0; day < DAYS_OF_YEAR; day++) {
        const warm = ((days.maxC[day] as number) - (course[day] as number)) / (spread[day] as number);
        const light = (days.clearSkyIndex[day] as number) - mean(bright);
        departures.push(warm);
        together += warm * light;
        warmth += warm ** 2;
        brightness += light ** 2;
      }
    }
    const deviation = Math.sqrt(mean(departures.map((value) => value ** 2)));
    expect(deviation).toBeGreaterThan(0.85);
    expect(deviation).toBeLessThan(1.02);
    const correlation = together / Math.sqrt(warmth * brightness);
    expect(correlation).toBeGreaterThan(0.1);
    expect(correlation).toBeLessThan(0.28);
  });

  test('the same seed makes the same year, another seed another', () => {
    const rows = (seed?: number) => {
      const year = syntheticYear(siteOf(dry), seed === undefined ? {} : { seed });
      return Array.from({ length: 8760 }, (_, row) => year.at(row));
    };
    const [a, again, b] = [rows(), rows(1), rows(6)];
    expect(JSON.stringify(a) === JSON.stringify(again)).toBe(true);
    expect(a.filter((row, k) => row.airC === b[k]?.airC).length).toBeLessThan(200);
  });
});

test.each([
  ['designDay', { designDay: { date: '2026-07-05', maxC: 45, dailyRangeK: 14, dewPointC: 8 } }],
  ['cycle', { cycle: 'mil-std-810h-a1' as const }],
])('a %s makes no year: one error that says what does', (kind, climate) => {
  const site = siteWith({ climate });
  expect(() => syntheticYear(site)).toThrow(SiteError);
  expect(() => syntheticYear(site)).toThrow(
    /of which no year can be made; allowed: a weather file, or a sample.*dry-bas/,
  );
  expect(() => syntheticYear(site)).toThrow(new RegExp(`^climate\\.${kind}:`));
});

test('polar night, the date line and odd zones have a year, too', () => {
  for (const place of [
    { latitudeDeg: 78, longitudeDeg: 15, timeZone: 'Arctic/Longyearbyen' },
    { latitudeDeg: -90, longitudeDeg: 0, timeZone: 'UTC' },
    { latitudeDeg: 1.9, longitudeDeg: -157.4, timeZone: 'Pacific/Kiritimati' },
    { latitudeDeg: 27.7, longitudeDeg: 85.3, timeZone: 'Asia/Kathmandu' },
  ]) {
    const year = syntheticYear(siteWith({ place: { altitudeM: 10, ...place } }));
    expect(year.timeBase.corrected).toBe(false);
    for (let row = 0; row < 8760; row += 7)
      expect(Object.values(year.at(row)).every((v) => !Number.isNaN(+v))).toBe(true);
  }
});

describe('parts', () => {
  test('a course through the months has their means, whatever they are', () => {
    const any = fc.array(fc.double({ min: -60, max: 60, noNaN: true }), { minLength: 12, maxLength: 12 });
    fc.assert(
      fc.property(any, (means) => {
        for (const [k, found] of monthlyMeans(throughMonths(means)).entries()) {
          expect(Math.abs(found - (means[k] as number))).toBeLessThan(1e-4);
        }
      }),
      { numRuns: 50 },
    );
  });

  test('the clouds of a month have its mean, stay between overcast and clear, and keep the order of the days', () => {
    const ranks = fc.uniqueArray(fc.double({ min: -4, max: 4, noNaN: true }), { minLength: 28, maxLength: 31 });
    const means = fc.record({
      meanIndex: fc.double({ min: 0.1, max: 0.99, noNaN: true }),
      clearClearness: fc.double({ min: 0, max: 0.85, noNaN: true }),
    });
    fc.assert(
      fc.property(ranks, means, (order, month) => {
        const indices = dailyClearSkyIndices(order, month);
        expect(Math.abs(mean(indices) - month.meanIndex)).toBeLessThan(0.005);
        for (const [k, index] of indices.entries()) {
          expect(index).toBeGreaterThan(0);
          expect(index).toBeLessThanOrEqual(1);
          const next = (k + 1) % order.length;
          if ((order[k] as number) < (order[next] as number))
            expect(index).toBeLessThanOrEqual(indices[next] as number);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('ordinary days meet at their turns and have the shape of the design day', () => {
    const turns = { maxBeforeC: 30, minC: 12, maxC: 25, minAfterC: 15 };
    expect(ordinaryTemperature(5, turns)).toBe(12);
    expect(ordinaryTemperature(4.999, turns)).toBeCloseTo(12, 2);
    expect(ordinaryTemperature(14.5, turns)).toBe(25);
    expect(ordinaryTemperature(15.001, turns)).toBeCloseTo(25, 1);
    const next = { maxBeforeC: 25, minC: 15, maxC: 20, minAfterC: 10 };
    expect(ordinaryTemperature(23.9999, turns)).toBeCloseTo(ordinaryTemperature(0, next), 3);
    const same = { maxBeforeC: 40, minC: 26, maxC: 40, minAfterC: 26 };
    for (let hour = 0; hour < 24; hour += 0.25) {
      expect(ordinaryTemperature(hour, same)).toBeCloseTo(airTemperature(hour, 40, 14), 9);
    }
  });

  test('relative humidity is the inverse of the dew point', () => {
    for (const percent of [5, 40, 100]) expect(relativeHumidity(30, dewPoint(30, percent))).toBeCloseTo(percent, 9);
    expect(relativeHumidity(10, 12)).toBe(100);
  });

  test('normal numbers: shares of tables (0.8413 below 1, 0.9772 below 2), mean 0 and deviation 1', () => {
    expect(normalShare(0)).toBeCloseTo(0.5, 7);
    expect(normalShare(1)).toBeCloseTo(0.841344746, 6);
    expect(normalShare(-2)).toBeCloseTo(0.022750132, 6);
    const next = normal(seeded(1));
    const values = Array.from({ length: 20_000 }, next);
    expect(Math.abs(mean(values))).toBeLessThan(0.03);
    expect(Math.abs(mean(values.map((value) => value ** 2)) - 1)).toBeLessThan(0.05);
  });
});
