/** Coefficients of Magnus' formula over water (Sonntag 1990; WMO guide no. 8, annex 4.B): -45 to 60 degC. */
const A = 17.62;
const B = 243.12;

/** The same over ice: -65 to 0 degC. Both start from one vapour pressure at 0 degC. */
const A_ICE = 22.46;
const B_ICE = 272.62;

/** Lowest humidity that a dew point is made of; the formula has none for dry air. */
const DRIEST_PERCENT = 1;

/** Dew point of air at a relative humidity over water, degC. */
export function dewPoint(airC: number, relativeHumidityPercent: number): number {
  const gamma = Math.log(Math.max(relativeHumidityPercent, DRIEST_PERCENT) / 100) + (A * airC) / (B + airC);
  return (B * gamma) / (A - gamma);
}

/** Relative humidity of air with a dew point, over water, percent. */
export function relativeHumidity(airC: number, dewPointC: number): number {
  const exponent = (celsius: number) => (A * celsius) / (B + celsius);
  return 100 * Math.exp(exponent(Math.min(dewPointC, airC)) - exponent(airC));
}

/**
 * Temperature of a surface below which water settles on it, or frost, degC: the dew point, below 0 degC the frost point,
 * which is warmer (-17.9 at a dew point of -20); never above the air, which holds no more than ice lets it hold.
 *
 * Source: Magnus' formulas over water and over ice (Sonntag 1990; WMO guide no. 8, annex 4.B), -65 to 60 degC.
 * @param dewPointC over water, as weather services report it below freezing, too
 */
export function wettingPoint(dewPointC: number, airC: number): number {
  if (dewPointC >= 0) return Math.min(dewPointC, airC);
  const exponent = (A * dewPointC) / (B + dewPointC);
  return Math.min((B_ICE * exponent) / (A_ICE - exponent), airC);
}
