/**
 * How much of what a face sees is sky, ground, its own wall or an obstruction. Found once for each face by sending rays
 * over the hemisphere, denser where the face looks straighter, so that every ray counts the same.
 */

import type { WallPoint } from './bodies.ts';
import { GOLDEN } from './golden.ts';
import { type GroundPoints, groundPoints } from './ground-shadow.ts';
import type { RayEnd, Scene } from './scene.ts';
import type { Vector } from './vector.ts';
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

/** The view of a face that looks at its wall and nothing else. */
export const WALL_ONLY: FaceView = {
  factors: { sky: 0, ground: 0, wall: 1, obstruction: 0 },
  horizonBand: 0,
  groundPoints: groundPoints([]),
  groundSky: 0,
};

/** Rays over a quarter of the hemisphere from each sample point: before a bare wall, and where something stands. */
const COARSE_RAYS = 90;
const FINE_RAYS = 900;

/**
 * Directions over a hemisphere about the third axis, each standing for an equal share of the view. Measured by the angle a
 * to the plane of the second and third axis and, within it, by the profile angle p, a view counts as cos^2(a) da cos(p) dp:
 * even steps of sin(p) and of a + sin(a) cos(a) are even shares of it, and a long edge along the first axis, an eave or
 * the top of a fence, is a straight line at one p. The four quarters mirror each other, so that a mirrored scene has
 * mirrored views to the last digit.
 * @param shift of the pattern, a share of its finest step
 */
function hemisphere(quarter: number, shift = 0.5): WallPoint[] {
  return Array.from({ length: quarter }, (_, k): WallPoint[] => {
    const a = angleOfShare((k * GOLDEN + shift) % 1);
    const sinP = (k + shift) / quarter;
    const [x, y, up] = [Math.sin(a), Math.cos(a) * sinP, Math.cos(a) * Math.sqrt(1 - sinP ** 2)];
    return [
      [x, y, up],
      [-x, y, up],
      [-x, -y, up],
      [x, -y, up],
    ];
  }).flat();
}

/** The angle within which a share of the view lies: a + sin(a) cos(a) = share * pi / 2, by bisection. */
function angleOfShare(share: number): number {
  let [low, high] = [0, Math.PI / 2];
  for (let halving = 0; halving < 50; halving++) {
    const middle = (low + high) / 2;
    if (middle + Math.sin(middle) * Math.cos(middle) < (share * Math.PI) / 2) low = middle;
    else high = middle;
  }
  return low;
}

const COARSE_HEMISPHERE = hemisphere(COARSE_RAYS);

/** Points one above the other look in directions between each other's; those side by side mirror each other. */
const FINE_HEMISPHERES = [hemisphere(FINE_RAYS, 0.25), hemisphere(FINE_RAYS, 0.75)];

/** Middle of Perez's horizon band, degrees: the paper's band is 6.5 degrees high at its widest. */
const BAND_SIN = Math.sin((3 * Math.PI) / 180);
const BAND_COS = Math.sqrt(1 - BAND_SIN ** 2);
const BAND_RAYS = 180;

/** A panel in the coordinates of the wall. */
function inWall(panel: Panel, scene: Scene) {
  const unit = (v: Vector): WallPoint => {
    const [x, y, z] = scene.inWall(v);
    const length = Math.hypot(x, y, z);
    return [x / length, y / length, z / length];
  };
  const spread = scene.hasObstructions ? 2 : 1;
  return {
    points: samplePoints(panel, spread, spread).map(scene.inWall),
    centre: scene.inWall(panel.centre),
    normal: scene.inWall(panel.normal),
    across: unit(panel.halfAcross),
    upwards: unit(panel.halfAlong),
  };
}

/** Views from a panel: from its middle, or averaged over points of it where something near can hide part of the sky. */
export function faceView(scene: Scene, panel: Panel): FaceView {
  const { points, centre, normal, across, upwards } = inWall(panel, scene);
  const hemispheres = scene.hasObstructions ? FINE_HEMISPHERES : [COARSE_HEMISPHERE];
  const counts: ViewFactors = { sky: 0, ground: 0, wall: 0, obstruction: 0 };
  const ground: SeenGround[] = [];
  let rays = 0;
  for (const [index, point] of points.entries()) {
    const directions = hemispheres[index % hemispheres.length] as WallPoint[];
    rays += directions.length;
    for (const [x, y, z] of directions) {
      const direction: WallPoint = [
        across[0] * x + upwards[0] * y + normal[0] * z,
        across[1] * x + upwards[1] * y + normal[1] * z,
        across[2] * x + upwards[2] * y + normal[2] * z,
      ];
      const { end, through } = scene.trace(point, direction);
      counts[end] += through;
      counts.obstruction += 1 - through;
      if (end !== 'ground' || through === 0) continue;
      const steps = -point[2] / direction[2];
      ground.push({ point: [point[0] + steps * direction[0], point[1] + steps * direction[1], 0], share: through });
    }
  }
  const seen = evenlyByDistance(ground);
  return {
    factors: {
      sky: counts.sky / rays,
      ground: counts.ground / rays,
      wall: counts.wall / rays,
      obstruction: counts.obstruction / rays,
    },
    horizonBand: openHorizonBand(scene, centre, normal),
    groundPoints: groundPoints(seen),
    groundSky: openSkyAbove(scene, seen),
  };
}

/** A point of the ground, and the share of its light that gets to the face. */
interface SeenGround {
  readonly point: WallPoint;
  readonly share: number;
}

/** Ground points kept of each face: the shadow's edge moves over them in steps of four hundredths of the view. */
const GROUND_POINTS = 24;

/** An even choice of points by their distance from the wall, from the middle of each equal part of the view. */
function evenlyByDistance(ground: readonly SeenGround[]): WallPoint[] {
  const sorted = [...ground].sort((a, b) => a.point[1] - b.point[1]);
  const total = sorted.reduce((sum, { share }) => sum + share, 0);
  const kept = Math.min(GROUND_POINTS, sorted.length);
  const chosen: WallPoint[] = [];
  let passed = 0;
  for (const { point, share } of sorted) {
    passed += share;
    while (chosen.length < kept && passed * kept > (chosen.length + 0.5) * total) chosen.push(point);
  }
  return chosen;
}

/** One in this many ground points is asked for its sky: the dome above them changes slowly. */
const SKY_EVERY = 4;

/** One in this many directions of the hemisphere is enough for that; odd, so that it goes through all four quarters. */
const SKY_DIRECTIONS_EVERY = 5;

/** Mean share of the sky dome that level ground at the points sees, over building, eave and skyline. */
function openSkyAbove(scene: Scene, points: readonly WallPoint[]): number {
  let open = 0;
  let all = 0;
  for (let p = SKY_EVERY >> 1; p < points.length; p += SKY_EVERY) {
    for (let d = 0; d < COARSE_HEMISPHERE.length; d += SKY_DIRECTIONS_EVERY) {
      all += 1;
      const { end, through } = scene.trace(points[p] as WallPoint, COARSE_HEMISPHERE[d] as WallPoint);
      if (end === 'sky') open += through;
    }
  }
  return all > 0 ? open / all : 0;
}

/** Share of the horizon before an upright face that is open, weighted with the cosine to its normal. */
function openHorizonBand(scene: Scene, centre: WallPoint, normal: WallPoint): number {
  let open = 0;
  let all = 0;
  for (let i = 0; i < BAND_RAYS; i++) {
    const phi = (2 * Math.PI * (i + 0.5)) / BAND_RAYS;
    const direction: WallPoint = [Math.sin(phi) * BAND_COS, Math.cos(phi) * BAND_COS, BAND_SIN];
    const weight = direction[0] * normal[0] + direction[1] * normal[1];
    if (weight <= 0) continue;
    all += weight;
    const { end, through } = scene.trace(centre, direction);
    if (end === 'sky') open += weight * through;
  }
  return all > 0 ? open / all : 0;
}
