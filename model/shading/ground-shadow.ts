import type { WallPoint } from './bodies.ts';
import type { Scene } from './scene.ts';
import { evenShare, type Sunlight } from './sunlit-fraction.ts';
import { dot } from './vector.ts';

/** One in this many ground points tells whether the shade of the ground is even. */
const SCOUT_EVERY = 5;

/** Ground points of a view, in the coordinates of the wall, with the few that are asked first. */
export interface GroundPoints {
  readonly scouts: readonly WallPoint[];
  readonly all: readonly WallPoint[];
}

/** Chooses the scouts out of points that each stand for an equal part of a view, nearest to the wall first. */
export function groundPoints(all: readonly WallPoint[]): GroundPoints {
  return { all, scouts: all.filter((_, index) => index % SCOUT_EVERY === 0 || index === all.length - 1) };
}

/** Share of the sun that reaches the ground of a view, 0 to 1. */
export function sunOnGroundShare(scene: Scene, { scouts, all }: GroundPoints, { direction, rays }: Sunlight): number {
  if (all.length === 0) return 1;
  // Before a bare wall the ground lies open to a sun that the wall sees.
  if (!scene.hasObstructions && direction[2] > 0 && dot(direction, scene.frame.out) >= 0) return 1;
  return evenShare(scouts, all, rays);
}
