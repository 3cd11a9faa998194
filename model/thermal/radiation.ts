/** Long-wave exchange. */
import { SIGMA } from '../physical-constants.ts';

/** Temperature of a black surface that emits this flux (W/m2, 0 and up), K: the law of Stefan and Boltzmann (Incropera eq. 12.26). */
export function blackbodyK(fluxWm2: number): number {
  return Math.sqrt(Math.sqrt(fluxWm2 / SIGMA));
}

/**
 * Exchange factor of two large parallel grey plates, 0 to 1: 1/(1/e1 + 1/e2 - 1); 0 when either is a perfect mirror.
 * Source: Incropera eq. 13.19 (6th ed. 2007).
 */
export function parallelPlates(emittance1: number, emittance2: number): number {
  if (emittance1 <= 0 || emittance2 <= 0) return 0;
  return 1 / (1 / emittance1 + 1 / emittance2 - 1);
}

/** A grey surface of a closed room. */
export interface GreySurface {
  readonly areaM2: number;
  readonly emittance: number;
}

/**
 * Exchange areas between the grey surfaces of a closed room, m2: surfaces i and j exchange
 * `areas[i][j] * sigma * (Ti^4 - Tj^4)` watts.
 *
 * Source: Carroll 1980, "An MRT method of computing radiant energy exchange in rooms" (as documented in the EnergyPlus
 * Engineering Reference): each surface meets a common radiant point through its view resistance 1/(A F) and its surface
 * resistance (1 - e)/(A e). Exact for two surfaces; the common point is eliminated here, so that no node stands for it.
 */
export function roomExchangeAreas(surfaces: readonly GreySurface[]): number[][] {
  const factors = surfaces.map(() => 1);
  // F_i = 1 / (1 - A_i F_i / sum(A F)) settles within some ten rounds; two equal surfaces tend to 2.
  for (let round = 0; round < 60; round++) {
    const total = surfaces.reduce((sum, surface, i) => sum + surface.areaM2 * (factors[i] ?? 1), 0);
    surfaces.forEach((surface, i) => {
      factors[i] = 1 / (1 - Math.min(0.5, (surface.areaM2 * (factors[i] ?? 1)) / total));
    });
  }
  const toPoint = surfaces.map(({ areaM2, emittance }, i) =>
    emittance <= 0 ? 0 : 1 / (1 / (areaM2 * (factors[i] ?? 1)) + (1 - emittance) / (areaM2 * emittance)),
  );
  const total = toPoint.reduce((sum, k) => sum + k, 0);
  return toPoint.map((ki, i) => toPoint.map((kj, j) => (i === j || total === 0 ? 0 : (ki * kj) / total)));
}
