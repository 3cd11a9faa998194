/** A battery in the box: heavy, slow, and of a size of its own. */

export interface Battery {
  readonly massKg: number;
  /** Heat that it gives off itself, W. */
  readonly powerW: number;
}

/** Sealed lead-acid: density of a whole block and its specific heat, kg/m3 and J/(kg K). Value from memory. */
const DENSITY_KGM3 = 2400;
const SPECIFIC_HEAT_JKGK = 900;

/** Heat capacity, J/K. */
export function batteryCapacityJK({ massKg }: Battery): number {
  return massKg * SPECIFIC_HEAT_JKGK;
}

/** Edge of a cube of its volume, m; it stands for the way of the air along it. */
export function batteryEdgeM({ massKg }: Battery): number {
  return Math.cbrt(massKg / DENSITY_KGM3);
}

/** Outside of that cube but for the side that it stands on, m2. */
export function batteryAreaM2(battery: Battery): number {
  return 5 * batteryEdgeM(battery) ** 2;
}
