/** Sites built in code for the comparisons with measurements and rules of the trade; every one invented. */
import { type DayResult, evaluateDay, parseSite, type SiteInput } from '../../model/index.ts';

type Box = SiteInput['box'];

/** A free-standing box is put on a post this far before a low wall, so that the wall is nearly out of sight, m. */
const OPEN_YARD_M = 40;

/** A small closed box without heat of its own. */
const SMALL: Box = {
  widthM: 0.3,
  heightM: 0.35,
  depthM: 0.12,
  solarAbsorptance: 0.9,
  emittance: 0.9,
  powerW: 0,
  massKg: 3,
};

/** What stands free: on a post, far from any wall. */
export const FREE: Partial<Box> = { mount: 'post', postDistanceM: OPEN_YARD_M };

/** A hot, dry, clear summer day at 33 N under a light wind: 900 to 1000 W/m2 on the level at noon. */
export const HOT_DAY = { date: '2026-06-21', maxC: 40, dailyRangeK: 14, dewPointC: 5, windMs: 1.5, linkeTurbidity: 3 };

export interface Trial {
  readonly box?: Partial<Box>;
  readonly climate?: SiteInput['climate'];
  readonly place?: SiteInput['place'];
  readonly azimuthDeg?: number;
  readonly wall?: Partial<SiteInput['walls'][number]>;
  readonly albedo?: number;
}

/** Evaluates one box through the product, from the site file on. */
export function dayOf(trial: Trial): DayResult {
  const { box, climate = { designDay: HOT_DAY }, place, azimuthDeg = 180, wall, albedo = 0.25 } = trial;
  const site = parseSite({
    title: 'Comparison',
    place: place ?? { latitudeDeg: 33, longitudeDeg: -112, altitudeM: 300, timeZone: 'America/Phoenix' },
    climate,
    ground: { albedo },
    box: { ...SMALL, ...box },
    limits: {},
    walls: [{ name: 'wall', azimuthDeg, ...wall }],
  });
  return evaluateDay(site, 'wall');
}

const EIGHT_WAYS = [0, 45, 90, 135, 180, 225, 270, 315];

/** The hottest of eight walls. */
export function hottestWay(trial: Trial): DayResult {
  const days = EIGHT_WAYS.map((azimuthDeg) => dayOf({ ...trial, azimuthDeg }));
  return days.reduce((best, day) => (day.peakInsideAirC > best.peakInsideAirC ? day : best));
}

/** Inside air minus outside air at each step, K. */
export const risesK = (day: DayResult): number[] =>
  day.insideAirC.map((inside, k) => inside - (day.outsideAirC[k] as number));

/** Inside air above the outside air of the same time, at the inside's peak, K. */
export function riseAtPeakK(day: DayResult): number {
  return risesK(day)[day.insideAirC.indexOf(day.peakInsideAirC)] as number;
}

/** Inside air of one minus another at the peak of the first, and at its coldest, K. */
export function apartK(hot: DayResult, cool: DayResult): { atPeak: number; atNight: number } {
  const at = (k: number): number => (hot.insideAirC[k] as number) - (cool.insideAirC[k] as number);
  return {
    atPeak: at(hot.insideAirC.indexOf(hot.peakInsideAirC)),
    atNight: at(hot.insideAirC.indexOf(hot.lowestInsideAirC)),
  };
}

/** Lowest that a lid gets against the air of the same time, K. */
export const lidBelowAirK = (day: DayResult): number =>
  Math.min(...day.skinC.top.map((lid, k) => lid - (day.outsideAirC[k] as number)));
