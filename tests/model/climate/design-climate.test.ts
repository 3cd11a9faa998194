import { describe, expect, test } from 'vitest';
import { airTemperature } from '../../../model/climate/daily-range.ts';
import { designClimate, hottestMonth } from '../../../model/climate/design-climate.ts';
import { dewPoint } from '../../../model/climate/humidity.ts';
import { CLIMATE_SAMPLES, extraterrestrialNormal, STANDARD_CYCLES, sunPosition } from '../../../model/index.ts';
import { apparentSolarHour, equationOfTimeMin } from '../../../model/solar/extraterrestrial.ts';
import { siteWith } from '../sites.ts';

describe('air temperature of the design day (ASHRAE Fundamentals 2021, chapter 14, table 6)', () => {
  test.each([
    [1, 0.88],
    [5, 1],
    [8, 0.74],
    [12, 0.13],
    [14, 0],
    [15, 0],
    [18, 0.24],
    [24, 0.82],
    [0, 0.82],
  ])('at hour %f it lies %f of the range below the maximum', (hour, fraction) => {
    expect(airTemperature(hour, 46, 14)).toBeCloseTo(46 - 14 * fraction, 9);
  });

  test('straight between the hours, across midnight too', () => {
    expect(airTemperature(8.5, 40, 10)).toBeCloseTo(40 - 10 * (0.74 + 0.55) * 0.5, 9);
    expect(airTemperature(0.5, 40, 10)).toBeCloseTo(40 - 10 * (0.82 + 0.88) * 0.5, 9);
  });

  test('no range is flat air', () => {
    for (let hour = 0; hour < 24; hour++) expect(airTemperature(hour, 30, 0)).toBe(30);
  });
});

test.each([
  // Saturated air has its own temperature as dew point; the others recomputed from Magnus' formula.
  [20, 100, 20],
  [20, 50, 9.27],
  [49, 3, -7.4],
])('dew point of %f degC at %f %% is %f degC', (airC, humidity, expected) => {
  expect(dewPoint(airC, humidity)).toBeCloseTo(expected, 0);
});

test('the sky over a high place radiates less than over a low one of the same air', () => {
  const noon = {
    sun: { elevationDeg: 60, azimuthDeg: 180 },
    solarHour: 12,
    relativeAirMass: 1.15,
    extraterrestrialWm2: 1330,
  };
  const at = (altitudeM: number) => designClimate(siteWith({ place: { altitudeM } })).at(noon);
  expect(at(0).skyLongwaveWm2 - at(2600).skyLongwaveWm2).toBeGreaterThan(10);
  expect(at(2600).dni).toBeGreaterThan(at(0).dni + 50);
});

test('a place outside the latitudes of a sample is told so', () => {
  expect(designClimate(siteWith({ place: { latitudeDeg: 70, longitudeDeg: 20, timeZone: 'UTC' } })).text).toMatch(
    /meant for 28 to 36 degrees from the equator, the place lies at 70/,
  );
});

describe('samples', () => {
  test('six invented climates, each with twelve months and its mark', () => {
    expect(CLIMATE_SAMPLES).toHaveLength(6);
    for (const sample of CLIMATE_SAMPLES) {
      expect(sample.months).toHaveLength(12);
      expect(sample.origin).toMatch(/invented/);
      for (const month of sample.months) expect(month.dewPointC).toBeLessThanOrEqual(month.maxC);
    }
    expect(CLIMATE_SAMPLES.find(({ name }) => name === 'high-plateau')?.altitudeM).toBeGreaterThan(2000);
    expect(CLIMATE_SAMPLES.find(({ name }) => name === 'continental')?.months[0]?.maxC).toBeLessThan(0);
  });

  test('a real row of each file', () => {
    const month = (name: string, i: number) => CLIMATE_SAMPLES.find((sample) => sample.name === name)?.months[i];
    expect(month('dry-basin', 6)).toEqual({ maxC: 46, dailyRangeK: 14, dewPointC: 10, windMs: 1.3, linkeTurbidity: 4 });
    expect(month('humid-coast', 4)?.maxC).toBe(35);
    expect(month('high-plateau', 4)?.linkeTurbidity).toBe(2.7);
    expect(month('temperate-maritime', 6)?.maxC).toBe(31);
    expect(month('continental', 0)?.dewPointC).toBe(-16);
    expect(month('mediterranean', 7)?.dailyRangeK).toBe(14);
  });

  test('the hottest month moves by half a year across the equator', () => {
    const months = CLIMATE_SAMPLES[0]?.months ?? [];
    expect(hottestMonth(months, 33)).toBe(7);
    expect(hottestMonth(months, -33)).toBe(1);
    expect(designClimate(siteWith({ place: { latitudeDeg: -33, longitudeDeg: 20, timeZone: 'UTC' } })).date).toBe(
      '2026-01-21',
    );
  });

  test('a chosen month is taken', () => {
    const climate = designClimate(siteWith({ climate: { sample: 'dry-basin', month: 1 } }));
    expect(climate.date).toBe('2026-01-21');
    expect(climate.text).toMatch(/chosen month/);
  });
});

describe('standard cycles (MIL-STD-810H Method 505, read as MIL-HDBK-310)', () => {
  test.each(['mil-std-810h-a1', 'mil-std-810h-a2'])('%s: 24 hours, 9270 Wh/m2 a day (recomputed)', (name) => {
    const cycle = STANDARD_CYCLES.find((known) => known.name === name);
    expect(cycle?.hours.map(({ hour }) => hour)).toEqual(Array.from({ length: 24 }, (_, i) => i + 1));
    expect(cycle?.hours.reduce((sum, { ghiWm2 }) => sum + ghiWm2, 0)).toBe(9270);
  });

  test('real rows: A1 at 16 h and A2 at 13 h', () => {
    const row = (i: number, hour: number) => STANDARD_CYCLES[i]?.hours[hour - 1];
    expect(row(0, 16)).toEqual({ hour: 16, airC: 49, ghiWm2: 730, relativeHumidityPercent: 3 });
    expect(row(1, 13)).toEqual({ hour: 13, airC: 43, ghiWm2: 1120, relativeHumidityPercent: 16 });
  });

  test("its noon is the sun's, and the split gives back the tabulated global", () => {
    const site = siteWith({ climate: { cycle: 'mil-std-810h-a1', date: '2026-06-21' } });
    const climate = designClimate(site);
    let highest = 0;
    let at = 0;
    for (let minute = 0; minute < 1440; minute += 5) {
      const utc = new Date(Date.UTC(2026, 5, 21, 7, minute));
      const sun = sunPosition(utc, site.place.latitudeDeg, site.place.longitudeDeg);
      const solarHour = apparentSolarHour(utc, site.place.longitudeDeg, equationOfTimeMin(utc));
      const extraterrestrialWm2 = extraterrestrialNormal(utc);
      const weather = climate.at({ sun, solarHour, relativeAirMass: 1, extraterrestrialWm2 });
      const level = weather.dni * Math.max(0, Math.sin((sun.elevationDeg * Math.PI) / 180));
      expect(weather.dhi + level).toBeCloseTo(weather.ghi, 6);
      expect(weather.dhi).toBeGreaterThanOrEqual(0);
      if (sun.elevationDeg > highest) [highest, at] = [sun.elevationDeg, weather.ghi];
    }
    expect(at).toBeGreaterThan(1115);
  });

  test('south of the equator the cycle falls in December', () => {
    expect(designClimate(siteWith({ place: { latitudeDeg: -25 }, climate: { cycle: 'mil-std-810h-a2' } })).date).toBe(
      '2026-12-21',
    );
  });
});
