/** Natural convection from plates: average Nusselt numbers, and the coefficients made of them. */
import type { AirProperties } from './air.ts';

/** Standard gravity, m/s2. */
const GRAVITY_MS2 = 9.80665;

/** Rayleigh number g beta dT L^3 / (nu alpha). */
export function rayleigh(air: AirProperties, differenceK: number, lengthM: number): number {
  const buoyancy = GRAVITY_MS2 * air.expansionPerK * Math.abs(differenceK);
  return (buoyancy * lengthM ** 3) / (air.kinematicViscosityM2s * air.thermalDiffusivityM2s);
}

/**
 * Vertical plate, whole range of Rayleigh numbers.
 * Source: Churchill and Chu 1975, Int. J. Heat Mass Transfer 18:1323, eq. 9 (Incropera eq. 9.26). L is the height.
 */
export function verticalPlateNu(ra: number, pr: number): number {
  return (0.825 + (0.387 * ra ** (1 / 6)) / (1 + (0.492 / pr) ** (9 / 16)) ** (8 / 27)) ** 2;
}

/**
 * Vertical plate, laminar: a little closer than the form for all Rayleigh numbers, up to 1e9.
 * Source: Churchill and Chu 1975, as above (Incropera eq. 9.27).
 */
export function verticalPlateLaminarNu(ra: number, pr: number): number {
  return 0.68 + (0.67 * ra ** 0.25) / (1 + (0.492 / pr) ** (9 / 16)) ** (4 / 9);
}

/**
 * Hot side up or cold side down, laminar, Rayleigh 1e4 to 1e7.
 * Source: McAdams 1954 (Incropera eq. 9.30). L is area over perimeter, here and below.
 */
export function unstablePlateLaminarNu(ra: number): number {
  return 0.54 * ra ** 0.25;
}

/** Hot side up or cold side down, turbulent, Rayleigh 1e7 to 1e11. Source: McAdams 1954 (Incropera eq. 9.31). */
export function unstablePlateTurbulentNu(ra: number): number {
  return 0.15 * Math.cbrt(ra);
}

/**
 * Hot side up or cold side down over the whole range: the two forms above joined by a tenth-power mean, so that the
 * coefficient has no step for the solver to fall over. Differs from the larger of the two by under 8 %, at their crossing.
 */
export function unstablePlateNu(ra: number): number {
  const laminar = unstablePlateLaminarNu(ra);
  const turbulent = unstablePlateTurbulentNu(ra);
  return (laminar ** 10 + turbulent ** 10) ** 0.1;
}

/** Hot side down or cold side up, Rayleigh 1e5 to 1e10. Source: McAdams 1954 (Incropera eq. 9.32). */
export function stablePlateNu(ra: number): number {
  return 0.27 * ra ** 0.25;
}

/** Natural coefficient of a surface from its temperature and that of the air, W/(m2 K). */
export type NaturalCoefficient = (air: AirProperties, surfaceK: number, airK: number) => number;

/** Upright plate of a height, m. */
export function verticalPlate(heightM: number): NaturalCoefficient {
  return (air, surfaceK, airK) => {
    const nu = verticalPlateNu(rayleigh(air, surfaceK - airK, heightM), air.prandtl);
    return (nu * air.conductivityWmK) / heightM;
  };
}

/** Level plate whose air is above it; `lengthM` is area over perimeter. */
export function plateFacingUp(lengthM: number): NaturalCoefficient {
  return (air, surfaceK, airK) => {
    const ra = rayleigh(air, surfaceK - airK, lengthM);
    return ((surfaceK > airK ? unstablePlateNu(ra) : stablePlateNu(ra)) * air.conductivityWmK) / lengthM;
  };
}

/** Level plate whose air is below it; `lengthM` is area over perimeter. */
export function plateFacingDown(lengthM: number): NaturalCoefficient {
  return (air, surfaceK, airK) => {
    const ra = rayleigh(air, surfaceK - airK, lengthM);
    return ((surfaceK > airK ? stablePlateNu(ra) : unstablePlateNu(ra)) * air.conductivityWmK) / lengthM;
  };
}
