/**
 * How much of what a face sees is sky, ground, its own wall or an obstruction. Found once for each face by sending rays
 * over the hemisphere, denser where the face looks straighter (Nusselt's unit sphere), so that every ray counts the same.
 */

import type { RayEnd, Scene } from './scene.ts';
import { along, dot, type Vector } from './vector.ts';
import type { Panel } from './wall-frame.ts';
import { samplePoints } from './wall-frame.ts';

/** Shares of the view from a face; they sum to 1. */
export type ViewFactors = Record<RayEnd, number>;

export interface FaceView {
  readonly factors: ViewFactors;
  /** Share of the horizon band before the face that is not hidden, as Perez's horizon part counts it: 0 to 1. */
  readonly horizonBand: number;
  /** Points of the ground that the face sees; each stands for an equal part of that view. Empty where it sees none. */
  readonly groundPoints: readonly Vector[];
}

/** Rays over the hemisphere from each sample point: rings by azimuths. Even numbers keep mirror pairs together. */
const RINGS = 12;
const AZIMUTHS = 48;

/** Middle of Perez's horizon band, degrees: the paper's band is 6.5 degrees high at its widest. */
const BAND_SIN = Math.sin((3 * Math.PI) / 180);
const BAND_COS = Math.sqrt(1 - BAND_SIN ** 2);
const BAND_RAYS = 180;

/** Unit vectors spanning the plane of a panel. */
function spanOf(panel: Panel): { normal: Vector; a: Vector; b: Vector } {
  const unit = (v: Vector): Vector => {
    const length = Math.sqrt(dot(v, v));
    return [v[0] / length, v[1] / length, v[2] / length];
  };
  return { normal: panel.normal, a: unit(panel.halfAcross), b: unit(panel.halfAlong) };
}

/** Views from a panel: from its middle, or averaged over points of it where something near can hide part of the sky. */
export function faceView(scene: Scene, panel: Panel): FaceView {
  const { normal, a, b } = spanOf(panel);
  const directions: Vector[] = [];
  for (let ring = 0; ring < RINGS; ring++) {
    const radius = Math.sqrt((ring + 0.5) / RINGS);
    const height = Math.sqrt(1 - radius ** 2);
    for (let step = 0; step < AZIMUTHS; step++) {
      const phi = (2 * Math.PI * (step + 0.5)) / AZIMUTHS;
      const inA = along([0, 0, 0], a, radius * Math.cos(phi));
      directions.push(along(along(inA, b, radius * Math.sin(phi)), normal, height));
    }
  }

  const counts: ViewFactors = { sky: 0, ground: 0, wall: 0, obstruction: 0 };
  const ground: Vector[] = [];
  const spread = scene.hasObstructions ? 2 : 1;
  const points = samplePoints(panel, spread, spread);
  for (const point of points) {
    for (const direction of directions) {
      const end = scene.endOfRay(point, direction);
      counts[end] += 1;
      if (end !== 'ground') continue;
      ground.push(along(point, direction, -point[2] / direction[2]));
    }
  }
  const rays = points.length * directions.length;
  return {
    factors: {
      sky: counts.sky / rays,
      ground: counts.ground / rays,
      wall: counts.wall / rays,
      obstruction: counts.obstruction / rays,
    },
    horizonBand: openHorizonBand(scene, panel),
    groundPoints: everyFew(ground.sort((a, b) => outOf(scene, a) - outOf(scene, b))),
  };
}

const outOf = (scene: Scene, point: Vector): number => dot(point, scene.frame.out);

/** Ground points kept of each face: the shadow's edge moves over them in steps of three hundredths of the view. */
const GROUND_POINTS = 32;

/** An even choice out of a sorted list, from the middle of each part. */
function everyFew(points: readonly Vector[]): Vector[] {
  if (points.length <= GROUND_POINTS) return [...points];
  return Array.from({ length: GROUND_POINTS }, (_, i) => {
    return points[Math.floor(((i + 0.5) * points.length) / GROUND_POINTS)] as Vector;
  });
}

/** Share of the horizon before an upright face that is open, weighted with the cosine to its normal. */
function openHorizonBand(scene: Scene, panel: Panel): number {
  let open = 0;
  let all = 0;
  for (let i = 0; i < BAND_RAYS; i++) {
    const phi = (2 * Math.PI * (i + 0.5)) / BAND_RAYS;
    const direction: Vector = [Math.sin(phi) * BAND_COS, Math.cos(phi) * BAND_COS, BAND_SIN];
    const weight = direction[0] * panel.normal[0] + direction[1] * panel.normal[1];
    if (weight <= 0) continue;
    all += weight;
    if (scene.endOfRay(panel.centre, direction) === 'sky') open += weight;
  }
  return all > 0 ? open / all : 0;
}
