/** Properties of dry air at one temperature and pressure, SI. */
export interface AirProperties {
  readonly conductivityWmK: number;
  readonly kinematicViscosityM2s: number;
  readonly thermalDiffusivityM2s: number;
  readonly prandtl: number;
  /** Volumetric expansion coefficient, 1/K. */
  readonly expansionPerK: number;
}

/** Specific gas constant of dry air, J/(kg K). */
const GAS_CONSTANT = 287.05;

/** Specific heat of air at constant pressure, J/(kg K); moves by less than 1 % between -50 and 150 degC. */
export const AIR_SPECIFIC_HEAT_JKGK = 1006;

/** Density of dry air, kg/m3 (ideal gas). */
export function airDensity(temperatureK: number, pressurePa: number): number {
  return pressurePa / (GAS_CONSTANT * temperatureK);
}

/**
 * Properties of dry air. Viscosity and conductivity do not depend on pressure, density does: a high site cools worse.
 *
 * Source: Sutherland's law with the constants of White, Viscous Fluid Flow (3rd ed. 2006), tables 1-2 and 1-3: viscosity
 * 1.716e-5 Pa s and 110.4 K, conductivity 0.0241 W/(m K) and 194 K, both at 273 K. Within 2 % from 200 to 500 K.
 */
export function airProperties(temperatureK: number, pressurePa: number): AirProperties {
  const t = temperatureK / 273;
  const t15 = t * Math.sqrt(t);
  const viscosity = (1.716e-5 * t15 * (273 + 110.4)) / (temperatureK + 110.4);
  const conductivityWmK = (0.0241 * t15 * (273 + 194)) / (temperatureK + 194);
  const density = airDensity(temperatureK, pressurePa);
  const thermalDiffusivityM2s = conductivityWmK / (density * AIR_SPECIFIC_HEAT_JKGK);
  const kinematicViscosityM2s = viscosity / density;
  return {
    conductivityWmK,
    kinematicViscosityM2s,
    thermalDiffusivityM2s,
    prandtl: kinematicViscosityM2s / thermalDiffusivityM2s,
    expansionPerK: 1 / temperatureK,
  };
}
