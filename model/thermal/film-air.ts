/** Air between a surface and the air around it, read from a table. */
import { type AirProperties, airProperties, type FilmAir } from './air.ts';
import { flatPlateForced } from './forced-convection.ts';
import { verticalPlateLaminarNu, verticalPlateNu } from './natural-convection.ts';

export const TABLE_FROM_K = 150;
export const TABLE_TO_K = 602;
export const TABLE_STEP_K = 2;

/**
 * Parts of the correlations that depend on the film temperature alone, so that a coefficient needs a root of the temperature
 * difference besides and no power of the air's properties. k is the conductivity, B the Rayleigh number for each kelvin and
 * cubic metre. Each is taken from the correlation itself at a Rayleigh number of B and of 0, or at 1 m/s along 1 m.
 */
export const FILM_COLUMNS = {
  /** sqrt(k Nu) of an upright plate without a difference, and what B adds to it. */
  uprightBase: 0,
  uprightGrowth: 1,
  /** k Nu of an upright plate in still air without a difference, and what B adds to it. */
  stillBase: 2,
  stillGrowth: 3,
  /** k times the fourth root of B, and the cube root. */
  fourthRoot: 4,
  cubeRoot: 5,
  /** Coefficient of a plate along which the air moves at 1 m/s over 1 m, laminar. */
  alongPlate: 6,
  viscosity: 7,
  conductivity: 8,
  buoyancy: 9,
} as const;

export const FILM_WIDTH = 10;

function columnsOf(air: AirProperties): number[] {
  const { conductivityWmK: k, buoyancyPerKM3: b, plateFactor } = air;
  const upright = (ra: number) => Math.sqrt(k * verticalPlateNu(ra, plateFactor));
  const still = (ra: number) => k * verticalPlateLaminarNu(ra, plateFactor);
  return [
    upright(0),
    upright(b) - upright(0),
    still(0),
    still(b) - still(0),
    k * Math.sqrt(Math.sqrt(b)),
    k * Math.cbrt(b),
    flatPlateForced(air, 1, 1),
    air.kinematicViscosityM2s,
    k,
    b,
  ];
}

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
  const at = (surfaceK: number, airK: number): AirProperties => {
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
  return Object.assign(at, { columns: Float64Array.from(rows.flatMap(columnsOf)) });
}
