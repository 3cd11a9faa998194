/** Natural convection from plates: average Nusselt numbers, and the coefficients made of them. */
import type { AirProperties, FilmAir } from './air.ts';
import { type Coefficient, type NaturalLaw, withLaw } from './convection-law.ts';

/** Rayleigh number g beta |dT| L^3 / (nu alpha), no unit (Incropera eq. 9.25); any difference in K and length in m. */
export function rayleigh(air: AirProperties, differenceK: number, lengthM: number): number {
  return air.buoyancyPerKM3 * Math.abs(differenceK) * lengthM * lengthM * lengthM;
}

const fourthRoot = (x: number): number => Math.sqrt(Math.sqrt(x));

/**
 * Vertical plate, whole range of Rayleigh numbers.
 * Source: Churchill and Chu 1975, Int. J. Heat Mass Transfer 18:1323, eq. 9 (Incropera eq. 9.26). L is the height.
 * @param plateFactor [1 + (0.492/Pr)^(9/16)]^(8/27), a property of the air
 */
export function verticalPlateNu(ra: number, plateFactor: number): number {
  const root = 0.825 + (0.387 * Math.cbrt(Math.sqrt(ra))) / plateFactor;
  return root * root;
}

/**
 * Vertical plate in undisturbed air, laminar, Rayleigh up to 1e9: a seventh below the form above at 1e8.
 * Source: Churchill and Chu 1975, as above (Incropera eq. 9.27), its Prandtl function written with the same factor.
 */
export function verticalPlateLaminarNu(ra: number, plateFactor: number): number {
  return 0.68 + (0.67 * fourthRoot(ra)) / (plateFactor * Math.sqrt(plateFactor));
}

/**
 * Solids of irregular shape, laminar; L is the way that the air travels along the solid.
 * Source: Holman, Heat Transfer (10th ed. 2010), section 7-5 with table 7-1 (C = 0.52, m = 1/4); value from memory.
 */
export function irregularSolidNu(ra: number): number {
  return 0.52 * fourthRoot(ra);
}

/**
 * Hot side up or cold side down, laminar, Rayleigh 1e4 to 1e7.
 * Source: McAdams 1954 (Incropera eq. 9.30). L is area over perimeter, here and below.
 */
export function unstablePlateLaminarNu(ra: number): number {
  return 0.54 * fourthRoot(ra);
}

/** Hot side up or cold side down, turbulent, Rayleigh 1e7 to 1e11. Source: McAdams 1954 (Incropera eq. 9.31). */
export function unstablePlateTurbulentNu(ra: number): number {
  return 0.15 * Math.cbrt(ra);
}

/**
 * Hot side up or cold side down over the whole range: the larger of the two forms above. They cross at a Rayleigh number
 * of 4.7e6, so the coefficient has no step for the solver to fall over; the books change over at 1e7, up to 8 % lower.
 */
function unstablePlateNu(ra: number): number {
  return Math.max(unstablePlateLaminarNu(ra), unstablePlateTurbulentNu(ra));
}

/** Hot side down or cold side up, Rayleigh 1e5 to 1e10. Source: McAdams 1954 (Incropera eq. 9.32). */
export function stablePlateNu(ra: number): number {
  return 0.27 * fourthRoot(ra);
}

/** Natural coefficient of a surface from its temperature and that of the air, W/(m2 K), and the same as data. */
export interface NaturalCoefficient {
  (air: AirProperties, surfaceK: number, airK: number): number;
  readonly law: NaturalLaw;
}

/** A natural coefficient alone, without wind. */
export function naturalCoefficient(film: FilmAir, natural: NaturalCoefficient): Coefficient {
  return withLaw((surfaceK, airK) => natural(film(surfaceK, airK), surfaceK, airK), { film, ...natural.law });
}

/** Upright plate of a height outdoors, m: air that is never quite undisturbed. */
export function verticalPlate(heightM: number): NaturalCoefficient {
  const coefficient = (air: AirProperties, surfaceK: number, airK: number) => {
    const nu = verticalPlateNu(rayleigh(air, surfaceK - airK, heightM), air.plateFactor);
    return (nu * air.conductivityWmK) / heightM;
  };
  return Object.assign(coefficient, { law: { shape: 'upright', lengthM: heightM } as const });
}

/** Upright plate of a height inside a closed box, m. */
export function stillVerticalPlate(heightM: number): NaturalCoefficient {
  const coefficient = (air: AirProperties, surfaceK: number, airK: number) => {
    const nu = verticalPlateLaminarNu(rayleigh(air, surfaceK - airK, heightM), air.plateFactor);
    return (nu * air.conductivityWmK) / heightM;
  };
  return Object.assign(coefficient, { law: { shape: 'stillUpright', lengthM: heightM } as const });
}

/** Solid of irregular shape along which the air travels `wayM`. */
export function irregularSolid(wayM: number): NaturalCoefficient {
  const coefficient = (air: AirProperties, surfaceK: number, airK: number) => {
    const nu = irregularSolidNu(rayleigh(air, surfaceK - airK, wayM));
    return (nu * air.conductivityWmK) / wayM;
  };
  return Object.assign(coefficient, { law: { shape: 'irregular', lengthM: wayM } as const });
}

/** Level plate whose air is above it; `lengthM` is area over perimeter. */
export function plateFacingUp(lengthM: number): NaturalCoefficient {
  const coefficient = (air: AirProperties, surfaceK: number, airK: number) => {
    const ra = rayleigh(air, surfaceK - airK, lengthM);
    return ((surfaceK > airK ? unstablePlateNu(ra) : stablePlateNu(ra)) * air.conductivityWmK) / lengthM;
  };
  return Object.assign(coefficient, { law: { shape: 'facingUp', lengthM } as const });
}

/** Level plate whose air is below it; `lengthM` is area over perimeter. */
export function plateFacingDown(lengthM: number): NaturalCoefficient {
  const coefficient = (air: AirProperties, surfaceK: number, airK: number) => {
    const ra = rayleigh(air, surfaceK - airK, lengthM);
    return ((surfaceK > airK ? stablePlateNu(ra) : unstablePlateNu(ra)) * air.conductivityWmK) / lengthM;
  };
  return Object.assign(coefficient, { law: { shape: 'facingDown', lengthM } as const });
}
