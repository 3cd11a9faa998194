/** Facts of two boxes beside each other that statements ask for, the same whichever of the two is A. */
import { KELVIN, SIGMA } from '../physical-constants.ts';
import type { PlayedDay } from '../siting/played-day.ts';
import type { UnitSystem } from '../units.ts';
import { hotterBy } from './both-units.ts';
import type { BoxDay, Pair } from './comparison.ts';
import { directSunSteps, hoursOf, insidePeakStep, takenInW } from './day-facts.ts';
import type { Difference } from './difference.ts';

/** Boxes whose peaks lie closer together are called alike, K. */
export const ALIKE_K = 0.5;

/** One of the two, by its letter. */
export interface NamedBox {
  readonly letter: 'A' | 'B';
  readonly box: BoxDay;
}

export const of = (pair: Pair, ...kinds: readonly Difference['kind'][]): boolean =>
  kinds.includes(pair.difference.kind);

/** Whether the peaks lie so far apart that a cause is owed. */
export const apart = ({ peakDifferenceK }: Pair): boolean => Math.abs(peakDifferenceK) > ALIKE_K;

/** The two in the order of something that they have less and more of; A first where they are level. */
export function byLess({ a, b }: Pair, amount: (box: BoxDay) => number): { less: NamedBox; more: NamedBox } {
  const [A, B] = [
    { letter: 'A', box: a },
    { letter: 'B', box: b },
  ] as const;
  return amount(a) <= amount(b) ? { less: A, more: B } : { less: B, more: A };
}

export const peakC = ({ played }: BoxDay): number => played.result.peakInsideAirC;

export const byPeak = (pair: Pair) => {
  const { less: cooler, more: hotter } = byLess(pair, peakC);
  return { cooler, hotter };
};

/** By how much a box peaks higher than the other, K. */
export const aboveOtherK = ({ peakDifferenceK }: Pair, { letter }: NamedBox): number =>
  letter === 'B' ? peakDifferenceK : -peakDifferenceK;

/** "5.1 K hotter", said of a box. */
export const hotterThanOther = (pair: Pair, box: NamedBox, units: UnitSystem): string =>
  hotterBy(aboveOtherK(pair, box), units);

/** Sun taken in by box and hood over the day, Wh. */
export function daySunWh({ played }: BoxDay): number {
  return (played.suns.reduce((sum, _, k) => sum + takenInW(played, k), 0) * played.stepS) / 3600;
}

/** Mean of the outside air over the day, each moment weighing as much as the sun that is taken in then, degC. */
export function airWithTheSunC({ played }: BoxDay): number {
  const watts = played.suns.map((_, k) => takenInW(played, k));
  const all = watts.reduce((sum, one) => sum + one, 0);
  const airs = played.result.outsideAirC;
  // Without any sun no moment weighs more than another.
  if (all <= 0) return airs.reduce((sum, celsius) => sum + celsius, 0) / airs.length;
  return watts.reduce((sum, one, k) => sum + one * (airs[k] as number), 0) / all;
}

/** Hours of direct sun on front, sides or lid. */
export function sunHours({ played }: BoxDay): number {
  const faces = ['front', 'left', 'right', 'top'] as const;
  return hoursOf(played, [...new Set(faces.flatMap((face) => directSunSteps(played, face).all))]);
}

/** Mean of what the air above the ground would radiate as a black body minus what the sky sends, W/m2. */
export function skyDeficitWm2({ weather }: PlayedDay): number {
  const deficit = weather.map(({ airC, skyLongwaveWm2 }) => SIGMA * (airC + KELVIN) ** 4 - skyLongwaveWm2);
  return deficit.reduce((sum, one) => sum + one, 0) / deficit.length;
}

export const meanDewC = ({ weather }: PlayedDay): number =>
  weather.reduce((sum, { dewPointC }) => sum + dewPointC, 0) / weather.length;

export const maxDni = ({ weather }: PlayedDay): number => Math.max(...weather.map(({ dni }) => dni));

/** Smallest difference of the air inside to that outside over the day, K. */
export const leastExcessK = ({ result }: PlayedDay): number =>
  Math.min(...result.insideAirC.map((c, k) => c - (result.outsideAirC[k] as number)));

/** Air inside above that outside at the peak, K. */
export function excessAtPeakK({ played }: BoxDay): number {
  const step = insidePeakStep(played);
  return (played.result.insideAirC[step] as number) - (played.result.outsideAirC[step] as number);
}

export const windMs = ({ played }: BoxDay): number => played.weather[0]?.windMs ?? 0;
export const powerW = ({ site }: BoxDay): number => site.box.powerW;
export const altitudeM = ({ site }: BoxDay): number => site.place.altitudeM;

/** "1234 Wh" */
export const wh = (watthours: number): string => `${Math.round(watthours)} Wh`;

/** "35 %" */
export const share = (part: number): string => `${Math.round(part * 100)} %`;
