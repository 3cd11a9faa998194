/** A year on a wall: against the periodic design day, against hand sums, and its limits. */
import { describe, expect, test } from 'vitest';
import { evaluateDay, evaluateYear, type YearWeather } from '../../../model/index.ts';
import { arrheniusFactor, batteryAgeing } from '../../../model/siting/ageing.ts';
import { siteDay } from '../../../model/siting/design-day.ts';
import { yearCalendar } from '../../../model/siting/year-weather.ts';
import { siteWith, wallFacing } from '../sites.ts';

type Site = ReturnType<typeof siteWith>;

/** The design day of a site, repeated, a row every `everyMin` minutes. */
function repeated(site: Site, days: number, everyMin: number): YearWeather {
  const { steps } = siteDay(site);
  const perStep = everyMin / 5;
  const perDay = steps.length / perStep;
  return {
    length: days * perDay,
    at(row) {
      const day = Math.floor(row / perDay);
      const step = steps[(row % perDay) * perStep] as (typeof steps)[number];
      const { airC, dewPointC, ghi, dni, dhi, windMs, skyLongwaveWm2 } = step.weather;
      const sunUtc = new Date(step.utc.getTime() + day * 86_400_000);
      return { sunUtc, airC, dewPointC, ghi, dni, dhi, windMs, horizontalInfraredWm2: skyLongwaveWm2 };
    },
  };
}

describe('a repeated design day', () => {
  const site = siteWith({
    walls: wallFacing(250, { construction: 'block', eave: { depthM: 0.4, heightAboveBoxM: 0.3 } }),
  });
  const day = evaluateDay(site, 'wall');

  test('equals the periodic design day', () => {
    const year = evaluateYear(site, 'wall', repeated(site, 1, 5), { shadeReference: false });
    const atMiddle = Array.from({ length: 24 }, (_, hour) => day.insideAirC[hour * 12 + 6] as number);
    for (const [hour, celsius] of atMiddle.entries()) {
      expect(Math.abs((year.hourlyInsideAirC[hour] as number) - celsius)).toBeLessThan(0.1);
    }
    expect(Math.abs(year.peakInsideAirC - day.peakInsideAirC)).toBeLessThan(0.05);
    expect(Math.abs(year.energyClosure)).toBeLessThan(0.001);
    const insolation = day.faceIrradianceWm2.front.reduce((sum, wm2) => sum + wm2 / 12_000, 0);
    expect(Math.abs(year.faceInsolationKwhM2.front / insolation - 1)).toBeLessThan(0.01);
  });

  test('hourly rows come near it, too: steps of a quarter of an hour, the sun where it stands', () => {
    const year = evaluateYear(site, 'wall', repeated(site, 2, 60), { shadeReference: false });
    expect(Math.abs(year.peakInsideAirC - day.peakInsideAirC)).toBeLessThan(0.6);
  });

  test('hours and degree-hours over the limit are those of the day, and lie in its month and hours', () => {
    const limited = siteWith({ walls: wallFacing(270), limits: { maxC: 60 } });
    const hot = evaluateDay(limited, 'wall');
    const year = evaluateYear(limited, 'wall', repeated(limited, 3, 5), { shadeReference: false });
    expect(Math.abs(year.hoursOverLimit / 3 - hot.hoursOverLimit)).toBeLessThan(0.2);
    const degreeHours = hot.insideAirC.reduce((sum, c) => sum + Math.max(0, c - 60) / 12, 0);
    expect(Math.abs(year.degreeHoursOverLimit / 3 / degreeHours - 1)).toBeLessThan(0.02);
    expect(year.months[6]?.hoursOverLimit).toBe(year.hoursOverLimit);
    // Arizona keeps UTC-7: the hot hours are those of the local afternoon.
    const byHour = year.hoursOverByHour[6] as number[];
    expect(byHour[16]).toBeCloseTo(3, 1);
    expect(byHour[5]).toBe(0);
    expect(byHour.reduce((a, b) => a + b, 0)).toBeCloseTo(year.hoursOverLimit, 9);
  });
});

test('the hours hold what the limit refers to, and say when the first begins and in which zone', () => {
  const limits = { maxC: 60, refersTo: 'componentCase' } as const;
  const site = siteWith({ walls: wallFacing(270), limits });
  const weather = { ...repeated(site, 2, 60), zoneOffsetH: -7 };
  const year = evaluateYear(site, 'wall', weather, { shadeReference: false });
  expect(year.firstHourUtc).toEqual(weather.at(0).sunUtc);
  expect(year.zoneOffsetH).toBe(-7);
  expect(year.hourlyLimitedC.length).toBe(48);
  // The electronics give off heat, so that they are warmer than the air round them.
  for (const [hour, celsius] of year.hourlyLimitedC.entries()) {
    expect(celsius).toBeGreaterThan(year.hourlyInsideAirC[hour] as number);
  }
  const air = evaluateYear(siteWith({ walls: wallFacing(270), limits: { maxC: 60 } }), 'wall', weather);
  expect(air.hourlyLimitedC).toEqual(air.hourlyInsideAirC);
});

describe('ageing', () => {
  test('Arrhenius: 25 to 125 degC is 133 at 0.5 eV and 17,597 at 1.0 eV (NIST/SEMATECH e-Handbook 8.1.5.1)', () => {
    expect(Math.round(arrheniusFactor(125, 25, 0.5))).toBe(133);
    expect(Math.abs(arrheniusFactor(125, 25, 1) / 17_597 - 1)).toBeLessThan(0.002);
    expect(arrheniusFactor(50, 50)).toBe(1);
  });

  test('a battery halves its life for each ten kelvins above 25 degC, and gains none below', () => {
    expect(batteryAgeing(25)).toBe(1);
    expect(batteryAgeing(45)).toBe(4);
    expect(batteryAgeing(0)).toBe(1);
    expect(batteryAgeing(-30)).toBe(1);
  });

  test('the sunny wall ages faster than full shade, a darker box faster still; without sun the factor is one', () => {
    const factor = (box: object, more: object = {}) => {
      const site = siteWith({ walls: wallFacing(270, more), box });
      return evaluateYear(site, 'wall', repeated(site, 1, 60)).ageingFactor as number;
    };
    expect(factor({})).toBeGreaterThan(1.3);
    expect(factor({ solarAbsorptance: 0.95 })).toBeGreaterThan(factor({}));
    expect(factor({}, { horizon: [[0, 90]] })).toBeCloseTo(1, 6);
  });
});

describe('weather that lacks something', () => {
  const site = siteWith({ walls: wallFacing(270) });
  const bare = (days: number, changes: (row: number) => object = () => ({})): YearWeather => {
    const full = repeated(site, days, 60);
    return {
      length: full.length,
      at(row) {
        const { horizontalInfraredWm2: _, ...rest } = full.at(row);
        return { ...rest, ...changes(row) };
      },
    };
  };

  test('no measured long-wave: clouds come from the sunshine, and a dull day has a warmer sky', () => {
    const clear = yearCalendar(site, bare(1)).dayAt(0).steps[0]?.weather.skyLongwaveWm2 as number;
    const dull = yearCalendar(
      site,
      bare(1, () => ({ ghi: 30, dni: 0, dhi: 30 })),
    ).dayAt(0).steps[0]?.weather.skyLongwaveWm2 as number;
    expect(dull).toBeGreaterThan(clear + 20);
  });

  test('wind of ten metres in the open is less at the box (ASHRAE profile: 5 m/s gives 2.32 at 1.4 m in a suburb)', () => {
    const windy = { ...bare(1, () => ({ windMs: 5 })), windHeightM: 10 };
    const atBox = yearCalendar(site, windy).dayAt(0).steps[0]?.weather.windMs as number;
    expect(atBox).toBeCloseTo(5 * (270 / 10) ** 0.14 * (1.4 / 370) ** 0.22, 9);
    expect(atBox).toBeCloseTo(2.32, 1);
  });

  test('the air of a row belongs to its label, the sun to its own instant', () => {
    const shifted = { ...bare(1), timeBase: { usedShiftMin: -30 } };
    const [plain, late] = [bare(1), shifted].map((weather) => yearCalendar(site, weather).dayAt(0).steps);
    // The label of a row stands half an hour after its sun: the air of now is in the row of half an hour ago.
    expect(late?.[40]?.weather.airC).toBeCloseTo(plain?.[38]?.weather.airC as number, 9);
    expect(late?.[60]?.weather.dni).toBeCloseTo(plain?.[60]?.weather.dni as number, 9);
  });

  test('a sun near sunrise that stands for an instant of its own moves the light and not the air', () => {
    const plain = bare(2);
    const early: YearWeather = {
      length: plain.length,
      at(row) {
        const { sunUtc, ...rest } = plain.at(row);
        return { ...rest, sunUtc: new Date(sunUtc.getTime() + (row % 24 === 6 || row === 24 ? 25 * 60_000 : 0)) };
      },
    };
    const airs = [plain, early].map((weather) =>
      yearCalendar(site, weather)
        .dayAt(0)
        .steps.map((s) => s.weather.airC),
    );
    expect(airs[1]).toEqual(airs[0]);
  });

  test('rows that do not fill days are refused', () => {
    const whole = bare(4);
    const odd: YearWeather = { length: 47, at: whole.at };
    expect(() => evaluateYear(site, 'wall', odd)).toThrow(/do not fill days/);
    const gap: YearWeather = { length: 72, at: (row) => whole.at(row < 24 ? row : row + 24) };
    expect(() => evaluateYear(site, 'wall', gap)).toThrow(/row \d+ does not follow/);
    const short: YearWeather = { length: 10, at: bare(1).at };
    expect(() => evaluateYear(site, 'wall', short)).toThrow(/fewer rows than a day/);
    expect(() => evaluateYear(site, 'attic', bare(1))).toThrow(/no wall "attic"/);
  });
});

test('trees shade in their months, half a year apart on either side of the equator', () => {
  const tree = { kind: 'tree', rightM: 0, outM: 5, heightM: 7, crownDiameterM: 5, leafOnMonths: [6, 8] };
  const insolation = (latitudeDeg: number) => {
    const climate = { designDay: { date: '2026-07-10', maxC: 30, dailyRangeK: 10, dewPointC: 5 } };
    const site = siteWith({
      climate,
      place: { latitudeDeg },
      walls: wallFacing(latitudeDeg > 0 ? 270 : 300, { obstructions: [tree] }),
    });
    const bare = { ...site, walls: site.walls.map((wall) => ({ ...wall, obstructions: [] })) };
    const weather = repeated(site, 1, 60);
    const of = (one: Site) => evaluateYear(one, 'wall', weather, { shadeReference: false }).faceInsolationKwhM2.front;
    return of(site) / of(bare);
  };
  expect(insolation(35)).toBeLessThan(insolation(-35) - 0.05);
});
