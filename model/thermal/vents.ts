/** Openings low and high in a box: warm air leaves at one and outside air comes in at the other. */
import { AIR_SPECIFIC_HEAT_JKGK, airDensity, GRAVITY_MS2 } from './air.ts';
import type { Coefficient } from './convection-law.ts';

export interface Vents {
  readonly lowAreaM2: number;
  readonly highAreaM2: number;
  /** From the middle of the low openings to that of the high ones, m. */
  readonly heightM: number;
  readonly dischargeCoefficient: number;
}

/** Free area that lets as much air through as two openings one behind the other, m2; none where either is closed. */
function areaInSeriesM2({ lowAreaM2, highAreaM2 }: Vents): number {
  if (lowAreaM2 <= 0 || highAreaM2 <= 0) return 0;
  return 1 / Math.hypot(1 / lowAreaM2, 1 / highAreaM2);
}

/** Whether air can flow through at all. */
export function ventsOpen(vents: Vents | null): vents is Vents {
  return vents !== null && areaInSeriesM2(vents) * vents.heightM * vents.dischargeCoefficient > 0;
}

/**
 * Heat that the stack flow carries for each kelvin between the air inside and outside, W/K: density times specific heat
 * times volume flow. The flow is Cd A sqrt(2 g H |dT| / T), with the warmer column's temperature below the root and the density
 * of the air that comes in.
 *
 * Source: ASHRAE Fundamentals, chapter on ventilation and infiltration, flow caused by stack effect; Cd 0.6 to 0.65 for
 * sharp-edged openings (value from memory). Wind is left out, and so is what one opening alone exchanges: on the safe side.
 */
export function stackFlowCoefficient(vents: Vents, pressurePa: number): Coefficient {
  const flow = vents.dischargeCoefficient * areaInSeriesM2(vents) * Math.sqrt(2 * GRAVITY_MS2 * vents.heightM);
  return (insideK, outsideK) => {
    const warmer = Math.max(insideK, outsideK);
    const volumeM3s = flow * Math.sqrt(Math.abs(insideK - outsideK) / warmer);
    return airDensity(outsideK, pressurePa) * AIR_SPECIFIC_HEAT_JKGK * volumeM3s;
  };
}
