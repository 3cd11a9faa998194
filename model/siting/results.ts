/** What an evaluation gives back. Temperatures in degC, power in W, instants in UTC. */
import type { PerFace } from '../faces.ts';
import type { UnitSystem } from '../units.ts';
import type { SitingCheck, SitingRules } from './siting-rules.ts';
import type { Touch } from './touch.ts';
import type { ShadeMemory } from './wall-shade.ts';

export interface DayOptions {
  /** Time step, seconds; at most 300, the default. The civil day must hold a whole number of them. */
  readonly stepS?: number;
  /** Units of the sentences; the usual ones of the place when left out. */
  readonly units?: UnitSystem;
  /** Shades of former days; those of walls that nothing was moved at are taken from it. */
  readonly shades?: ShadeMemory;
}

/** Something that a forecast rests on, shown with it. */
export interface Assumption {
  /** What it is about: a path of the site file, or a part of the model. */
  readonly subject: string;
  readonly text: string;
  readonly origin: string;
}

/** Heat flows into the box at one instant, W, positive inward; they sum to zero with `storage`. */
export type Ledger = Record<LedgerPath, number>;

export const LEDGER_PATHS = [
  'sunBeam',
  'sunDiffuse',
  'sunReflected',
  'dissipation',
  'convection',
  'longwaveSky',
  'longwaveGround',
  'longwaveWall',
  'longwaveSurroundings',
  'mounting',
  'hood',
  'vents',
  'storage',
] as const;

export type LedgerPath = (typeof LEDGER_PATHS)[number];

/** The figures of a day that a ranking compares. */
export interface DaySummary {
  readonly peakInsideAirC: number;
  readonly peakAtUtc: Date;
  readonly peakElectronicsC: number;
  readonly peakOutsideAirC: number;
  readonly lowestInsideAirC: number;
  /** Upper limit minus the day's highest temperature of the kind that the limit refers to, K. */
  readonly marginK: number;
  /** The day's lowest temperature of that kind minus the lower limit, K. */
  readonly coldMarginK: number;
  readonly hoursOverLimit: number;
  /** Hours in which direct sun of at least 120 W/m2 (the WMO's threshold of sunshine) reaches a face of the box. */
  readonly sunHours: number;
  /** Energy in minus energy out minus energy stored over the day, relative to energy in. */
  readonly energyClosure: number;
}

/** What a day is judged by. */
export type JudgedDay = Pick<DaySummary, 'marginK' | 'coldMarginK' | 'peakInsideAirC'>;

/** Whether the lower limit, and not the upper one, decides: only where it is passed, and by more. */
export const coldDecides = (day: Pick<DaySummary, 'marginK' | 'coldMarginK'>): boolean =>
  day.coldMarginK < 0 && day.coldMarginK < day.marginK;

/**
 * Which of two days leaves the box better off: what stays above the lower limit before what does not, then the room to the
 * limit that decides, then the cooler peak. Negative where `a` does.
 */
export function compareDays(a: JudgedDay, b: JudgedDay): number {
  const cold = coldDecides(a) !== coldDecides(b);
  if (cold) return coldDecides(a) ? 1 : -1;
  return decidingMarginK(b) - decidingMarginK(a) || a.peakInsideAirC - b.peakInsideAirC;
}

/** Room to the limit that decides, K: the upper one on a design day for heat; negative past it. */
export const decidingMarginK = (day: Pick<DaySummary, 'marginK' | 'coldMarginK'>): number =>
  coldDecides(day) ? day.coldMarginK : day.marginK;

/**
 * Room that a change leaves, K: where the lower limit decides without it, the room to the nearer limit, since one that was
 * far from the upper limit all the time gains nothing there.
 */
export const marginWithK = (
  without: Pick<DaySummary, 'marginK' | 'coldMarginK'>,
  day: Pick<DaySummary, 'marginK' | 'coldMarginK'>,
): number => (coldDecides(without) ? Math.min(day.marginK, day.coldMarginK) : decidingMarginK(day));

/** Whether that room is the one to the lower limit. */
export const coldDecidesWith = (
  without: Pick<DaySummary, 'marginK' | 'coldMarginK'>,
  day: Pick<DaySummary, 'marginK' | 'coldMarginK'>,
): boolean => (coldDecides(without) ? day.coldMarginK < day.marginK : coldDecides(day));

/** A wall's day without what its forecast rests on. */
export type WallDay = Omit<DayResult, 'assumptions'>;

export interface DayResult extends DaySummary {
  readonly wall: string;
  /** Local civil date of the day, "2026-07-05". */
  readonly date: string;
  readonly timeZone: string;
  readonly stepsUtc: Date[];
  readonly outsideAirC: number[];
  readonly insideAirC: number[];
  readonly electronicsC: number[];
  /** Null for a box without a battery. */
  readonly batteryC: number[] | null;
  /** Air in the lower room; null for a box of one room. */
  readonly lowerAirC: number[] | null;
  /** The hottest that the outside gets, hood included, and how soon that burns. */
  readonly touch: Touch;
  /** Hours in which a skin lies below the dew point of the outside air: water on it. */
  readonly condensationHours: number;
  readonly skinC: PerFace<number[]>;
  /** Sun that falls on each face: beam, sky, ground and wall together, W/m2; none on a face that a hood covers. */
  readonly faceIrradianceWm2: PerFace<number[]>;
  readonly ledgerAtPeak: Ledger;
  readonly assumptions: Assumption[];
}

export type FindingStatus = 'pass' | 'look' | 'fail';

/** One siting check of a wall: passed, to be looked at on site (nothing entered, or a matter for the eye), or failed. */
export interface Finding {
  readonly check: SitingCheck;
  readonly status: FindingStatus;
  readonly text: string;
  /** Whether a wall that fails it is out, however cool. */
  readonly hard: boolean;
  /** Where its threshold comes from. */
  readonly origin: string;
}

export interface RankedWall {
  /** 1 for the wall to use. */
  readonly rank: number;
  readonly name: string;
  readonly azimuthDeg: number;
  /** False when a hard constraint fails: such a wall stands behind every feasible one. */
  readonly feasible: boolean;
  readonly day: DaySummary;
  readonly findings: Finding[];
  /** Why it stands where it stands, in a sentence. */
  readonly reason: string;
}

export interface Ranking {
  readonly walls: RankedWall[];
  /** The name of the wall to use; null when no wall satisfies the constraints. */
  readonly best: string | null;
  /** Whether the best wall stays within the limits on the design day. */
  readonly withinLimits: boolean;
  /** Whether it keeps its lower limit on that day and passes it in the coldest night, running or after an outage. */
  readonly pastInColdestNight: boolean;
  /** Which wall, and how far from the limit, in one sentence. */
  readonly decision: string;
  /** What goes with it: the next best wall, the cooler one that is out, what is to be checked. */
  readonly grounds: readonly string[];
  /** The decision and its grounds as one text. */
  readonly verdict: string;
  readonly timeZone: string;
  readonly date: string;
  readonly assumptions: Assumption[];
}

export interface RankOptions extends DayOptions {
  /** Thresholds of the siting checks; the usual ones where left out. */
  readonly rules?: SitingRules;
}
