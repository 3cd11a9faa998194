/** A wall is not called within its limits by a badge whose own text says that another month or the coldest night is past them. */
import { describe, expect, test } from 'vitest';
import { DEMO_SITE, parseSite, rankWalls, siteSheet } from '../../../model/index.ts';
import { pastInMonth, wallStanding } from '../../../model/siting/wall-standing.ts';

const demoWith = (limits: object, climate: object = {}) =>
  parseSite({
    ...DEMO_SITE,
    climate: { ...DEMO_SITE.climate, ...climate },
    limits: { ...DEMO_SITE.limits, ...limits },
  });
const wall = { feasible: true, day: { marginK: 2, coldMarginK: 30 } as never };
const month = { wall: 'south', month: 10, marginK: 1, worseK: 1, coolerAirK: 9 };

describe('the standing of a wall', () => {
  const standing = (marginK: number | null, pastInColdestNight = false, of: object = {}) =>
    wallStanding({ ...wall, ...of }, { month: marginK === null ? null : { ...month, marginK }, pastInColdestNight });

  test('is within only where neither a month nor the coldest night is past', () => {
    expect([standing(null), standing(1), standing(0)]).toEqual(['within', 'within', 'within']);
    expect([standing(-0.1), standing(1, true), standing(null, true)]).toEqual(Array(3).fill('designDayOnly'));
    expect([pastInMonth(null), pastInMonth(month), pastInMonth({ ...month, marginK: -0.1 })]).toEqual([
      false,
      false,
      true,
    ]);
  });

  test('past the limit on the design day, or barred, it stays so whatever comes besides', () => {
    const hot = { day: { marginK: -1, coldMarginK: 30 } };
    expect(standing(-3, true, hot)).toBe('beyond');
    expect(standing(-3, true, { ...hot, feasible: false })).toBe('barred');
  });
});

describe('the sheet', () => {
  test('says that the demo site, with a limit below its October, is within on the design day only', () => {
    const { standing, grounds, wayOut } = siteSheet(demoWith({ maxC: 64 }), { units: 'metric' });
    expect(standing).toBe('designDayOnly');
    expect(grounds.join(' ')).toMatch(/Mind the season: .*past the limit/);
    expect(wayOut).toBe('');
    expect(siteSheet(demoWith({ maxC: 75 }), { units: 'metric' }).standing).toBe('within');
  });

  test('says so of the coldest night, and of a wall chosen by hand, too', () => {
    const site = demoWith({ minC: 10, maxC: 90 });
    expect(rankWalls(site).pastInColdestNight).toBe(true);
    expect(rankWalls(demoWith({ maxC: 90 })).pastInColdestNight).toBe(false);
    expect(siteSheet(site).standing).toBe('designDayOnly');
    const { name } = rankWalls(site).walls[1] ?? { name: '' };
    const chosen = siteSheet(site, { wall: name, units: 'metric' });
    expect(chosen.standing).toBe('designDayOnly');
    expect(chosen.grounds[0]).toMatch(/^Mind the cold: .* past the lower limit of 10\.0 °C\.$/);
  });
});
