/** How much of a thick layer takes part in the daily swing of its surface. */

const DAY_S = 86_400;
const OMEGA = (2 * Math.PI) / DAY_S;

export interface Slab {
  readonly conductivityWmK: number;
  readonly densityKgM3: number;
  readonly specificHeatJkgK: number;
}

/**
 * Depth at which the daily swing has fallen to 1/e, m: sqrt(2 alpha / omega); for a layer much deeper than that.
 * Source: Carslaw and Jaeger, Conduction of Heat in Solids (2nd ed. 1959), section 2.6.
 */
export function dailyPenetrationM(slab: Slab): number {
  const diffusivity = slab.conductivityWmK / (slab.densityKgM3 * slab.specificHeatJkgK);
  return Math.sqrt((2 * diffusivity) / OMEGA);
}

/**
 * Heat capacity per area that a layer shows to the daily swing, J/(m2 K): the imaginary part of its surface admittance
 * over omega, with an adiabatic inner side. A thin layer shows all of its capacity, a thick one that of half the daily
 * penetration depth.
 *
 * Source: conduction in a slab under periodic heating, Carslaw and Jaeger, Conduction of Heat in Solids (2nd ed. 1959),
 * section 3.7: Y = sqrt(i omega k rho c) tanh((1 + i) L / d).
 */
export function dailyCapacityJm2K(slab: Slab, thicknessM: number): number {
  const d = dailyPenetrationM(slab);
  const x = Math.min(thicknessM / d, 20);
  // tanh(x + ix) = (sinh 2x + i sin 2x) / (cosh 2x + cos 2x), and sqrt(i) = (1 + i) / sqrt 2.
  const denominator = Math.cosh(2 * x) + Math.cos(2 * x);
  const imaginary = (Math.sinh(2 * x) + Math.sin(2 * x)) / denominator / Math.SQRT2;
  const admittance = Math.sqrt(OMEGA * slab.conductivityWmK * slab.densityKgM3 * slab.specificHeatJkgK);
  return (admittance * imaginary) / OMEGA;
}
