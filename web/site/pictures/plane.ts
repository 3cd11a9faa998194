/** Points of a picture and the paths through them; x to the right and y downward, px. */

export type Point = readonly [x: number, y: number];

/** A line through points, as the `d` of a path. */
export function linePath(points: readonly Point[]): string {
  return points.map(([x, y], k) => `${k === 0 ? 'M' : 'L'}${tenth(x)} ${tenth(y)}`).join('');
}

/** A closed area, as the `d` of a path. */
export function areaPath(corners: readonly Point[]): string {
  return corners.length === 0 ? '' : `${linePath(corners)}Z`;
}

/** Where on a circle a bearing lies, north up and clockwise. */
export function onCircle([x, y]: Point, radiusPx: number, bearingDeg: number): Point {
  const angle = (bearingDeg * Math.PI) / 180;
  return [x + radiusPx * Math.sin(angle), y - radiusPx * Math.cos(angle)];
}

/** In which direction one point lies from another, degrees clockwise from the top, 0 up to 360. */
export function directionDeg([fromX, fromY]: Point, [x, y]: Point): number {
  const deg = (Math.atan2(x - fromX, fromY - y) * 180) / Math.PI;
  return deg < 0 ? deg + 360 : deg;
}

/** How far apart two bearings are, 0 to 180 degrees. */
export function apartDeg(a: number, b: number): number {
  const turn = Math.abs(a - b) % 360;
  return Math.min(turn, 360 - turn);
}

/** A tenth of a pixel is as fine as anybody sees. */
function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
