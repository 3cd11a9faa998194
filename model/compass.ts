/** The sixteen points of the compass, 22.5 degrees apart, clockwise from north. */
const POINTS = ['N', 'NNE', 'NE', 'ENE', 'E', 'ESE', 'SE', 'SSE', 'S', 'SSW', 'SW', 'WSW', 'W', 'WNW', 'NW', 'NNW'];

/** Bearing of a compass point ("SSW"), degrees clockwise from north; null for other text. */
export function compassPointDeg(text: string): number | null {
  const index = POINTS.indexOf(text.toUpperCase());
  return index < 0 ? null : index * 22.5;
}

/** Name of the compass point nearest to a bearing in degrees: 8 gives "N", 200 gives "SSW". */
export function compassPoint(bearingDeg: number): string {
  const index = Math.round(wrapDegrees(bearingDeg) / 22.5) % 16;
  return POINTS[index] ?? 'N';
}

/**
 * The same direction to the tenth of a degree, in [0, 360). Tenths are made last: turning a figure round the circle leaves traces in
 * its last digits, and one bearing would become two.
 */
export function bearingTenths(deg: number): number {
  return (Math.round(wrapDegrees(deg) * 10) % 3600) / 10;
}

/** The same direction in [0, 360). */
export function wrapDegrees(deg: number): number {
  const wrapped = deg % 360;
  // Without the nought behind it, a whole turn backwards would be minus nought.
  return wrapped < 0 ? (wrapped + 360) % 360 : wrapped + 0;
}
