import type { Scene } from './scene.ts';
import { dot, type Vector } from './vector.ts';

/**
 * Share of a view of the ground that lies in shadow, 0 to 1.
 * @param points ground points that each stand for an equal part of the view
 * @param direction unit vector to the sun
 */
export function shadedShare(scene: Scene, points: readonly Vector[], direction: Vector): number {
  if (points.length === 0) return 0;
  // Before a bare wall the ground lies open to a sun that the wall sees.
  if (!scene.hasObstructions && direction[2] > 0 && dot(direction, scene.frame.out) >= 0) return 0;
  let shaded = 0;
  for (const point of points) if (scene.shadesGround(point, direction)) shaded += 1;
  return shaded / points.length;
}
