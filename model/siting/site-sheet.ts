/** What stands on the sheet that an installer takes to the wall and signs: the decision and all that it rests on, as data. */
import type { Site } from '../site.ts';
import { finished } from '../steps.ts';
import { type UnitSystem, usualUnits } from '../units.ts';
import { namedWall } from './named-wall.ts';
import { worstMonth } from './other-months.ts';
import { rankedDays } from './rank-walls.ts';
import { type RemedyList, remediesFor } from './remedies.ts';
import type { DayResult, RankedWall, Ranking, RankOptions } from './results.ts';
import { cautionsAt, type SiteCautions } from './site-cautions.ts';
import { type SitePlan, sitePlan } from './site-plan.ts';
import { type SunDiagram, sunDiagram } from './sun-diagram.ts';
import { chosenSentence, coldNightSentence, leastEffortWords, monthSentence, wayOutSentence } from './verdict-words.ts';
import { type WallStanding, wallStanding } from './wall-standing.ts';

/** A wall in the table of a sheet. */
export type SheetWall = Pick<RankedWall, 'rank' | 'name' | 'azimuthDeg' | 'feasible' | 'day'>;

export interface SiteSheet {
  readonly title: string;
  readonly place: Site['place'];
  readonly limits: Site['limits'];
  readonly units: UnitSystem;
  readonly date: string;
  readonly timeZone: string;
  /** The wall that the sheet is about. */
  readonly wall: RankedWall;
  /** Whether somebody chose it against the ranking. */
  readonly chosenByHand: boolean;
  readonly standing: WallStanding;
  /** The decision in a sentence. */
  readonly decision: string;
  /** What goes with it, a sentence or two each: the next best wall, cooler ones that are out, checks to be done. */
  readonly grounds: readonly string[];
  /** The least that makes the wall do, simulated, or that nothing does; empty where the wall does as it stands. */
  readonly wayOut: string;
  /** Walls that a hard check bars, with what they fail. */
  readonly out: readonly { readonly name: string; readonly why: string }[];
  readonly walls: readonly SheetWall[];
  readonly day: DayResult;
  readonly diagram: SunDiagram;
  readonly plan: SitePlan;
  readonly checks: RankedWall['findings'];
  readonly assumptions: Ranking['assumptions'];
  readonly cautions: SiteCautions;
}

export interface SheetOptions extends Pick<RankOptions, 'units' | 'rules'> {
  /** The wall that the sheet is about; the first of the ranking where left out. */
  readonly wall?: string;
}

/**
 * The content of a site sheet.
 * @throws SiteError when the site has no wall of that name
 */
export function siteSheet(site: Site, options: SheetOptions = {}): SiteSheet {
  const { rules } = options;
  const units = options.units ?? usualUnits(site.place.timeZone);
  if (options.wall !== undefined) namedWall(site, options.wall);
  const { ranking, days, onDay } = rankedDays(site, { units, ...(rules && { rules }) });
  const { walls } = ranking;
  const wall = walls.find(({ name }) => name === options.wall) ?? walls[0];
  const day = days.get(wall?.name ?? '');
  if (wall === undefined || day === undefined) throw new RangeError('the site has no wall');
  const chosenByHand = wall !== walls[0];
  const month = wall.feasible ? finished(worstMonth(site, wall.name)) : null;
  const coldNight = chosenByHand && wall.feasible ? coldNightSentence(site, wall, units) : '';
  const standing = wallStanding(wall, {
    month,
    pastInColdestNight: chosenByHand ? coldNight !== '' : ranking.pastInColdestNight,
  });
  return {
    title: site.title,
    place: site.place,
    limits: site.limits,
    units,
    date: ranking.date,
    timeZone: ranking.timeZone,
    wall,
    chosenByHand,
    standing,
    decision: chosenByHand ? chosenSentence(site, wall, units) : ranking.decision,
    grounds: [
      ...(chosenByHand ? [coldNight, `The ranking says: ${ranking.decision}`] : ranking.grounds),
      monthSentence(site, month, units),
    ].filter((sentence) => sentence !== ''),
    wayOut:
      standing === 'within' || standing === 'designDayOnly'
        ? ''
        : wayOut(site, { ranking, wall, chosenByHand }, { units, rules }),
    out: walls.filter(({ feasible }) => !feasible).map(({ name, findings }) => ({ name, why: barredBy(findings) })),
    walls: walls.map(({ rank, name, azimuthDeg, feasible, day: summary }) => ({
      rank,
      name,
      azimuthDeg,
      feasible,
      day: summary,
    })),
    day,
    diagram: sunDiagram(site, wall.name),
    plan: sitePlan(site, wall.name),
    checks: wall.findings,
    assumptions: ranking.assumptions,
    cautions: cautionsAt(site, day, units, onDay),
  };
}

function barredBy(findings: RankedWall['findings']): string {
  return findings
    .filter(({ status, hard }) => status === 'fail' && hard)
    .map(({ text }) => text)
    .join('; ');
}

/** What the ranking says of its first wall; of a wall chosen by hand the least that suffices, or that nothing does. */
function wayOut(
  site: Site,
  { ranking, wall, chosenByHand }: { ranking: Ranking; wall: RankedWall; chosenByHand: boolean },
  { units, rules }: { units: UnitSystem; rules: SheetOptions['rules'] },
): string {
  const list: RemedyList = remediesFor(site, wall.name, { units, ...(rules && { rules }) });
  if (!chosenByHand) return wayOutSentence(site, ranking, list, units);
  if (list.least === null) return `Nothing that was tried on wall "${wall.name}", alone or two together, suffices.`;
  return `What suffices on it ${leastEffortWords(list)}: ${list.least.text}.`;
}
