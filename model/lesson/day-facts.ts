/** Facts of a played day that statements ask for; each is read off the day's own numbers. */
import { civilDay, clockTime } from '../civil-day.ts';
import { FACES, type Face, openFaces } from '../faces.ts';
import { highestAt } from '../highest-at.ts';
import type { PlayedDay } from '../siting/played-day.ts';
import { SUNSHINE_WM2 } from '../siting/sunshine.ts';

export const largest = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b));
export const smallest = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b));

/** Clock time of a step, "16:35". */
export function stepClock({ result }: PlayedDay, step: number): string {
  return clockTime(result.stepsUtc[step] as Date, result.timeZone);
}

/** Hours that lie between two steps. */
export const hoursBetween = ({ stepS }: PlayedDay, a: number, b: number): number => (Math.abs(a - b) * stepS) / 3600;

/** The step whose clock time is nearest to an hour of the local day. */
export function stepAtHour({ result }: PlayedDay, hour: number): number {
  // One reading of the zone for the whole day: it is dear.
  const { clockTime: clock } = civilDay(result.date, result.timeZone);
  const apartH = result.stepsUtc.map((utc) => Math.abs(clockHour(clock(utc)) - hour));
  return apartH.reduce((best, apart, k) => (apart < (apartH[best] as number) ? k : best), 0);
}

/** "16:15" as 16.25. */
export function clockHour(text: string): number {
  const [hours = 0, minutes = 0] = text.split(':').map(Number);
  return hours + minutes / 60;
}

/** Sun on a face, or on the hood before it, at a step, W/m2. */
export function faceSunWm2({ beamWm2, diffuseWm2, reflectedWm2 }: PlayedDay, face: Face, step: number): number {
  return (beamWm2[face][step] as number) + (diffuseWm2[face][step] as number) + (reflectedWm2[face][step] as number);
}

/** The same through the day. */
export const faceSunThrough = (played: PlayedDay, face: Face): number[] =>
  played.suns.map((_, step) => faceSunWm2(played, face, step));

/** Sun on the front over the day, kWh/m2. */
export function frontInsolationKwhM2(played: PlayedDay): number {
  return (faceSunThrough(played, 'front').reduce((a, b) => a + b, 0) * played.stepS) / 3.6e6;
}

/** Sun taken in by box and hood at a step, W. */
export function takenInW({ absorbedW, hoodAbsorbedW }: PlayedDay, step: number): number {
  return FACES.reduce(
    (sum, face) => sum + (absorbedW[face][step] as number) + (hoodAbsorbedW[face][step] as number),
    0,
  );
}

/** Steps in which direct sun of the WMO's threshold falls on a face, before and after the sun's noon. */
export function directSunSteps({ weather, beamWm2, solarHours }: PlayedDay, face: Face) {
  const lit = weather.flatMap(({ dni }, k) => (dni >= SUNSHINE_WM2 && (beamWm2[face][k] as number) > 0 ? [k] : []));
  return {
    all: lit,
    morning: lit.filter((k) => (solarHours[k] as number) < 12),
    afternoon: lit.filter((k) => (solarHours[k] as number) >= 12),
  };
}

/** Hours that so many steps last. */
export const hoursOf = ({ stepS }: PlayedDay, steps: readonly unknown[]): number => (steps.length * stepS) / 3600;

/** Steps of the peaks. */
export const insidePeakStep = ({ result }: PlayedDay): number => highestAt(result.insideAirC);
export const outsidePeakStep = ({ result }: PlayedDay): number => highestAt(result.outsideAirC);
export const frontPeakStep = (played: PlayedDay): number => highestAt(faceSunThrough(played, 'front'));

/** Whether a step lies after the sun's noon. */
export const afterNoon = ({ solarHours }: PlayedDay, step: number): boolean => (solarHours[step] as number) >= 12;

/** The face that takes the most sun at a step, per square metre. */
export function sunniestFace(played: PlayedDay, step: number): Face {
  const open = openFaces(played.site.box.mount);
  return open.reduce((best, face) => (faceSunWm2(played, face, step) > faceSunWm2(played, best, step) ? face : best));
}

/** Air inside, coolest to hottest hour, K. */
export const insideSwingK = ({ result }: PlayedDay): number => largest(result.insideAirC) - smallest(result.insideAirC);

export const outsideSwingK = ({ result }: PlayedDay): number =>
  largest(result.outsideAirC) - smallest(result.outsideAirC);

/** Degrees between the way that a wall faces and the pole of its hemisphere; null on the equator. */
export function fromPoleDeg({ site, wall }: PlayedDay): number | null {
  const { latitudeDeg } = site.place;
  if (latitudeDeg === 0) return null;
  const pole = latitudeDeg > 0 ? 0 : 180;
  const apart = Math.abs(wall.azimuthDeg - pole) % 360;
  return Math.min(apart, 360 - apart);
}

/** Steps of the night: the sun well below the horizon. */
export const nightSteps = ({ suns }: PlayedDay): number[] =>
  suns.flatMap(({ elevationDeg }, k) => (elevationDeg < -1 ? [k] : []));
