/** What convection asks of the air at one temperature and pressure, SI. */
export interface AirProperties {
  readonly conductivityWmK: number;
  readonly kinematicViscosityM2s: number;
  readonly prandtl: number;
  /** Its cube root, dear as the next. */
  readonly prandtlRoot: number;
  /** Rayleigh number for each kelvin and cubic metre, g beta / (nu alpha), 1/(K m3). */
  readonly buoyancyPerKM3: number;
  /** Prandtl function of Churchill and Chu, see `verticalPlateNu`; kept here because its powers are dear. */
  readonly plateFactor: number;
}

/** Standard gravity, m/s2. */
export const GRAVITY_MS2 = 9.80665;

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
 * Source: Sutherland's law. Viscosity 1.716e-5 Pa s at 273 K and 110.4 K, the constants of the U.S. Standard Atmosphere 1976;
 * conductivity 0.0241 W/(m K) at 273 K and 194 K, White, Viscous Fluid Flow (3rd ed. 2006), table 1-3. Within 2 % from 200 to
 * 500 K.
 */
export function airProperties(temperatureK: number, pressurePa: number): AirProperties {
  const t = temperatureK / 273;
  const t15 = t * Math.sqrt(t);
  const viscosity = (1.716e-5 * t15 * (273 + 110.4)) / (temperatureK + 110.4);
  const conductivityWmK = (0.0241 * t15 * (273 + 194)) / (temperatureK + 194);
  const density = airDensity(temperatureK, pressurePa);
  return airFrom({
    conductivityWmK,
    kinematicViscosityM2s: viscosity / density,
    thermalDiffusivityM2s: conductivityWmK / (density * AIR_SPECIFIC_HEAT_JKGK),
    expansionPerK: 1 / temperatureK,
  });
}

/** The same from its transport properties, as tables and worked examples give them. */
export function airFrom(given: {
  conductivityWmK: number;
  kinematicViscosityM2s: number;
  thermalDiffusivityM2s: number;
  expansionPerK: number;
}): AirProperties {
  const { conductivityWmK, kinematicViscosityM2s, thermalDiffusivityM2s, expansionPerK } = given;
  const prandtl = kinematicViscosityM2s / thermalDiffusivityM2s;
  return {
    conductivityWmK,
    kinematicViscosityM2s,
    prandtl,
    prandtlRoot: Math.cbrt(prandtl),
    plateFactor: plateFactor(prandtl),
    buoyancyPerKM3: (GRAVITY_MS2 * expansionPerK) / (kinematicViscosityM2s * thermalDiffusivityM2s),
  };
}

/** [1 + (0.492/Pr)^(9/16)]^(8/27), Churchill and Chu 1975. */
function plateFactor(pr: number): number {
  return (1 + (0.492 / pr) ** (9 / 16)) ** (8 / 27);
}

/** Air at the mean temperature of a surface and its air. Valid until the next call. */
export interface FilmAir {
  (surfaceK: number, airK: number): AirProperties;
  /** What the correlations make of the air, a row for each temperature of the table; see `FILM_COLUMNS` in film-air.ts. */
  readonly columns: Float64Array;
}
