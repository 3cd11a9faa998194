/** Whether the outside of a box burns who touches it. */
import type { Face } from '../faces.ts';
import type { Box } from '../site.ts';
import type { TimeSpan } from './time-spans.ts';

/** Contact times that thresholds are given for, s. */
export const TOUCH_TIMES_S = [1, 10, 60] as const;

export type TouchTimeS = (typeof TOUCH_TIMES_S)[number];

/**
 * Temperatures of a surface from which the skin may burn within a time of contact, degC, lower ends of the bands.
 *
 * Source: ISO 13732-1 (value from memory); ECMA-287 has the same 65 and 55 degC for metal, and 85 and 65 degC for other
 * materials, for 1 and 10 s. Thin paint on metal counts as metal.
 */
export const BURN_THRESHOLDS_C: Readonly<Record<Box['material'], Readonly<Record<TouchTimeS, number>>>> = {
  metal: { 1: 65, 10: 55, 60: 51 },
  plastic: { 1: 85, 10: 65, 60: 60 },
};

/** The part of the outside of the box, its hood included, that burns soonest; where several do or none does, the hottest of them. */
export interface Touch {
  /** The hottest that this part gets. */
  readonly peakSkinC: number;
  readonly face: Face;
  readonly atUtc: Date;
  /** Shortest contact that may burn at that temperature, s; null where a minute does not. */
  readonly burnsWithinS: TouchTimeS | null;
  /** When a contact of so many seconds with some part of the outside may burn. */
  readonly burns: Readonly<Record<TouchTimeS, readonly TimeSpan[]>>;
}

/** The shortest contact that may burn on a surface of this temperature; null where a minute does not. */
export function burnsWithinS(surfaceC: number, material: Box['material']): TouchTimeS | null {
  return TOUCH_TIMES_S.find((seconds) => surfaceC >= BURN_THRESHOLDS_C[material][seconds]) ?? null;
}
