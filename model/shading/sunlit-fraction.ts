import { cosDeg, sinDeg } from '../solar/angles.ts';
import type { SunPosition } from '../solar/sun-position.ts';
import type { Scene } from './scene.ts';
import { dot, type Vector } from './vector.ts';
import type { Panel } from './wall-frame.ts';

/** Unit vector that points at the sun, east-north-up. */
export function sunVector(sun: SunPosition): Vector {
  const level = cosDeg(sun.elevationDeg);
  return [level * sinDeg(sun.azimuthDeg), level * cosDeg(sun.azimuthDeg), sinDeg(sun.elevationDeg)];
}

/**
 * Sunlit projected fraction of a panel: the share of `points` that see the sun times the cosine of incidence, 0 to 1.
 * @param direction unit vector to the sun
 */
export function sunlitCosine(scene: Scene, panel: Panel, points: readonly Vector[], direction: Vector): number {
  const incidence = dot(panel.normal, direction);
  if (incidence <= 0 || direction[2] <= 0 || dot(direction, scene.frame.out) <= 0) return 0;
  if (!scene.hasObstructions) return incidence;
  let lit = 0;
  for (const point of points) if (!scene.hidesSun(point, direction)) lit += 1;
  return (incidence * lit) / points.length;
}
