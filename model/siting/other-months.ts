/**
 * Whether another month is worse for a wall than the design day: an eave that hides the high sun of summer lets in the lower
 * one of spring and autumn, and a wall that faces the equator gets more of that even without.
 */
import { designMonth, resolvedClearDay } from '../climate/design-climate.ts';
import type { Site } from '../site.ts';
import { siteDay } from './design-day.ts';
import { judgeWall } from './judged-day.ts';
import { namedWall } from './named-wall.ts';
import { coldDecides, decidingMarginK } from './results.ts';
import { shadeMemory } from './wall-shade.ts';

/** The month that leaves a wall the least room to its upper limit. */
export interface WorstMonth {
  readonly wall: string;
  /** Calendar month, 1 to 12. */
  readonly month: number;
  /** Room to the upper limit on the design day of that month, K; negative past it. */
  readonly marginK: number;
  /** By how much less room that is than on the design day of the site, K, above 0. */
  readonly worseK: number;
  /** By how much cooler the air outside gets then, K; negative where it gets hotter. */
  readonly coolerAirK: number;
}

/** Months cooler than the design day by more than this are passed over: no sun makes up for it. Common practice, no source. */
const TOO_COOL_K = 20;

/**
 * Judges a wall on the design days of the months of a climate sample. A generator like `wallConfidence`. Null where no other
 * month is worse, where a cold limit decides or the limit is one on outside air, and where months are not known: for an
 * entered design day and for a standard's cycle.
 * @throws SiteError when the site has no wall of that name
 */
export function* worstMonth(site: Site, wallName: string): Generator<number, WorstMonth | null> {
  const wall = namedWall(site, wallName);
  const own = designMonth(site);
  const ownDay = resolvedClearDay(site);
  if (own === null || ownDay === null || site.limits.refersTo === 'outsideAir') return null;
  const shades = shadeMemory();
  const inMonth = (month: number): Site => ({ ...site, climate: { ...site.climate, month } });
  const judged = (month: number) => {
    const then = inMonth(month);
    return judgeWall(then, wall, siteDay(then, { shades }));
  };
  const now = judged(own);
  if (coldDecides(now)) return null;
  let worst: WorstMonth | null = null;
  for (let month = 1; month <= 12; month++) {
    yield month / 12;
    const air = resolvedClearDay(inMonth(month));
    if (month === own || air === null || air.maxC < ownDay.maxC - TOO_COOL_K) continue;
    const { marginK } = judged(month);
    const worseK = decidingMarginK(now) - marginK;
    if (worseK > (worst?.worseK ?? 0)) {
      worst = { wall: wall.name, month, marginK, worseK, coolerAirK: ownDay.maxC - air.maxC };
    }
  }
  return worst;
}
