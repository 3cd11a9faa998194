/**
 * A comparison whose peaks differ names a cause: every kind of difference in every climate sample, on walls and with choices
 * by turns, and the same two boxes the other way round.
 */
import { describe, expect, test } from 'vitest';
import {
  CLIMATE_NAMES,
  type Comparison,
  compareBoxes,
  DEMO_SITE,
  DIFFERENCE_KINDS,
  differenceChoices,
  parsePlainSite,
  type SiteInput,
} from '../../../model/index.ts';
import type { Pair } from '../../../model/lesson/comparison.ts';
import { ALIKE_K } from '../../../model/lesson/pair-facts.ts';
import { type Statement, statementsOf } from '../../../model/lesson/rule.ts';
import { PAIR_RULES } from '../../../model/lesson/rules-of-two.ts';
import { inClimate } from '../../../model/lesson/second-site.ts';
import { LESSON_SITE } from '../../../model/lesson/usual-site.ts';
import { shadeMemory } from '../../../model/siting/wall-shade.ts';

/** Rules that tell what else shows, and no reason why one of two boxes is the hotter one. */
const NO_CAUSE = new Set([
  'twice-the-power-is-less-than-twice-the-kelvins',
  'low-sun-gets-under-the-eave',
  'wind-cannot-cool-below-the-air',
  'more-sun-up-there',
  'dry-sky-is-colder',
  'air-swings-box-swings',
  'box-stays-above-the-air',
  'battery-lives-longer-cooler',
  'next-to-no-difference',
]);

/** What the panel shows without a fold. */
const SHOWN = 4;

const shades = shadeMemory();

const causes = (statements: readonly Statement[]): string[] =>
  statements
    .slice(0, SHOWN)
    .map(({ id }) => id)
    .filter((id) => !NO_CAUSE.has(id));

/** The same two boxes, B as A. */
const turned = (pair: Pair): Pair => ({
  ...pair,
  a: pair.b,
  b: pair.a,
  peakDifferenceK: -pair.peakDifferenceK,
});

function wantCause(pair: Comparison): void {
  const where = `${pair.a.wallName}, ${JSON.stringify(pair.difference)}, ${pair.peakDifferenceK} K`;
  const back = statementsOf(PAIR_RULES, turned(pair));
  if (Math.abs(pair.peakDifferenceK) <= ALIKE_K) return;
  expect(causes(pair.statements), where).not.toEqual([]);
  // A cause is one whichever box is looked at first, and is worded for the direction at hand.
  expect(back.map(({ id }) => id)).toEqual(pair.statements.map(({ id }) => id));
  for (const { id, text } of back) {
    const forth = pair.statements.find((one) => one.id === id);
    if (['hood-takes-the-sun', 'more-power-hotter', 'wind-cools', 'less-sun-cooler'].includes(id)) {
      expect(text.metric, id).not.toBe(forth?.text.metric);
    }
  }
}

const SITES: readonly (readonly [title: string, input: SiteInput])[] = [
  ['four plain walls', LESSON_SITE],
  ['the demo site', DEMO_SITE],
  ['four plain walls, a hooded box', { ...LESSON_SITE, box: { ...LESSON_SITE.box, hood: {} } }],
];

/** `SHADESIDE_FUZZ` above 1 tries every wall, and not one by turns. */
const EVERY_WALL = Number(process.env['SHADESIDE_FUZZ'] ?? 1) > 1;

describe.each(SITES)('%s', (_title, input) => {
  test.each(CLIMATE_NAMES)('%s', { timeout: 120_000 }, (climate) => {
    const dated = { ...input, climate: { cycle: 'mil-std-810h-a1' as const, date: '2026-06-21' } };
    const site = inClimate(parsePlainSite(dated), climate);
    let turn = CLIMATE_NAMES.indexOf(climate);
    for (const kind of DIFFERENCE_KINDS) {
      const walls = site.walls.filter((_, k) => EVERY_WALL || k === turn % site.walls.length);
      for (const { name } of walls) {
        const choices = differenceChoices(site, name, kind);
        const difference = choices[turn % choices.length];
        turn += 1;
        if (difference === undefined) continue;
        wantCause(compareBoxes({ site, wallName: name, difference, options: { shades } }));
      }
    }
  });
});

test('an eave of the same depth but nearer: what it hides of the sky', () => {
  const site = parsePlainSite({ ...DEMO_SITE, climate: { cycle: 'mil-std-810h-a1', date: '2026-06-21' } });
  const difference = { kind: 'eave', depthM: 0.9, heightAboveBoxM: 0.3 } as const;
  const pair = compareBoxes({ site, wallName: 'south', difference, options: { shades } });
  expect(Math.abs(pair.peakDifferenceK)).toBeGreaterThan(ALIKE_K);
  wantCause(pair);
});

test('east instead of west: the hour of the sun', () => {
  const site = parsePlainSite(LESSON_SITE);
  const east = compareBoxes({ site, wallName: 'west', difference: { kind: 'wall', to: 'east' }, options: { shades } });
  expect(east.statements[0]?.text.metric).toMatch(
    /^The hour of the sun decides: on the front of A .* 1\d:\d\d, on that of B at 0\d:\d\d/,
  );
});
