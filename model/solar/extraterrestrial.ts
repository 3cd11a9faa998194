/** Solar constant, W/m2 (ASTM E490-00a). */
const SOLAR_CONSTANT_WM2 = 1366.1;

const DAY_MS = 86_400_000;

/** Day angle of Spencer's series: 0 at the start of 1 January, radians. */
function dayAngle(utc: Date): number {
  const yearStart = Date.UTC(utc.getUTCFullYear(), 0, 1);
  return (2 * Math.PI * Math.floor((utc.getTime() - yearStart) / DAY_MS)) / 365;
}

/**
 * Irradiance on a plane normal to the sun outside the atmosphere, W/m2.
 *
 * Source: Spencer 1971, "Fourier series representation of the position of the sun", Search 2(5):172, within 0.15 % of
 * the inverse square of the distance.
 */
export function extraterrestrialNormal(utc: Date): number {
  const b = dayAngle(utc);
  const inverseSquare =
    1.00011 + 0.034221 * Math.cos(b) + 0.00128 * Math.sin(b) + 0.000719 * Math.cos(2 * b) + 0.000077 * Math.sin(2 * b);
  return SOLAR_CONSTANT_WM2 * inverseSquare;
}

/**
 * Equation of time: apparent solar time minus mean solar time, minutes.
 *
 * Source: Spencer 1971, as above, within 0.6 minutes. Its first term is 0.0000075; many copies have lost a nought.
 */
export function equationOfTimeMin(utc: Date): number {
  const b = dayAngle(utc);
  const series =
    0.0000075 +
    0.001868 * Math.cos(b) -
    0.032077 * Math.sin(b) -
    0.014615 * Math.cos(2 * b) -
    0.040849 * Math.sin(2 * b);
  return 229.18 * series;
}

/** Apparent solar time at a longitude, hours in [0, 24): 12 when the sun crosses the meridian. */
export function apparentSolarHour(utc: Date, longitudeDeg: number, equationMin: number): number {
  const hour = (utc.getTime() % DAY_MS) / 3_600_000 + longitudeDeg / 15 + equationMin / 60;
  return ((hour % 24) + 24) % 24;
}
