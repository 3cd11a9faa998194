/** Coefficients of Magnus' formula over water (Sonntag 1990; WMO guide no. 8, annex 4.B): -45 to 60 degC. */
const A = 17.62;
const B = 243.12;

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
