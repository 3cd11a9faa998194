/** Profiles of the wind over open country, where it is measured, and over suburbs, where boxes hang. */
const OPEN = { exponent: 0.14, layerM: 270 };
const SUBURB = { exponent: 0.22, layerM: 370 };

/**
 * Wind at a height in a suburb against the wind at the height of a station in the open.
 * Source: ASHRAE Fundamentals 2005, chapter 16, atmospheric boundary layer parameters (EnergyPlus Engineering Reference).
 */
export function windProfile(stationHeightM: number, heightM: number): number {
  const above = (OPEN.layerM / stationHeightM) ** OPEN.exponent;
  return above * (heightM / SUBURB.layerM) ** SUBURB.exponent;
}
