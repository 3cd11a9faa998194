/** Where the sun of a moment is drawn: on a dome round the box, seen from above (north up) and from the side. */
import type { SunPosition } from '../../../model/index.ts';
import type { Point } from '../../site/pictures/plane.ts';

const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** From above: at the rim when it rises, in the middle when it stands overhead; px from the middle. */
export function sunFromAbove({ elevationDeg, azimuthDeg }: SunPosition, radiusPx: number): Point {
  const level = radiusPx * Math.cos(radians(elevationDeg));
  return [level * Math.sin(radians(azimuthDeg)), -level * Math.cos(radians(azimuthDeg))];
}

/** From the side, the wall to the left and what lies before it to the right; px from the box. */
export function sunFromSide(
  { elevationDeg, azimuthDeg }: SunPosition,
  wallAzimuthDeg: number,
  radiusPx: number,
): Point {
  const level = Math.cos(radians(elevationDeg)) * Math.cos(radians(azimuthDeg - wallAzimuthDeg));
  return [radiusPx * level, -radiusPx * Math.sin(radians(elevationDeg))];
}

/** The way of the sun while it is up, in pieces where it sets in between. */
export function sunWays(suns: readonly SunPosition[], place: (sun: SunPosition) => Point): Point[][] {
  const ways: Point[][] = [];
  let wasUp = false;
  for (const sun of suns) {
    const up = sun.elevationDeg > 0;
    if (up && !wasUp) ways.push([]);
    if (up) ways.at(-1)?.push(place(sun));
    wasUp = up;
  }
  return ways;
}

/** How far down the wall the shade of something level reaches that juts out from it, m; null where no sun comes from the front. */
export function shadeBelowM(sunAt: Point, depthM: number): number | null {
  const [out, down] = sunAt;
  return out <= 0 || down >= 0 ? null : (depthM * -down) / out;
}
