import type { AirProperties } from './air.ts';

/** Reynolds number at which the layer along a flat plate turns turbulent. */
const CRITICAL_REYNOLDS = 5e5;

/**
 * Forced convection along a flat plate, average coefficient, W/(m2 K); 0 without wind.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer (6th ed. 2007), eq. 7.30 laminar, 7.38 mixed. The free
 * turbulence of outdoor wind is left out: it would cool better, so the forecast stays on the warm side.
 */
export function flatPlateForced(air: AirProperties, windMs: number, lengthM: number): number {
  if (windMs <= 0) return 0;
  const re = (windMs * lengthM) / air.kinematicViscosityM2s;
  const factor = re <= CRITICAL_REYNOLDS ? 0.664 * Math.sqrt(re) : 0.037 * re ** 0.8 - 871;
  return (factor * air.prandtlRoot * air.conductivityWmK) / lengthM;
}

/** Natural and forced coefficients together: h^3 = hn^3 + hf^3 (Incropera section 9.9, exponent of vertical plates). */
export function blended(natural: number, forced: number): number {
  return forced <= 0 ? natural : Math.cbrt(natural * natural * natural + forced * forced * forced);
}
