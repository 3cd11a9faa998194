/** What two boxes side by side come to. */
import type { PlayedDay } from '../siting/played-day.ts';
import type { BothUnits } from './both-units.ts';
import type { DayAgeing } from './day-ageing.ts';
import type { Difference } from './difference.ts';
import type { Statement } from './rule.ts';
import type { Standing } from './second-site.ts';

/** One of the two boxes. */
export interface BoxDay extends Standing {
  readonly label: BothUnits;
  readonly played: PlayedDay;
  readonly ageing: DayAgeing;
}

export interface Comparison {
  readonly difference: Difference;
  /** What B has that A has not, in a few words. */
  readonly title: BothUnits;
  readonly a: BoxDay;
  readonly b: BoxDay;
  /** The difference in words: kelvins at the peak, hours over the limit, wear and years of a battery. */
  readonly summary: BothUnits;
  /** Peak of the air inside B minus that inside A, K. */
  readonly peakDifferenceK: number;
  /** Room to the upper limit in B minus that in A, K. */
  readonly marginDifferenceK: number;
  readonly hoursOverDifference: number;
  /** How much faster the electronics in B age than those in A on such a day; below 1 for slower. */
  readonly ageingFactor: number;
  /** What else moves with the difference, and what is kept. */
  readonly notes: readonly BothUnits[];
  /** The physics that shows in it. */
  readonly statements: readonly Statement[];
}

/** What statements are made of. */
export type Pair = Omit<Comparison, 'statements'>;
