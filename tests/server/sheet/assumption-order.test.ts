import { expect, test } from 'vitest';
import { DEMO_SITE, evaluateDay, parseSite } from '../../../model/index.ts';
import { byWeight } from '../../../server/sheet/assumption-order.ts';
import { SMALL_SITE } from '../sites.ts';

const subjectsOf = (input: typeof DEMO_SITE) => {
  const site = parseSite(input);
  return byWeight(evaluateDay(site, site.walls[0]?.name ?? '').assumptions).map(({ subject }) => subject);
};

test.each([DEMO_SITE, SMALL_SITE])(
  'climate, weather, wind and surroundings come first, bookkeeping not at all',
  (input) => {
    const subjects = subjectsOf(input);
    expect(subjects[0]).toBe('climate');
    for (const weighty of ['weather', 'wind', 'surroundings']) expect(subjects.indexOf(weighty)).toBeLessThan(10);
    expect(subjects.indexOf('surroundings')).toBeLessThan(subjects.indexOf('box'));
    expect(subjects.filter((subject) => /^constraints|edge$|timeZone/.test(subject))).toEqual([]);
  },
);

test('nothing else is left out, and nothing comes twice', () => {
  const site = parseSite(SMALL_SITE);
  const all = evaluateDay(site, site.walls[0]?.name ?? '').assumptions;
  const kept = byWeight(all);
  expect(new Set(kept).size).toBe(kept.length);
  expect(all.filter((one) => !kept.includes(one)).map(({ subject }) => subject)).toEqual(
    all.map(({ subject }) => subject).filter((subject) => /^constraints|edge$|timeZone|material/.test(subject)),
  );
});
