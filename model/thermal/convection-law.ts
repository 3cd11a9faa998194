/**
 * Convection coefficients as data, beside the functions that define them: a march asks for them a hundred thousand times,
 * and a loop over plain numbers answers several times faster than calls of functions. `convection-bank.ts` reads them.
 */
import type { FilmAir } from './air.ts';

/** Convection coefficient of a surface, W/(m2 K). */
export interface Coefficient {
  (surfaceK: number, airK: number, windMs: number): number;
  /** The same as data; a coefficient without is asked as the function that it is. */
  readonly law?: ConvectionLaw;
}

/** Natural convection by its correlation, and the length that the correlation asks for, m. */
export interface NaturalLaw {
  readonly shape: 'upright' | 'stillUpright' | 'irregular' | 'facingUp' | 'facingDown';
  readonly lengthM: number;
}

export type ConvectionLaw = { readonly film: FilmAir } & (
  | (NaturalLaw & {
      /** Wind along a plate, blended with the natural part: its way over the plate, and its share of the free wind. */
      readonly along?: { readonly lengthM: number; readonly shelter: number };
      /** Wind on a rough wall, added to the natural part: its coefficient at 1 m/s, W/(m2 K). */
      readonly roughAt1Ms?: number;
    })
  /** Air that rises through an upright channel. */
  | { readonly shape: 'channel'; readonly gapM: number; readonly heightM: number }
  /** Still air across a gap. */
  | { readonly shape: 'across'; readonly gapM: number }
);

/** A coefficient with its data. */
export function withLaw(coefficient: Coefficient, law: ConvectionLaw): Coefficient {
  return Object.assign(coefficient, { law });
}
