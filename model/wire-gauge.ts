/**
 * American wire gauge of solid round conductors: 39 equal ratios lie between 0.005 in (gauge 36) and 0.46 in (gauge 4/0).
 *
 * Source: ASTM B258, whose table follows from the two diameters; values from memory, checked in the tests. A stranded
 * conductor of the same gauge has the same area of metal.
 */

/** Ratio of the widest to the thinnest of the two diameters that define the gauge. */
const RATIO = 92;
const STEPS = 39;
const THINNEST_GAUGE = 36;
const THINNEST_MM = 0.127;

/** Gauges 4/0 to 1/0 count down from 0. */
const WIDEST_GAUGE = -3;

/** Cross-section of a gauge number, mm2; 0 is 1/0, -3 is 4/0. */
function areaMm2(gauge: number): number {
  const diameterMm = THINNEST_MM * RATIO ** ((THINNEST_GAUGE - gauge) / STEPS);
  return (Math.PI / 4) * diameterMm ** 2;
}

/** Cross-section of a gauge as people write it, "6 AWG", "AWG 6" or "1/0 AWG", mm2 to four digits; null for other text. */
export function gaugeAreaMm2(text: string): number | null {
  const match = /^(?:awg\s*)?([1-4]\/0|\d{1,2})(?:\s*awg)?$/i.exec(text);
  if (match?.[1] === undefined || !/awg/i.test(text)) return null;
  const gauge = match[1].endsWith('/0') ? 1 - Number(match[1].charAt(0)) : Number(match[1]);
  return gauge > THINNEST_GAUGE ? null : Number(areaMm2(gauge).toPrecision(4));
}

/** The largest gauge that is no thicker than a cross-section, "6 AWG"; beyond 4/0 that one. */
export function gaugeWithin(conductorMm2: number): string {
  // Nominal sizes are rounded: 13.3 mm2 is 6 AWG.
  const exact =
    THINNEST_GAUGE - (STEPS * Math.log(Math.sqrt((4 * conductorMm2) / Math.PI) / THINNEST_MM)) / Math.log(RATIO);
  const gauge = Math.max(WIDEST_GAUGE, Math.min(THINNEST_GAUGE, Math.ceil(exact - 0.05)));
  return gauge > 0 ? `${gauge} AWG` : `${1 - gauge}/0 AWG`;
}
