import { seeded } from '../random.ts';
import type { Site, Wall } from '../site.ts';
import { type UnitSystem, usualUnits } from '../units.ts';
import { type SiteDay, siteDay } from './design-day.ts';
import { INPUT_SPREADS, type InputSpread, type MovedSite, valueWithin } from './input-spreads.ts';
import { judgedDay } from './judged-day.ts';
import { latinHypercube, quantile, rankCorrelation } from './latin-hypercube.ts';
import { marchWall } from './march-wall.ts';
import { namedWall } from './named-wall.ts';
import { compareDays, decidingMarginK, type JudgedDay } from './results.ts';
import { isPermitted, sitingFindings } from './siting-checks.ts';
import type { SitingRules } from './siting-rules.ts';
import { type DayShade, prepareWallShade } from './wall-shade.ts';

export interface ConfidenceOptions {
  /** How many sets of inputs are tried; 100 where left out. */
  readonly samples?: number;
  /** The same seed tries the same sets; 1 where left out. */
  readonly seed?: number;
  /** Units of the sentences; the usual ones of the place when left out. */
  readonly units?: UnitSystem;
  /** Thresholds of the siting checks that bar walls from the choice; the usual ones where left out. */
  readonly rules?: SitingRules | undefined;
}

/** How much of the spread of the peak an input explains. */
export interface InputWeight {
  readonly input: string;
  readonly text: string;
  /** Spearman's rank correlation with the peak, -1 to 1. */
  readonly rankCorrelation: number;
}

export interface WallConfidence {
  readonly wall: string;
  readonly samples: number;
  /** Peak of the air inside that 10, 50 and 90 in a hundred sets stay below, degC. */
  readonly peakInsideAirC: { readonly p10: number; readonly p50: number; readonly p90: number };
  /** The same of the curve at each step of the day. */
  readonly insideAirC: { readonly p10: number[]; readonly p90: number[] };
  /** Share of the sets in which what the limit refers to passes the upper limit, 0 to 1. */
  readonly chanceOverLimit: number;
  /** The weightiest input first. */
  readonly weights: InputWeight[];
  /** What was moved and how far. */
  readonly assumption: string;
}

export interface ChoiceConfidence {
  readonly samples: number;
  /**
   * How often each permitted wall fared best under the same inputs, by what the ranking goes by, and how often it stayed
   * inside its limits, both of them, 0 to 1.
   */
  readonly walls: { readonly name: string; readonly bestShare: number; readonly withinShare: number }[];
  /** What was moved and how far. */
  readonly assumption: string;
}

const USUAL_SAMPLES = 100;

/**
 * Spread of one wall's day. A generator: it yields the share done, so that a caller can show progress and stop, and returns
 * the result.
 * @throws SiteError when the site has no wall of that name
 */
export function* wallConfidence(
  site: Site,
  wallName: string,
  options: ConfidenceOptions = {},
): Generator<number, WallConfidence> {
  const wall = namedWall(site, wallName);
  const { sets, day } = triedSets(site, options);
  const shade = prepareWallShade(site, wall, day);
  const curves: Float64Array[] = [];
  const limited: number[] = [];
  for (const [k, set] of sets.entries()) {
    const { insideAirC, peakLimitedC } = dayOf(site, set, wall, { day, shade });
    curves.push(insideAirC);
    limited.push(peakLimitedC);
    yield (k + 1) / sets.length;
  }
  const peaks = curves.map((curve) => curve.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY));
  const at = (part: number) => quantile(peaks, part);
  const band = (part: number) =>
    day.steps.map((_, k) =>
      quantile(
        curves.map((curve) => curve[k] as number),
        part,
      ),
    );
  return {
    wall: wall.name,
    samples: sets.length,
    peakInsideAirC: { p10: at(0.1), p50: at(0.5), p90: at(0.9) },
    insideAirC: { p10: band(0.1), p90: band(0.9) },
    chanceOverLimit: limited.filter((c) => c > site.limits.maxC).length / sets.length,
    weights: weightsOf(site, sets, { peaks, units: options.units ?? usualUnits(site.place.timeZone) }),
    assumption: assumptionOf(site, sets.length, options),
  };
}

/** How often each permitted wall is the coolest under the same inputs. A generator like `wallConfidence`. */
export function* choiceConfidence(site: Site, options: ConfidenceOptions = {}): Generator<number, ChoiceConfidence> {
  const { rules } = options;
  const { sets, day } = triedSets(site, options);
  const walls = site.walls.filter((wall) => isPermitted(sitingFindings(site, wall, { units: 'metric', day, rules })));
  const shades = walls.map((wall) => prepareWallShade(site, wall, day));
  const wins = walls.map(() => 0);
  const within = walls.map(() => 0);
  for (const [k, set] of sets.entries()) {
    const days = walls.map((wall, w) => dayOf(site, set, wall, { day, shade: shades[w] as DayShade }));
    const best = days.reduce<JudgedDay | undefined>(
      (a, b) => (a === undefined || compareDays(b, a) < 0 ? b : a),
      undefined,
    );
    for (const [w, one] of days.entries()) if (decidingMarginK(one) >= 0) within[w] = (within[w] as number) + 1;
    // Walls that fare alike share the set.
    const alike = days.map((one) => best !== undefined && compareDays(one, best) === 0);
    const sharing = alike.filter((is) => is).length;
    for (const [w, is] of alike.entries()) if (is) wins[w] = (wins[w] as number) + 1 / sharing;
    yield (k + 1) / sets.length;
  }
  return {
    samples: sets.length,
    walls: walls.map(({ name }, w) => ({
      name,
      bestShare: (wins[w] as number) / sets.length,
      withinShare: (within[w] as number) / sets.length,
    })),
    assumption: assumptionOf(site, sets.length, options),
  };
}

/** What was moved and how far, in words. */
function assumptionOf(site: Site, count: number, { units }: ConfidenceOptions): string {
  const system = units ?? usualUnits(site.place.timeZone);
  const ranges = INPUT_SPREADS.filter(({ moves }) => moves(site))
    .map(({ text }) => text(system))
    .join('; ');
  return `${count} set${count === 1 ? '' : 's'} of inputs, each anywhere within its range: ${ranges}. The ranges are common practice, no source.`;
}

/** Values of all inputs, in the order of `INPUT_SPREADS`. */
type InputSet = readonly number[];

function triedSets(site: Site, { samples = USUAL_SAMPLES, seed = 1 }: ConfidenceOptions) {
  const points = latinHypercube(samples, INPUT_SPREADS.length, seeded(seed));
  const sets = points.map(
    (point): InputSet => INPUT_SPREADS.map((spread, k) => valueWithin(spread, point[k] as number)),
  );
  return { sets, day: siteDay(site) };
}

function dayOf(site: Site, set: InputSet, wall: Wall, { day, shade }: { day: SiteDay; shade: DayShade }) {
  const start: MovedSite = { site, insideFactor: 1 };
  const moved = INPUT_SPREADS.reduce(
    (at: MovedSite, spread: InputSpread, k) => spread.move(at, set[k] as number),
    start,
  );
  const sameWall = moved.site.walls[site.walls.indexOf(wall)] as Wall;
  const movedDay = siteDay(moved.site, { like: day });
  const marched = marchWall(moved.site, sameWall, movedDay, { shade, insideFactor: moved.insideFactor });
  return judgedDay(site, movedDay, marched);
}

function weightsOf(
  site: Site,
  sets: readonly InputSet[],
  { peaks, units }: { peaks: readonly number[]; units: UnitSystem },
): InputWeight[] {
  const moved = INPUT_SPREADS.map((spread, k) => ({ spread, k })).filter(({ spread }) => spread.moves(site));
  return moved
    .map(({ spread: { input, text }, k }) => ({
      input,
      text: text(units),
      rankCorrelation: rankCorrelation(
        sets.map((set) => set[k] as number),
        peaks,
      ),
    }))
    .sort((a, b) => Math.abs(b.rankCorrelation) - Math.abs(a.rankCorrelation));
}
