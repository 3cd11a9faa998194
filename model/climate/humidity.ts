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
