/** Which wall to use: the coolest of those that the constraints permit. */
import type { Site, Wall } from '../site.ts';
import { type UnitSystem, usualUnits } from '../units.ts';
import { assumptionsOf } from './assumptions.ts';
import { type SiteDay, siteDay } from './design-day.ts';
import { evaluateWall } from './evaluate-day.ts';
import {
  compareDays,
  type DayResult,
  type DaySummary,
  decidingMarginK,
  type JudgedDay,
  type Ranking,
  type RankOptions,
  type WallDay,
} from './results.ts';
import { isPermitted, sitingFindings } from './siting-checks.ts';
import { verdictOn } from './verdict-words.ts';
import { type Candidate, reasonFor } from './wording.ts';

/**
 * Ranks the walls of a site on its design day: permitted walls before others, then walls that stay above the lower limit
 * before others, then by the room left to the upper limit, then by the peak inside temperature.
 */
export function rankWalls(site: Site, options: RankOptions = {}): Ranking {
  return rankedDays(site, options).ranking;
}

/** A ranking with the days that it compares. */
export interface RankedDays {
  readonly ranking: Ranking;
  /** By the name of the wall. */
  readonly days: ReadonlyMap<string, DayResult>;
  /** The design day that they share, for what else is asked of it. */
  readonly onDay: SiteDay;
}

/** Ranks the walls as `rankWalls` does, and hands back their days too. */
export function rankedDays(site: Site, options: RankOptions = {}): RankedDays {
  const units = options.units ?? usualUnits(site.place.timeZone);
  const day = siteDay(site, options);
  const candidates = rankedCandidates(site, day, { units, rules: options.rules }, evaluateWall);
  const best = candidates.find(({ feasible }) => feasible) ?? null;
  const context = { candidates, best, site, civil: day.civil, units };
  const assumptions = assumptionsOf(site, day.climate, units);
  const { decision, grounds, pastInColdestNight } = verdictOn(context);
  const ranking: Ranking = {
    walls: candidates.map((candidate, index) => ({
      rank: index + 1,
      name: candidate.wall.name,
      azimuthDeg: candidate.wall.azimuthDeg,
      feasible: candidate.feasible,
      day: summaryOf(candidate.day),
      findings: candidate.findings,
      reason: reasonFor(candidate, context),
    })),
    best: best?.wall.name ?? null,
    withinLimits: best !== null && decidingMarginK(best.day) >= 0,
    pastInColdestNight,
    decision,
    grounds,
    verdict: [decision, ...grounds].join(' '),
    timeZone: day.civil.timeZone,
    date: day.civil.date,
    assumptions,
  };
  return {
    ranking,
    days: new Map(candidates.map((candidate) => [candidate.wall.name, { ...candidate.day, assumptions }])),
    onDay: day,
  };
}

/** The walls of a site on a day that was worked out before, best first, by whatever `evaluate` makes of their days. */
export function rankedCandidates<Day extends JudgedDay>(
  site: Site,
  day: SiteDay,
  { units, rules }: { units: UnitSystem; rules?: RankOptions['rules'] },
  evaluate: (site: Site, wall: Wall, day: SiteDay) => Day,
): Candidate<Day>[] {
  return site.walls
    .map((wall): Candidate<Day> => {
      const findings = sitingFindings(site, wall, { units, day, rules });
      const feasible = isPermitted(findings);
      return { wall, findings, feasible, day: evaluate(site, wall, day) };
    })
    .sort(betterFirst);
}

function betterFirst(a: Candidate<JudgedDay>, b: Candidate<JudgedDay>): number {
  if (a.feasible !== b.feasible) return a.feasible ? -1 : 1;
  return compareDays(a.day, b.day);
}

function summaryOf(day: WallDay): DaySummary {
  const { peakInsideAirC, peakAtUtc, peakElectronicsC, peakOutsideAirC, lowestInsideAirC } = day;
  const { marginK, coldMarginK, hoursOverLimit, sunHours, energyClosure } = day;
  return {
    peakInsideAirC,
    peakAtUtc,
    peakElectronicsC,
    peakOutsideAirC,
    lowestInsideAirC,
    marginK,
    coldMarginK,
    hoursOverLimit,
    sunHours,
    energyClosure,
  };
}
