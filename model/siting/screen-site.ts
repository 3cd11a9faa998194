/** One address of a screening: its walls as the ranking judges them, and the least that keeps the box inside its limits. */
import type { Site } from '../site.ts';
import { type UnitSystem, usualUnits } from '../units.ts';
import { type SiteDay, siteDay } from './design-day.ts';
import { judgeWall } from './judged-day.ts';
import { type KitName, kitOfRemedy, WIDE_RANGE_K } from './kit-classes.ts';
import { rankedCandidates } from './rank-walls.ts';
import { type Change, changed, changesFor, effortOrder, possible, type Standing } from './remedy-changes.ts';
import { coldDecides, type DayOptions, decidingMarginK, type JudgedDay, marginWithK } from './results.ts';
import { isPermitted, sitingFindings } from './siting-checks.ts';

export interface ScreenedWall {
  readonly name: string;
  readonly azimuthDeg: number;
  readonly peakInsideAirC: number;
  /** Room to the limit that decides, K; negative past it. */
  readonly marginK: number;
}

/** The first remedy, in order of effort, that suffices on the best wall. */
export interface SufficientRemedy {
  readonly id: string;
  readonly text: string;
  readonly marginK: number;
}

export interface ScreenedSite {
  /** In the order in which the site lists them. */
  readonly walls: readonly ScreenedWall[];
  /** The wall that the ranking puts first; null where none is permitted. */
  readonly best: ScreenedWall | null;
  /** Share of the walls that are permitted and keep the box inside its limits, 0 to 1. */
  readonly insideShare: number;
  /** Null where none is needed and where none suffices; `kit` tells which. */
  readonly remedy: SufficientRemedy | null;
  readonly kit: KitName;
}

/** Two remedies are tried together only where what they gain alone adds up to this share of what is missing. */
const WORTH_PAIRING = 0.8;

/** Screens a site on its design day. The walls are those of `rankWalls`, figure by figure. */
export function screenSite(site: Site, options: DayOptions = {}): ScreenedSite {
  const units = options.units ?? usualUnits(site.place.timeZone);
  const day = siteDay(site, options);
  const candidates = rankedCandidates(site, day, { units }, judgeWall);
  const first = candidates.find(({ feasible }) => feasible);
  const screened = ({ wall, day: result }: (typeof candidates)[number]): ScreenedWall => ({
    name: wall.name,
    azimuthDeg: wall.azimuthDeg,
    peakInsideAirC: result.peakInsideAirC,
    marginK: decidingMarginK(result),
  });
  const inside = candidates.filter((one) => one.feasible && decidingMarginK(one.day) >= 0);
  const common = {
    walls: site.walls.flatMap(({ name }) => candidates.filter(({ wall }) => wall.name === name).map(screened)),
    best: first ? screened(first) : null,
    insideShare: inside.length / site.walls.length,
  };
  if (first === undefined) return { ...common, remedy: null, kit: 'no wall' };
  const marginK = decidingMarginK(first.day);
  if (marginK >= 0) return { ...common, remedy: null, kit: 'standard' };
  const found = leastRemedy({ site, wall: first.wall }, { day, units, now: first.day });
  if (found !== null) return { ...common, ...found };
  const wide = !coldDecides(first.day) && marginK + WIDE_RANGE_K >= 0;
  return { ...common, remedy: null, kit: wide ? 'wide range' : 'no wall' };
}

/** The first single remedy that suffices, else the first pair; both in order of effort. */
function leastRemedy(
  standing: Standing,
  { day, units, now }: { day: SiteDay; units: UnitSystem; now: JudgedDay },
): { remedy: SufficientRemedy; kit: KitName } | null {
  const marginK = decidingMarginK(now);
  const tried = (changes: readonly Change[]) => {
    const after = changed(standing, changes);
    const permitted = isPermitted(sitingFindings(after.site, after.wall, { units, day }));
    const reached = marginWithK(now, judgeWall(after.site, after.wall, day));
    const id = changes.map((change) => change.id).join('+');
    const text = changes.map((change) => change.text).join('; ');
    return { changes, permitted, gainK: reached - marginK, remedy: { id, text, marginK: reached } };
  };
  const suffices = ({ permitted, remedy }: ReturnType<typeof tried>) => permitted && remedy.marginK >= 0;

  const alone: ReturnType<typeof tried>[] = [];
  const considered = changesFor(standing.site, standing.wall, units)
    .filter((change) => kitOfRemedy(change.id) !== null && possible(changed(standing, [change])))
    .sort((a, b) => effortOrder([a], [b]));
  for (const change of considered) {
    const one = tried([change]);
    if (suffices(one)) return { remedy: one.remedy, kit: kitOfRemedy(change.id) ?? 'two remedies' };
    if (one.gainK > 0) alone.push(one);
  }
  const couples = alone
    .flatMap((a, k) =>
      alone.slice(k + 1).map((b) => ({ changes: [...a.changes, ...b.changes], gainK: a.gainK + b.gainK })),
    )
    .filter(({ changes: [a, b], gainK }) => a?.part !== b?.part && gainK >= -marginK * WORTH_PAIRING)
    .filter(({ changes }) => possible(changed(standing, changes)))
    .sort((a, b) => effortOrder(a.changes, b.changes));
  for (const { changes } of couples) {
    const both = tried(changes);
    if (suffices(both)) return { remedy: both.remedy, kit: 'two remedies' };
  }
  return null;
}
