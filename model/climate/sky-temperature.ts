import { KELVIN, SIGMA } from '../physical-constants.ts';
import { SEA_LEVEL_PRESSURE_PA } from '../solar/atmosphere.ts';

/** The quadratic turns up again in air drier than this, which no measurement bears out, degC. */
const DRIEST_DEW_POINT_C = -40;

/**
 * Emissivity of the clear sky as seen from a horizontal plane.
 *
 * Source: the form of Berdahl and Martin 1984 with the coefficients that Li, Jiang and Coimbra 2017 (Solar Energy 144:40)
 * fitted to seven stations from 98 to 1689 m: RMSE 13.2 W/m2, against 22.4 with the first coefficients, 32.2 for Brunt
 * and 14.0 for Idso on the same data. It lies within 0.4 % of Clark and Allen's worked example. The altitude term is
 * Berdahl and Martin's: 0.00012 for each hPa against sea level, because a thinner atmosphere radiates less.
 * @param dewPointC -40 to 30
 */
function clearSkyEmissivity(dewPointC: number, pressurePa: number): number {
  const x = Math.max(dewPointC, DRIEST_DEW_POINT_C) / 100;
  return 0.758 + 0.521 * x + 0.625 * x * x + 0.00012 * ((pressurePa - SEA_LEVEL_PRESSURE_PA) / 100);
}

/**
 * Long-wave irradiance of the sky on a horizontal plane, W/m2.
 *
 * Source: `clearSkyEmissivity`; clouds by the polynomial of Walton 1983 (EnergyPlus Engineering Reference).
 * @param airC air temperature near the ground, -60 to 60 degC
 * @param dewPointC held to the air temperature
 * @param cloudFraction 0 clear (the default) to 1 overcast
 * @param pressurePa station pressure; sea level where left out
 */
export function skyLongwave(input: {
  airC: number;
  dewPointC: number;
  cloudFraction?: number;
  pressurePa?: number;
}): number {
  const n = 10 * Math.min(1, Math.max(0, input.cloudFraction ?? 0));
  const clouds = 1 + 0.0224 * n - 0.0035 * n ** 2 + 0.00028 * n ** 3;
  const dewPointC = Math.min(input.dewPointC, input.airC);
  const emissivity = clearSkyEmissivity(dewPointC, input.pressurePa ?? SEA_LEVEL_PRESSURE_PA) * clouds;
  const square = (input.airC + KELVIN) ** 2;
  return Math.min(1, emissivity) * SIGMA * square * square;
}
