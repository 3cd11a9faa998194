/** Answers that choose: yes or no, one box or the other, one remedy or the other. */
import type { PlayedDay } from '../siting/played-day.ts';
import { type Found, ofEither, ofTwo, peakText } from './answer.ts';
import { bothUnits, hotterBy, kelvins } from './both-units.ts';
import type { Comparison } from './comparison.ts';
import { insideSwingK } from './day-facts.ts';
import { ALIKE_K } from './pair-facts.ts';
import { statementsOf } from './rule.ts';
import { PAIR_RULES } from './rules-of-two.ts';

/** A margin smaller than this counts as near, K. */
const NEAR_LIMIT_K = 1;

export function overLimit({ played, pair }: { played: PlayedDay; pair: Comparison | null }): Found {
  const { marginK } = played.result;
  const [right, other] = marginK < 0 ? ['yes', 'no'] : ['no', 'yes'];
  return {
    ...ofEither(played, pair),
    target: {
      type: 'choice',
      right: [right as string],
      near: Math.abs(marginK) < NEAR_LIMIT_K ? [other as string] : [],
    },
    computed: bothUnits((units) =>
      marginK < 0 ? `Yes, by ${kelvins(marginK, units)}.` : `No, ${kelvins(marginK, units)} are left.`,
    ),
    nearMeans: bothUnits((units) => `within ${kelvins(NEAR_LIMIT_K, units)} of the limit either answer counts as near`),
  };
}

/** @param apartK how much more B has of what was asked for, K */
export function betweenTwo(pair: Comparison, apartK: number, swing = false): Found {
  const right = Math.abs(apartK) <= ALIKE_K ? 'alike' : apartK > 0 ? 'b' : 'a';
  const near = right === 'alike' ? [] : Math.abs(apartK) <= 2 * ALIKE_K ? ['alike'] : [];
  const text = (played: PlayedDay, units: 'metric' | 'us'): string =>
    swing ? kelvins(insideSwingK(played), units) : peakText(played)[units];
  return {
    ...ofTwo(pair),
    figures: [pair.a, pair.b].map(({ label, played }) => ({ label, text: bothUnits((units) => text(played, units)) })),
    target: { type: 'choice', right: [right], near },
    computed: bothUnits(
      (units) =>
        `${pair.a.label[units]}: ${text(pair.a.played, units)}; ${pair.b.label[units]}: ${text(pair.b.played, units)}`,
    ),
    nearMeans: bothUnits((units) => `less than ${kelvins(ALIKE_K, units)} apart counts as about the same`),
  };
}

export function betterRemedy(first: Comparison, second: Comparison): Found {
  const apartK = first.peakDifferenceK - second.peakDifferenceK;
  const right = Math.abs(apartK) <= ALIKE_K ? 'alike' : apartK < 0 ? 'first' : 'second';
  const near = right !== 'alike' && Math.abs(apartK) <= 2 * ALIKE_K ? ['alike'] : [];
  const figures = [
    { label: first.a.label, text: peakText(first.a.played) },
    { label: first.title, text: peakText(first.b.played) },
    { label: second.title, text: peakText(second.b.played) },
  ];
  const seen = new Set<string>();
  const statements = [first, second]
    .flatMap((pair) => statementsOf(PAIR_RULES, pair))
    .filter(({ id }) => !seen.has(id) && seen.add(id));
  return {
    target: { type: 'choice', right: [right], near },
    computed: bothUnits(
      (units) =>
        `${first.title[units]}: ${hotterBy(first.peakDifferenceK, units)}; ${second.title[units]}: ${hotterBy(second.peakDifferenceK, units)}`,
    ),
    nearMeans: bothUnits((units) => `less than ${kelvins(ALIKE_K, units)} apart counts as about the same`),
    figures,
    statements,
    days: [
      { label: first.a.label, played: first.a.played },
      { label: first.title, played: first.b.played },
      { label: second.title, played: second.b.played },
    ],
  };
}
