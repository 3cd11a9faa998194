import { describe, expect, test } from 'vitest';
import { CAUTIONS, WORK_CAUTIONS } from '../../../model/cautions.ts';
import { FULL_SUN_K, heatIndex } from '../../../model/climate/heat-index.ts';
import { relativeHumidity } from '../../../model/climate/humidity.ts';
import { evaluateDay } from '../../../model/siting/evaluate-day.ts';
import { cautionsAt, cautionsOfTheDay } from '../../../model/siting/site-cautions.ts';
import { hoursOf, spansText, spansWhere } from '../../../model/siting/time-spans.ts';
import { BURN_THRESHOLDS_C } from '../../../model/siting/touch.ts';
import { workerHeat } from '../../../model/siting/worker-heat.ts';
import { siteWith, wallFacing } from '../sites.ts';

const designDay = (more: object) => ({ designDay: { date: '2026-07-05', maxC: 36, dailyRangeK: 10, ...more } });

describe('spans of time', () => {
  const steps = Array.from({ length: 6 }, (_, k) => new Date(Date.UTC(2026, 6, 5, k)));
  const clock = (utc: Date) => utc.toISOString().slice(11, 16);

  test('join neighbours and keep gaps', () => {
    const spans = spansWhere(steps, 3_600_000, (k) => [0, 1, 4, 5].includes(k));
    expect(spansText(spans, clock)).toBe('00:00 to 02:00 and 04:00 to 06:00');
    expect(hoursOf(spans)).toBe(4);
    expect(spansText([], clock)).toBe('');
  });

  test('a span that ends with the day ends at 24:00', () => {
    const last = [new Date(Date.UTC(2026, 6, 5, 23))];
    expect(
      spansText(
        spansWhere(last, 3_600_000, () => true),
        clock,
      ),
    ).toBe('23:00 to 24:00');
  });
});

describe('heat of the worker', () => {
  test('is the heat index of the air of the day, in the sun with what full sun adds', () => {
    const site = siteWith({ climate: designDay({ dewPointC: 27 }), walls: wallFacing(270) });
    const heat = workerHeat(site, 'wall');
    const air = evaluateDay(site, 'wall').outsideAirC;
    for (const [k, airC] of air.entries()) {
      const index = heatIndex({ airC, relativeHumidityPercent: relativeHumidity(airC, Math.min(27, airC)) });
      expect(heat.heatIndexC[k]).toBeCloseTo(index, 9);
      expect(heat.judgedC[k]).toBeCloseTo(index + (heat.inSun[k] ? FULL_SUN_K : 0), 9);
    }
    expect([heat.peakShadeC, heat.peakShadeIsAir]).toEqual([Math.max(...heat.heatIndexC), false]);
    expect(heat.hoursOutsideChart).toBe(0);
    expect(heat.worst).toBe('extreme danger');
    expect(heat.avoid.length).toBeGreaterThan(0);
  });

  test('who stands at a west wall has the sun in the afternoon, at an east wall in the morning', () => {
    const hours = (azimuthDeg: number) => {
      const { sunSpans } = workerHeat(siteWith({ walls: wallFacing(azimuthDeg) }), 'wall');
      return sunSpans.map(({ fromUtc }) => (fromUtc.getUTCHours() + 24 - 7) % 24);
    };
    expect(hours(270)[0]).toBeGreaterThanOrEqual(11);
    expect(hours(90)[0]).toBeLessThan(8);
  });

  test('a tall house next to the wall shades the worker', () => {
    const shaded = wallFacing(270, { obstructions: [{ kind: 'front', distanceM: 2, heightM: 30, widthM: 300 }] });
    const sun = (walls: object[]) => hoursOf(workerHeat(siteWith({ walls } as never), 'wall').sunSpans);
    expect(sun(shaded)).toBeLessThan(sun(wallFacing(270)) / 2);
  });

  test('very dry, very hot air is judged at least by itself, and said to be outside the chart', () => {
    const site = siteWith({ climate: designDay({ maxC: 46, dewPointC: -5 }) });
    const heat = workerHeat(site, 'wall');
    expect(heat.hoursOutsideChart).toBeGreaterThan(5);
    expect(heat.peakJudgedC).toBeGreaterThanOrEqual(46);
    expect([Math.round(heat.peakShadeC), heat.peakShadeIsAir]).toEqual([46, true]);
    // The figures told add up: what is judged in the shade, what the sun adds, and both.
    const { cautions } = cautionsAt(site, evaluateDay(site, 'wall'), 'metric');
    const here = cautions.find(({ part }) => part === 'heat')?.here ?? '';
    expect(here).toContain('air of up to 46 °C in the shade, which is warmer than its heat index');
    expect(here).toContain(`which adds up to 8 K: ${Math.round(heat.peakJudgedC)} °C at the most.`);
    expect(heat.peakJudgedC).toBeLessThanOrEqual(heat.peakShadeC + FULL_SUN_K);
  });

  test('a cold day reaches no class', () => {
    const cold = siteWith({ climate: { designDay: { date: '2026-01-05', maxC: -5, dailyRangeK: 8 } } });
    const heat = workerHeat(cold, 'wall');
    expect([heat.worst, heat.classes, heat.avoid]).toEqual([null, [], []]);
    const texts = cautionsAt(cold, evaluateDay(cold, 'wall'), 'metric').cautions;
    expect(texts.find(({ part }) => part === 'heat')?.here).toContain('No hour reaches the lowest class');
  });

  test('says where the humidity comes from', () => {
    const origin = (climate: object) => workerHeat(siteWith({ climate } as never), 'wall').humidityOrigin;
    expect(origin(designDay({ dewPointC: 12 }))).toBe('entered');
    expect(origin(designDay({}))).toBe('assumed');
    expect(origin({ sample: 'dry-basin' })).toBe('sample');
    expect(origin({ cycle: 'mil-std-810h-a1' })).toBe('cycle');
  });

  test('a wall that is not there is refused', () => {
    expect(() => workerHeat(siteWith(), 'moon')).toThrow('there is no wall');
  });
});

describe('hot surfaces', () => {
  test('burn while some part is above the threshold of the material', () => {
    const site = siteWith({ box: { solarAbsorptance: 0.9, material: 'metal' } });
    const { touch, skinC, stepsUtc } = evaluateDay(site, 'wall');
    const hottest = stepsUtc.map((_, k) =>
      Math.max(...(['front', 'left', 'right', 'top', 'bottom'] as const).map((face) => skinC[face][k] as number)),
    );
    for (const seconds of [1, 10, 60] as const) {
      const hours = hottest.filter((c) => c >= BURN_THRESHOLDS_C.metal[seconds]).length / 12;
      expect(hoursOf(touch.burns[seconds])).toBeCloseTo(hours, 9);
    }
    expect(hoursOf(touch.burns[60])).toBeGreaterThan(0);
  });

  test('are silent about a box that burns nobody', () => {
    const cool = siteWith({ climate: designDay({ maxC: 15 }), box: { powerW: 1, solarAbsorptance: 0.1 } });
    const day = evaluateDay(cool, 'wall');
    expect(day.touch.burns).toEqual({ 1: [], 10: [], 60: [] });
    expect(cautionsAt(cool, day, 'metric').cautions.find(({ part }) => part === 'hotSurfaces')?.here).toBe('');
  });
});

describe('the cautions of a wall', () => {
  test('keep every general one, in its words', () => {
    const site = siteWith();
    const { cautions } = cautionsAt(site, evaluateDay(site, 'wall'), 'us');
    expect(cautions.map(({ text }) => text)).toEqual(CAUTIONS);
    expect(new Set(WORK_CAUTIONS.map(({ part }) => part)).size).toBe(WORK_CAUTIONS.length);
    for (const { heading, text } of WORK_CAUTIONS) expect(text.startsWith(`${heading}:`)).toBe(false);
  });

  test('name hours, classes, source and assumption, in the units asked for', () => {
    const site = siteWith({ climate: designDay({ maxC: 40 }) });
    const told = (units: 'metric' | 'us') =>
      cautionsOfTheDay(cautionsAt(site, evaluateDay(site, 'wall'), units)).join(' ');
    expect(told('metric')).toMatch(/danger \d\d:\d\d to \d\d:\d\d/);
    expect(told('metric')).toMatch(/Do not work at this wall \d\d:\d\d to/);
    expect(told('metric')).toContain('assumed, nobody entered one');
    expect(told('metric')).toContain('Rothfusz');
    expect(told('us')).toContain('extreme danger 125 °F');
    expect(told('us')).toContain('adds up to 15 °F');
  });

  test('a high box asks for a ladder', () => {
    const ladder = (mountHeightM: number) => {
      const site = siteWith({ box: { mountHeightM } });
      return cautionsAt(site, evaluateDay(site, 'wall'), 'metric').cautions.find(({ part }) => part === 'ladder')?.here;
    };
    expect(ladder(1.4)).toBe('');
    expect(ladder(2.5)).toMatch(/^The top of the box is 2\.\d+ m above ground/);
  });
});
