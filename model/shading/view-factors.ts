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
  /** Distances from the wall at which the face sees the ground, m, ascending: each stands for an equal part of that view. */
  readonly groundOutM: Float64Array;
}

/** Rays over the hemisphere from each sample point: rings by azimuths. Even numbers keep mirror pairs together. */
const RINGS = 12;
const AZIMUTHS = 48;

/** Middle of Perez's horizon band, degrees: the paper's band is 6.5 degrees high at its widest. */
const BAND_SIN = Math.sin((3 * Math.PI) / 180);
const BAND_COS = Math.sqrt(1 - BAND_SIN ** 2);
const BAND_RAYS = 360;

/** Unit vectors spanning the plane of a panel. */
function spanOf(panel: Panel): { normal: Vector; a: Vector; b: Vector } {
  const unit = (v: Vector): Vector => {
    const length = Math.sqrt(dot(v, v));
    return [v[0] / length, v[1] / length, v[2] / length];
  };
  return { normal: panel.normal, a: unit(panel.halfAcross), b: unit(panel.halfAlong) };
}

/** Views from a panel, averaged over `across` by `alongCount` points of it. */
export function faceView(scene: Scene, panel: Panel, across = 2, alongCount = 2): FaceView {
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
  const groundOut: number[] = [];
  const points = samplePoints(panel, across, alongCount);
  for (const point of points) {
    for (const direction of directions) {
      const end = scene.endOfRay(point, direction);
      counts[end] += 1;
      if (end !== 'ground') continue;
      const steps = -point[2] / direction[2];
      groundOut.push(Math.max(0, dot(point, scene.frame.out) + steps * dot(direction, scene.frame.out)));
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
    groundOutM: Float64Array.from(groundOut).sort(),
  };
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
