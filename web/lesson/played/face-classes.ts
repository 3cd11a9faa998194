/** Colours of the faces by the sun they take in: classes in watts, the same for both boxes, each shown with its numbers. */
import { FACES, type PlayedDay } from '../../../model/index.ts';

/** Classes of absorbed sun; class 0 is none, class k ends at `boundsW[k - 1]`. */
export interface FaceClasses {
  readonly boundsW: readonly number[];
}

/** As many steps of a colour as people tell apart across a room. */
const CLASSES = 5;

/** Less than this is shown as 0.0 W. */
const NONE_W = 0.05;

/** Round steps: 1, 2 or 5 with zeros. */
export function roundUp(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const lead = [1, 2, 5, 10].find((digit) => digit * power >= value * (1 - 1e-9)) ?? 10;
  return Number((lead * power).toPrecision(12));
}

/** Classes that reach up to the most that any face takes in. */
export function faceClasses(mostW: number): FaceClasses {
  const stepW = roundUp(Math.max(mostW, 1) / CLASSES);
  return { boundsW: Array.from({ length: CLASSES }, (_, k) => Number(((k + 1) * stepW).toPrecision(12))) };
}

/** The class of a face, 0 to `boundsW.length`. */
export function faceClass({ boundsW }: FaceClasses, watts: number): number {
  if (watts < NONE_W) return 0;
  const k = boundsW.findIndex((bound) => watts <= bound);
  return k < 0 ? boundsW.length : k + 1;
}

/** "0", "to 5 W" … as the key of the colours says it. */
export function classLabels({ boundsW }: FaceClasses): string[] {
  const inner = boundsW.map((bound, k) => `${k === 0 ? 0 : boundsW[k - 1]} to ${bound} W`);
  return ['none', ...inner];
}

/** Sun taken in by a face or by the hood before it, W. */
export function takenInW({ absorbedW, hoodAbsorbedW }: PlayedDay, face: (typeof FACES)[number], step: number): number {
  return (absorbedW[face][step] ?? 0) + (hoodAbsorbedW[face][step] ?? 0);
}

/** The most that any face of these boxes takes in through the day, W. */
export function mostTakenInW(days: readonly PlayedDay[]): number {
  const each = days.flatMap((day) =>
    FACES.flatMap((face) => day.absorbedW[face].map((_, step) => takenInW(day, face, step))),
  );
  return each.reduce((most, watts) => Math.max(most, watts), 0);
}
