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
 * Source: Sutherland's law with the constants of White, Viscous Fluid Flow (3rd ed. 2006), tables 1-2 and 1-3: viscosity
 * 1.716e-5 Pa s and 110.4 K, conductivity 0.0241 W/(m K) and 194 K, both at 273 K. Within 2 % from 200 to 500 K.
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

/** Air between a surface and its air, at the mean of their temperatures. Valid until the next call. */
export type FilmAir = (surfaceK: number, airK: number) => AirProperties;

const TABLE_FROM_K = 150;
const TABLE_TO_K = 602;
const TABLE_STEP_K = 2;

/**
 * Film air at a pressure, read from a table of `airProperties` in steps of 2 K, straight between them (within 5e-4 of
 * the formulas). A heat balance asks for it a hundred thousand times a day: one object is reused for every answer.
 */
export function filmAirTable(pressurePa: number): FilmAir {
  const rows = Array.from({ length: (TABLE_TO_K - TABLE_FROM_K) / TABLE_STEP_K + 2 }, (_, i) =>
    airProperties(TABLE_FROM_K + i * TABLE_STEP_K, pressurePa),
  );
  const conductivity = Float64Array.from(rows, (row) => row.conductivityWmK);
  const viscosity = Float64Array.from(rows, (row) => row.kinematicViscosityM2s);
  const prandtl = Float64Array.from(rows, (row) => row.prandtl);
  const root = Float64Array.from(rows, (row) => row.prandtlRoot);
  const buoyancy = Float64Array.from(rows, (row) => row.buoyancyPerKM3);
  const factor = Float64Array.from(rows, (row) => row.plateFactor);
  const air = {
    conductivityWmK: 0,
    kinematicViscosityM2s: 0,
    prandtl: 0,
    prandtlRoot: 0,
    buoyancyPerKM3: 0,
    plateFactor: 0,
  };
  return (surfaceK, airK) => {
    const filmK = Math.max(TABLE_FROM_K, Math.min(TABLE_TO_K, (surfaceK + airK) / 2));
    const position = (filmK - TABLE_FROM_K) / TABLE_STEP_K;
    const i = Math.floor(position);
    const b = position - i;
    const a = 1 - b;
    air.conductivityWmK = a * (conductivity[i] as number) + b * (conductivity[i + 1] as number);
    air.kinematicViscosityM2s = a * (viscosity[i] as number) + b * (viscosity[i + 1] as number);
    air.prandtl = a * (prandtl[i] as number) + b * (prandtl[i + 1] as number);
    air.prandtlRoot = a * (root[i] as number) + b * (root[i + 1] as number);
    air.buoyancyPerKM3 = a * (buoyancy[i] as number) + b * (buoyancy[i + 1] as number);
    air.plateFactor = a * (factor[i] as number) + b * (factor[i + 1] as number);
    return air;
  };
}
