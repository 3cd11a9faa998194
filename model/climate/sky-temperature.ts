import { SEA_LEVEL_PRESSURE_PA } from '../solar/atmosphere.ts';

/** The constants as the source of the clear-sky emissivity uses them. */
const SIGMA_OF_SOURCE = 5.6697e-8;
const FREEZING_OF_SOURCE_K = 273;

/**
 * Long-wave irradiance of the sky on a horizontal plane, W/m2.
 *
 * Source: clear-sky emissivity of Clark and Allen 1978 with the cloud polynomial of Walton 1983, as documented in the
 * EnergyPlus Engineering Reference (its worked example: 20 degC air, dew point 10 degC, clear: 340.6 W/m2). Where a pressure is
 * given, the altitude term of Berdahl and Martin 1984 is added: 0.00012 for each hPa against sea level, because a thinner
 * atmosphere radiates less.
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
  const airK = input.airC + 273.15;
  const dewK = Math.min(input.dewPointC, input.airC) + 273.15;
  const n = 10 * Math.min(1, Math.max(0, input.cloudFraction ?? 0));
  const altitudeTerm = 0.00012 * (((input.pressurePa ?? SEA_LEVEL_PRESSURE_PA) - SEA_LEVEL_PRESSURE_PA) / 100);
  const clear = 0.787 + 0.764 * Math.log(dewK / FREEZING_OF_SOURCE_K) + altitudeTerm;
  const emissivity = clear * (1 + 0.0224 * n - 0.0035 * n ** 2 + 0.00028 * n ** 3);
  return Math.min(1, Math.max(0, emissivity)) * SIGMA_OF_SOURCE * airK ** 4;
}
