/** What may be said of two boxes that differ in one thing: the causes first, then what shows in every pair. */
import { kelvins } from './both-units.ts';
import type { Pair } from './comparison.ts';
import { batteryHalvingText } from './day-ageing.ts';
import { ALIKE_K, apart, leastExcessK, powerW } from './pair-facts.ts';
import type { Rule } from './rule.ts';
import { SURFACE_RULES } from './rules-of-surfaces.ts';
import { AIR_RULES } from './rules-of-the-air.ts';

const GENERAL_RULES: readonly Rule<Pair>[] = [
  {
    id: 'box-stays-above-the-air',
    condition: 'both boxes give off heat, and in both the air inside is above that outside at every step',
    where: 'here',
    holds: ({ a, b }) => powerW(a) > 0 && powerW(b) > 0 && leastExcessK(a.played) > 0 && leastExcessK(b.played) > 0,
    text: ({ a, b }, units) =>
      `On this day neither box ever gets as cool as the air: A stays ${kelvins(leastExcessK(a.played), units)} above it at least, B ${kelvins(leastExcessK(b.played), units)}.`,
  },
  {
    id: 'battery-lives-longer-cooler',
    condition: 'in one box a battery lasts longer by a tenth or more',
    where: 'everywhere',
    holds: ({ a, b }) => batteryRatio(a, b) >= 1.1,
    text: ({ a, b }, units) => {
      const longer = b.ageing.batteryYears > a.ageing.batteryYears ? 'B' : 'A';
      return `A battery halves its life for each ${batteryHalvingText(units)} above what its maker gives its life for (common practice, no source): in ${longer} it would last ${batteryRatio(a, b).toFixed(1)} times as long.`;
    },
  },
  {
    id: 'next-to-no-difference',
    condition: `the peaks lie within ${ALIKE_K} K`,
    where: 'here',
    holds: (pair) => !apart(pair),
    text: ({ a, b }, units) =>
      `Here it makes next to no difference: ${a.label[units]} and ${b.label[units]} peak within ${kelvins(ALIKE_K, units)} of each other.`,
  },
];

export const PAIR_RULES: readonly Rule<Pair>[] = [...SURFACE_RULES, ...AIR_RULES, ...GENERAL_RULES];

function batteryRatio(a: Pair['a'], b: Pair['a']): number {
  const [one, other] = [a.ageing.batteryYears, b.ageing.batteryYears];
  return Math.max(one, other) / Math.min(one, other);
}
