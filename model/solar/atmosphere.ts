import { cosDeg } from './angles.ts';

/** Pressure of the standard atmosphere at sea level, Pa. */
export const SEA_LEVEL_PRESSURE_PA = 101_325;

/**
 * Pressure of the standard atmosphere at an altitude, Pa.
 *
 * Source: US Standard Atmosphere 1976 in the closed form for the troposphere; 0 m 101325, 1000 m 89875, 8000 m 35600 Pa.
 * @param altitudeM -500 to 11000 m
 */
export function pressureAtAltitude(altitudeM: number): number {
  return SEA_LEVEL_PRESSURE_PA * (1 - 2.25577e-5 * altitudeM) ** 5.25588;
}

/**
 * Relative optical air mass at sea level, 1 at the zenith, 38 at the horizon.
 *
 * Source: Kasten and Young 1989, Applied Optics 28(22):4735, eq. 3, on the apparent elevation. Below the horizon the
 * value at the horizon is returned.
 */
export function relativeAirMass(elevationDeg: number): number {
  const gamma = Math.max(elevationDeg, 0);
  return 1 / (cosDeg(90 - gamma) + 0.50572 * (gamma + 6.07995) ** -1.6364);
}
