import { sinDeg } from './angles.ts';
import { extraterrestrialNormal } from './extraterrestrial.ts';

/** Below this height of the sun the quotient of beam and sine is noise. */
export const LOWEST_BEAM_ELEVATION_DEG = 3;

/** Floor of the sine of the elevation in the clearness index (86.3 degrees of zenith). */
const MIN_COS_ZENITH = 0.065;

/** Diffuse fraction of the global irradiance for a clearness index of 0 to 1 (Erbs, Klein and Duffie 1982, eq. 1). */
function diffuseFraction(kt: number): number {
  if (kt <= 0.22) return 1 - 0.09 * kt;
  if (kt > 0.8) return 0.165;
  return 0.9511 - 0.1604 * kt + 4.388 * kt ** 2 - 16.638 * kt ** 3 + 12.336 * kt ** 4;
}

/**
 * Splits global horizontal irradiance into direct normal and diffuse horizontal, W/m2.
 *
 * Source: Erbs, Klein and Duffie 1982, Solar Energy 28(4):293-302. Found for hourly values at 31 to 42 degrees north;
 * the clearness index is held to 1. Below 3 degrees of elevation all is taken as diffuse.
 */
export function splitGlobal(input: { utc: Date; elevationDeg: number; ghi: number }): { dni: number; dhi: number } {
  const { utc, elevationDeg, ghi } = input;
  return erbsSplit({ elevationDeg, ghi, extraterrestrialWm2: extraterrestrialNormal(utc) });
}

/** The same from the extraterrestrial irradiance normal to the sun, W/m2. */
export function erbsSplit(input: { elevationDeg: number; ghi: number; extraterrestrialWm2: number }): {
  dni: number;
  dhi: number;
} {
  const { elevationDeg, extraterrestrialWm2 } = input;
  const ghi = Math.max(input.ghi, 0);
  if (elevationDeg < LOWEST_BEAM_ELEVATION_DEG) return { dni: 0, dhi: ghi };
  const cosZenith = sinDeg(elevationDeg);
  const kt = Math.min(1, ghi / (extraterrestrialWm2 * Math.max(cosZenith, MIN_COS_ZENITH)));
  const dhi = diffuseFraction(kt) * ghi;
  return { dni: (ghi - dhi) / cosZenith, dhi };
}
