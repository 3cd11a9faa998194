import { describe, expect, test } from 'vitest';
import { DEMO_SITE, evaluateDay, finished, monthSentence, parseSite, worstMonth } from '../../../model/index.ts';
import { siteWith, wallFacing } from '../sites.ts';

const demo = parseSite(DEMO_SITE);
const worstOf = (site: ReturnType<typeof parseSite>, wall: string) => finished(worstMonth(site, wall));

describe('the worst month', () => {
  test('of a wall under an eave is one with a lower sun than July, as its own design day says', () => {
    const worst = worstOf(demo, 'south');
    if (worst === null) throw new Error('no month');
    expect([3, 4, 9, 10]).toContain(worst.month);
    const of = (month: number) => evaluateDay({ ...demo, climate: { ...demo.climate, month } }, 'south');
    expect(worst.marginK).toBe(of(worst.month).marginK);
    expect(worst.worseK).toBeCloseTo(evaluateDay(demo, 'south').marginK - worst.marginK, 9);
    expect(worst.coolerAirK).toBeGreaterThan(0);
    expect(of(worst.month).sunHours).toBeGreaterThan(evaluateDay(demo, 'south').sunHours);
    for (let month = 1; month <= 12; month++) expect(of(month).marginK).toBeGreaterThanOrEqual(worst.marginK);
  });

  test('of a west wall is the hottest one', () => {
    expect(worstOf(demo, 'west')).toBeNull();
  });

  test('south of the equator is half a year away for the wall that faces it', () => {
    const [, , south] = DEMO_SITE.walls;
    const eave = south?.eave;
    const base = { climate: { sample: 'dry-basin' }, box: { solarAbsorptance: 0.8 } };
    const northern = siteWith({ ...base, place: { latitudeDeg: 33 }, walls: wallFacing(180, { eave }) });
    const southern = siteWith({ ...base, place: { latitudeDeg: -33 }, walls: wallFacing(0, { eave }) });
    const [one, other] = [worstOf(northern, 'wall'), worstOf(southern, 'wall')];
    expect(one?.month).toBe(10);
    expect(other?.month).toBe(4);
  });

  test('is not known where months are not, nor asked where the sun is no matter', () => {
    const designDay = { date: '2026-07-05', maxC: 46, dailyRangeK: 14 };
    const walls = wallFacing(180);
    expect(worstOf(siteWith({ climate: { designDay }, walls }), 'wall')).toBeNull();
    expect(worstOf(siteWith({ climate: { cycle: 'mil-std-810h-a1' }, walls }), 'wall')).toBeNull();
    const outside = { maxC: 50, refersTo: 'outsideAir' } as const;
    expect(worstOf(siteWith({ climate: { sample: 'dry-basin' }, walls, limits: outside }), 'wall')).toBeNull();
  });
});

test('the sentence names month, temperature and room, and is left out where months differ by next to nothing', () => {
  const worst = { wall: 'south', month: 10, marginK: -0.2, worseK: 2.6, coolerAirK: 9 };
  expect(monthSentence(demo, worst, 'metric')).toBe(
    'Mind the season: on a clear day in October the air inside on wall "south" reaches 65.2 °C, although the air outside is cooler, 0.2 K past the limit.'.replaceAll(
      ' ',
      ' ',
    ),
  );
  expect(monthSentence(demo, { ...worst, marginK: 1.2, coolerAirK: -1 }, 'us')).toMatch(
    /^The season: .*reaches 147 °F, 2 °F inside the limit\.$/,
  );
  expect(monthSentence(demo, worst, 'us')).toMatch(
    /reaches 149 °F, although the air outside is cooler, just past the limit\.$/,
  );
  expect(monthSentence(demo, { ...worst, marginK: 0.1, worseK: 0.3 }, 'metric')).toBe('');
  // Next to nothing, too, is told where it crosses the limit.
  expect(monthSentence(demo, { ...worst, worseK: 0.3 }, 'metric')).toMatch(/^Mind the season/);
  expect(monthSentence(demo, { ...worst, worseK: 0.1 }, 'metric')).toBe('');
  expect(monthSentence(demo, null, 'metric')).toBe('');
});
