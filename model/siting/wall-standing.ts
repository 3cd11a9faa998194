/** How a wall stands to its limits and checks: on the design day, and past it where that is known. */
import type { WorstMonth } from './other-months.ts';
import { decidingMarginK, type RankedWall } from './results.ts';

export type WallStanding =
  | 'within'
  /** Within the limits on the design day, past one of them in another month or in the coldest night. */
  | 'designDayOnly'
  | 'beyond'
  | 'barred';

/** What is known of the wall beyond its design day. */
export interface BeyondDesignDay {
  /** Null where no other month is worse, and where months are not known, or not yet. */
  readonly month: WorstMonth | null;
  readonly pastInColdestNight: boolean;
}

export function wallStanding(
  { feasible, day }: Pick<RankedWall, 'feasible' | 'day'>,
  { month, pastInColdestNight }: BeyondDesignDay,
): WallStanding {
  if (!feasible) return 'barred';
  if (decidingMarginK(day) < 0) return 'beyond';
  return pastInColdestNight || pastInMonth(month) ? 'designDayOnly' : 'within';
}

/** Whether a month that is worse than that of the design day is past the upper limit. */
export const pastInMonth = (month: WorstMonth | null): boolean => month !== null && month.marginK < 0;
