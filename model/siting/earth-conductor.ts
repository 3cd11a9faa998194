/** Resistivity of annealed copper at 20 degC, ohm mm2/m: a fifty-eighth (IEC 60028, value from memory). */
const COPPER_OHM_MM2_M = 1 / 58;

/** Its temperature coefficient at 20 degC, 1/K (IEC 60028, value from memory). */
const COPPER_PER_K = 0.00393;

/**
 * Resistance of a run of copper conductor, ohm: rho20 (1 + alpha (t - 20)) l / A.
 *
 * Source: IEC 60028 for annealed copper, linear in the temperature; -40 to 100 degC. The cross-section is that of the metal.
 * Joints and the earth round the electrode come on top and are measured, not reckoned.
 */
export function copperRunOhm({
  lengthM,
  areaMm2,
  copperC,
}: {
  lengthM: number;
  areaMm2: number;
  copperC: number;
}): number {
  return (COPPER_OHM_MM2_M * (1 + COPPER_PER_K * (copperC - 20)) * lengthM) / areaMm2;
}
