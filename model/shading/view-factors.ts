/**
 * How much of what a face sees is sky, ground, its own wall or an obstruction. Found once for each face by sending rays
 * over the hemisphere, denser where the face looks straighter (Nusselt's unit sphere), so that every ray counts the same.
 */

import { type GroundPoints, groundPoints } from './ground-shadow.ts';
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
  readonly groundPoints: GroundPoints;
  /** Share of the sky dome that is open above that ground, 0 to 1. */
  readonly groundSky: number;
}

/** Rays over the hemisphere from each sample point: rings by directions in a quarter of the circle. */
const COARSE = { rings: 12, quarter: 12 };
const FINE = { rings: 24, quarter: 24 };

/** The golden section: rings turned against each other by it have no edge in common. */
const GOLDEN = 0.618034;

/**
 * Directions over a hemisphere about the third axis, each standing for an equal share of the view. The four quarters
 * mirror each other, so that a mirrored scene has mirrored views to the last digit.
 */
function hemisphere({ rings, quarter }: typeof COARSE): Vector[] {
  const directions: Vector[] = [];
  for (let ring = 0; ring < rings; ring++) {
    const radius = Math.sqrt((ring + 0.5) / rings);
    const up = Math.sqrt(1 - radius ** 2);
    for (let step = 0; step < quarter; step++) {
      const phi = ((step + ((ring * GOLDEN + 0.5) % 1)) / quarter) * (Math.PI / 2);
      const [x, y] = [radius * Math.cos(phi), radius * Math.sin(phi)];
      directions.push([x, y, up], [-x, y, up], [-x, -y, up], [x, -y, up]);
    }
  }
  return directions;
}

const COARSE_HEMISPHERE = hemisphere(COARSE);
const FINE_HEMISPHERE = hemisphere(FINE);

/** Middle of Perez's horizon band, degrees: the paper's band is 6.5 degrees high at its widest. */
const BAND_SIN = Math.sin((3 * Math.PI) / 180);
const BAND_COS = Math.sqrt(1 - BAND_SIN ** 2);
const BAND_RAYS = 180;

const unit = (v: Vector): Vector => {
  const length = Math.sqrt(dot(v, v));
  return [v[0] / length, v[1] / length, v[2] / length];
};

/** The hemisphere turned to where a panel looks. */
function directionsFrom(panel: Panel, hemisphere: readonly Vector[]): Vector[] {
  const [ae, an, au] = unit(panel.halfAcross);
  const [be, bn, bu] = unit(panel.halfAlong);
  const [ne, nn, nu] = panel.normal;
  return hemisphere.map(
    ([x, y, z]): Vector => [ae * x + be * y + ne * z, an * x + bn * y + nn * z, au * x + bu * y + nu * z],
  );
}

/** Views from a panel: from its middle, or averaged over points of it where something near can hide part of the sky. */
export function faceView(scene: Scene, panel: Panel): FaceView {
  const directions = directionsFrom(panel, scene.hasObstructions ? FINE_HEMISPHERE : COARSE_HEMISPHERE);
  const counts: ViewFactors = { sky: 0, ground: 0, wall: 0, obstruction: 0 };
  const ground: Vector[] = [];
  const spread = scene.hasObstructions ? 2 : 1;
  const points = samplePoints(panel, spread, spread);
  for (const point of points) {
    for (const direction of directions) {
      const { end, through } = scene.trace(point, direction);
      counts[end] += through;
      counts.obstruction += 1 - through;
      if (end !== 'ground') continue;
      ground.push(along(point, direction, -point[2] / direction[2]));
    }
  }
  const rays = points.length * directions.length;
  const groundSeen = evenlyByDistance(ground, scene);
  return {
    factors: {
      sky: counts.sky / rays,
      ground: counts.ground / rays,
      wall: counts.wall / rays,
      obstruction: counts.obstruction / rays,
    },
    horizonBand: openHorizonBand(scene, panel),
    groundPoints: groundPoints(groundSeen.map(scene.inWall)),
    groundSky: openSkyAbove(scene, groundSeen),
  };
}

/** Ground points kept of each face: the shadow's edge moves over them in steps of three hundredths of the view. */
const GROUND_POINTS = 32;

/** An even choice of points by their distance from the wall, from the middle of each part. */
function evenlyByDistance(points: readonly Vector[], scene: Scene): Vector[] {
  const sorted = points.map((point) => ({ point, out: dot(point, scene.frame.out) })).sort((a, b) => a.out - b.out);
  const kept = Math.min(GROUND_POINTS, sorted.length);
  return Array.from({ length: kept }, (_, i) => {
    return (sorted[Math.floor(((i + 0.5) * sorted.length) / kept)] as (typeof sorted)[number]).point;
  });
}

/** One in this many ground points is asked for its sky: the dome above them changes slowly. */
const SKY_EVERY = 4;

/** One in this many directions of the hemisphere is enough for that; odd, so that it goes through all of its azimuths. */
const SKY_DIRECTIONS_EVERY = 5;

/** Mean share of the sky dome that level ground at the points sees, over building, eave and skyline. */
function openSkyAbove(scene: Scene, points: readonly Vector[]): number {
  let open = 0;
  let all = 0;
  for (let p = SKY_EVERY >> 1; p < points.length; p += SKY_EVERY) {
    for (let d = 0; d < COARSE_HEMISPHERE.length; d += SKY_DIRECTIONS_EVERY) {
      all += 1;
      const { end, through } = scene.trace(points[p] as Vector, COARSE_HEMISPHERE[d] as Vector);
      if (end === 'sky') open += through;
    }
  }
  return all > 0 ? open / all : 0;
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
    const { end, through } = scene.trace(panel.centre, direction);
    if (end === 'sky') open += weight * through;
  }
  return all > 0 ? open / all : 0;
}
