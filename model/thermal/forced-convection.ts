import { SEA_LEVEL_PRESSURE_PA } from '../solar/atmosphere.ts';
import type { AirProperties } from './air.ts';

/** Reynolds number at which the layer along a flat plate turns turbulent. */
export const CRITICAL_REYNOLDS = 5e5;

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

/**
 * Forced convection on a wall of a building, W/(m2 K): 2.537 Wf Rf sqrt(P V / A). Walls are rough and their air is stirred,
 * which a smooth plate's laminar layer does not know.
 *
 * Source: Sparrow, Ramsey and Mass 1979, J. Heat Transfer 101:199, as used by Walton 1983 (TARP; EnergyPlus Engineering
 * Reference), V free wind in m/s at the height of the wall, P and A its perimeter and area. Measured at sea level; a layer of
 * this kind thins out with the root of the density, hence with that of the pressure.
 * @param exposure Wf: 1 on a wall that the wind meets, 0.5 in the lee
 * @param roughness Rf: 1.00 glass to 2.17 stucco
 * @param perimeterPerAreaM P / A, 1/m
 */
export function roughWallForced(
  windMs: number,
  wall: { exposure: number; roughness: number; perimeterPerAreaM: number; pressurePa: number },
): number {
  const { exposure, roughness, perimeterPerAreaM, pressurePa } = wall;
  const thinAir = Math.sqrt(pressurePa / SEA_LEVEL_PRESSURE_PA);
  return 2.537 * exposure * roughness * thinAir * Math.sqrt(perimeterPerAreaM * Math.max(0, windMs));
}

/** Natural and forced coefficients together: h^3 = hn^3 + hf^3 (Incropera section 9.9, exponent of vertical plates). */
export function blended(natural: number, forced: number): number {
  return forced <= 0 ? natural : Math.cbrt(natural * natural * natural + forced * forced * forced);
}
