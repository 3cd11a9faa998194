/** The gap between the back plate and the wall: heat crosses it, and air that rises through it carries heat away. */
import type { AirProperties, FilmAir } from './air.ts';
import { type Coefficient, withLaw } from './convection-law.ts';
import { rayleigh } from './natural-convection.ts';

/**
 * Air left between surfaces that touch: masonry and mouldings meet at high spots only.
 * Common practice, no source.
 */
export const CONTACT_GAP_M = 0.002;

/**
 * Coefficient from either plate of an open upright channel to the outside air, W/(m2 K).
 *
 * Source: Bar-Cohen and Rohsenow 1984, J. Heat Transfer 106:116, isothermal plates (Incropera eq. 9.47 with C1 = 576,
 * C2 = 2.87). Tends to a single plate as the gap widens, and to nothing as it closes.
 * @param differenceK plate minus outside air
 */
export function channelCoefficient(air: AirProperties, differenceK: number, gapM: number, heightM: number): number {
  const x = (rayleigh(air, differenceK, gapM) * gapM) / heightM;
  return (channelNu(x) * air.conductivityWmK) / gapM;
}

/** Nusselt number of the channel; x is the Rayleigh number of the gap times gap over height. */
export function channelNu(x: number): number {
  return x <= 1e-12 ? 0 : 1 / Math.sqrt(576 / (x * x) + 2.87 / Math.sqrt(x));
}

/** From either plate to the air that rises between them, see `channelCoefficient`. */
export function risingGapCoefficient(film: FilmAir, { gapM, heightM }: { gapM: number; heightM: number }): Coefficient {
  const coefficient: Coefficient = (plateK, airK) =>
    channelCoefficient(film(plateK, airK), plateK - airK, gapM, heightM);
  return withLaw(coefficient, { film, shape: 'channel', gapM, heightM });
}

/**
 * From plate to plate through the air of a gap that stands still, W/(m2 K): conductivity over the gap in m (Fourier's law).
 * For gaps too narrow, or layers too stable, for the air to turn over.
 */
export function stillGapCoefficient(film: FilmAir, gapM: number): Coefficient {
  const coefficient: Coefficient = (oneK, otherK) => film(oneK, otherK).conductivityWmK / gapM;
  return withLaw(coefficient, { film, shape: 'across', gapM });
}
