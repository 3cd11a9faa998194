/** What could be done about a hot wall: each remedy simulated alone, and the best two together. */
import type { Site } from '../site.ts';
import { finished } from '../steps.ts';
import { type UnitSystem, usualUnits } from '../units.ts';
import { siteDay } from './design-day.ts';
import { evaluateWall } from './evaluate-day.ts';
import { namedWall } from './named-wall.ts';
import { type Change, changed, changesFor, type Effort, effortOf, effortOrder, possible } from './remedy-changes.ts';
import { coldDecides, coldDecidesWith, type DaySummary, decidingMarginK, marginWithK } from './results.ts';
import { isPermitted, sitingFindings } from './siting-checks.ts';
import type { SitingRules } from './siting-rules.ts';

export interface RemedyOptions {
  /** Units of the sentences; the usual ones of the place when left out. */
  readonly units?: UnitSystem | undefined;
  /** Thresholds of the siting checks; the usual ones where left out. */
  readonly rules?: SitingRules | undefined;
}

export interface Remedy {
  readonly id: string;
  /** What is done, in words; of two together both. */
  readonly text: string;
  readonly effort: Effort;
  readonly peakInsideAirC: number;
  /** Room to the upper limit, K; to the nearer one where the wall as it stands passes the lower one. Negative past it. */
  readonly marginK: number;
  /** Whether that margin is the one to the lower limit. */
  readonly coldDecides: boolean;
  /** Kelvins by which the margin grows, or the air inside cools where the limit is one on outside air; negative for worse. */
  readonly gainK: number;
  /** Whether the box stays within its limits with it. */
  readonly withinLimits: boolean;
  /** Whether the hard constraints still hold. */
  readonly permitted: boolean;
  /** What to mind with it; empty where there is nothing. */
  readonly caution: string;
}

export interface RemedyList {
  readonly wall: string;
  /** As it stands. */
  readonly peakInsideAirC: number;
  readonly marginK: number;
  /** Whether that margin is the one to the lower limit. */
  readonly coldDecides: boolean;
  /** Largest gain first, what makes it worse last. */
  readonly remedies: Remedy[];
  /** The two that gain most together, where that is more than one alone; null otherwise. */
  readonly bestPair: Remedy | null;
  /**
   * The least effort that makes the wall permitted and keeps it inside its limits: one alone before two together, openings in
   * the box last. Null where none does, and where none is needed.
   */
  readonly least: Remedy | null;
  /** Whether openings in the box would suffice with less effort than that, and were passed over. */
  readonly openingsPassedOver: boolean;
  readonly assumption: string;
}

const EFFORT_ASSUMPTION =
  'Hours and parts are orders of magnitude, common practice, no source. Each remedy is simulated on the same day with everything else as entered.';

/** Share of the work before the pairs; there are about as many of them again, and more. */
const ALONE_SHARE = 0.3;

/** What gains less than this is not worth combining, K. */
const LEAST_GAIN_K = 0.1;

/**
 * Simulates every remedy for a wall and the best pair of them.
 * @throws SiteError when the site has no wall of that name
 */
export function remediesFor(site: Site, wallName: string, options: RemedyOptions = {}): RemedyList {
  return finished(remedySteps(site, wallName, options));
}

/** The same one simulation at a time: yields the share done, so that a caller can show progress and stop. */
export function* remedySteps(
  site: Site,
  wallName: string,
  { units, rules }: RemedyOptions = {},
): Generator<number, RemedyList> {
  const wall = namedWall(site, wallName);
  const system = units ?? usualUnits(site.place.timeZone);
  const day = siteDay(site);
  const now = evaluateWall(site, wall, day);
  // Outside air is the same whatever is done: then it is the air inside that counts, as in the ranking.
  const roomOf = (summary: DaySummary): number =>
    site.limits.refersTo === 'outsideAir' ? -summary.peakInsideAirC : marginWithK(now, summary);
  const tried = (changes: readonly Change[]): Remedy => {
    const after = changed({ site, wall }, changes);
    const summary: DaySummary = evaluateWall(after.site, after.wall, day);
    const findings = sitingFindings(after.site, after.wall, { units: system, day, rules });
    return {
      id: changes.map(({ id }) => id).join('+'),
      text: changes.map(({ text }) => text).join('; '),
      effort: effortOf(changes),
      peakInsideAirC: summary.peakInsideAirC,
      marginK: marginWithK(now, summary),
      coldDecides: coldDecidesWith(now, summary),
      gainK: roomOf(summary) - roomOf(now),
      withinLimits: decidingMarginK(summary) >= 0,
      permitted: isPermitted(findings),
      caution: [...new Set(changes.flatMap(({ caution }) => caution ?? []))].join(' '),
    };
  };

  const changes = changesFor(site, wall, system).filter((change) => possible(changed({ site, wall }, [change])));
  const alone: { change: Change; remedy: Remedy }[] = [];
  for (const change of changes) {
    alone.push({ change, remedy: tried([change]) });
    yield (ALONE_SHARE * alone.length) / changes.length;
  }
  // What heals a failed constraint goes into pairs whatever it gains by itself.
  const standsPermitted = isPermitted(sitingFindings(site, wall, { units: system, day, rules }));
  const useful = alone.filter(({ remedy }) => remedy.gainK > LEAST_GAIN_K || (!standsPermitted && remedy.permitted));
  const couples = useful.flatMap(({ change: a }, k) =>
    useful
      .slice(k + 1)
      .map(({ change: b }) => [a, b] as const)
      .filter((couple) => a.part !== couple[1].part && possible(changed({ site, wall }, couple))),
  );
  const pairs: Tried[] = [];
  for (const couple of couples) {
    pairs.push({ changes: couple, remedy: tried(couple) });
    yield ALONE_SHARE + ((1 - ALONE_SHARE) * pairs.length) / couples.length;
  }
  const best = (remedies: readonly Remedy[]): Remedy | null =>
    remedies
      .filter(({ permitted }) => permitted)
      .reduce<Remedy | null>((found, one) => (found === null || one.gainK > found.gainK ? one : found), null);
  const [bestAlone, bestPair] = [best(alone.map(({ remedy }) => remedy)), best(pairs.map(({ remedy }) => remedy))];
  const isEnough = standsPermitted && decidingMarginK(now) >= 0;
  const single = alone.map(({ change, remedy }) => ({ changes: [change], remedy }));
  return {
    wall: wall.name,
    peakInsideAirC: now.peakInsideAirC,
    marginK: decidingMarginK(now),
    coldDecides: coldDecides(now),
    remedies: alone.map(({ remedy }) => remedy).sort((a, b) => b.gainK - a.gainK),
    bestPair: bestPair !== null && bestPair.gainK > Math.max(0, bestAlone?.gainK ?? 0) ? bestPair : null,
    ...(isEnough ? { least: null, openingsPassedOver: false } : leastEffort(single, pairs)),
    assumption: EFFORT_ASSUMPTION,
  };
}

interface Tried {
  readonly changes: readonly Change[];
  readonly remedy: Remedy;
}

/**
 * Of what suffices the least effort, and of equal ones the one with the most room; alone before together. Openings only
 * where nothing else suffices: whether the box's maker provides for them is not known.
 */
function leastEffort(
  single: readonly Tried[],
  pairs: readonly Tried[],
): Pick<RemedyList, 'least' | 'openingsPassedOver'> {
  const closed = ({ changes }: Tried) => changes.every(({ part }) => part !== 'vents');
  const enough = ({ remedy }: Tried) => remedy.permitted && remedy.withinLimits;
  const groups = [single.filter(closed), pairs.filter(closed), single, pairs];
  const sufficing = groups.map((group) => group.filter(enough)).find(({ length }) => length > 0) ?? [];
  const byEffort = (a: Tried, b: Tried) => effortOrder(a.changes, b.changes);
  const [least] = [...sufficing].sort((a, b) => byEffort(a, b) || b.remedy.marginK - a.remedy.marginK);
  if (least === undefined) return { least: null, openingsPassedOver: false };
  const isLess = (one: Tried) => one.changes.length < least.changes.length || byEffort(one, least) < 0;
  const opened = [...single, ...pairs].filter((one) => enough(one) && !closed(one));
  const openingsPassedOver = closed(least) && opened.some(isLess);
  return { least: least.remedy, openingsPassedOver };
}
