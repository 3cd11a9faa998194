/** What stands on the sheet that an installer takes to the wall and signs: the decision and all that it rests on, as data. */
import type { Site } from '../site.ts';
import { finished } from '../steps.ts';
import { type UnitSystem, usualUnits } from '../units.ts';
import { namedWall } from './named-wall.ts';
import { worstMonth } from './other-months.ts';
import { rankedDays } from './rank-walls.ts';
import { type RemedyList, remediesFor } from './remedies.ts';
import { type DayResult, decidingMarginK, type RankedWall, type Ranking, type RankOptions } from './results.ts';
import { cautionsAt, type SiteCautions } from './site-cautions.ts';
import { type SitePlan, sitePlan } from './site-plan.ts';
import { type SunDiagram, sunDiagram } from './sun-diagram.ts';
import { chosenSentence, monthSentence, wayOutSentence } from './verdict-words.ts';

/** How the wall of a sheet stands to its limits and checks. */
export type SheetStanding = 'within' | 'beyond' | 'barred';

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
  readonly standing: SheetStanding;
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
  const standing = standingOf(wall);
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
      ...(chosenByHand ? [`The ranking says: ${ranking.decision}`] : ranking.grounds),
      ...season(site, wall, units),
    ],
    wayOut: standing === 'within' ? '' : wayOut(site, { ranking, wall, chosenByHand }, { units, rules }),
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

function standingOf({ feasible, day }: RankedWall): SheetStanding {
  if (!feasible) return 'barred';
  return decidingMarginK(day) >= 0 ? 'within' : 'beyond';
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
  return `What suffices on it with the least effort: ${list.least.text}.`;
}

/** Whether another month is worse for the wall than that of the design day. */
function season(site: Site, { name, feasible }: RankedWall, units: UnitSystem): string[] {
  if (!feasible) return [];
  const sentence = monthSentence(site, finished(worstMonth(site, name)), units);
  return sentence === '' ? [] : [sentence];
}
