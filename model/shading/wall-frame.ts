/**
 * Where the box stands before its wall, in local east-north-up coordinates. The origin lies on the ground at the foot of
 * the wall, straight below the middle of the box.
 */
import type { Mount, PerFace } from '../faces.ts';
import { cosDeg, sinDeg } from '../solar/angles.ts';
import { along, dot, type Vector } from './vector.ts';

/** The directions of a wall: out of it, to the right of a person who faces it, and up. */
export interface WallFrame {
  readonly out: Vector;
  readonly right: Vector;
  readonly up: Vector;
}

/** A flat rectangle with a normal; `across` and `along` span it, their lengths are its half sides. */
export interface Panel {
  readonly centre: Vector;
  readonly normal: Vector;
  readonly halfAcross: Vector;
  readonly halfAlong: Vector;
}

/** Size and place of a box, m. */
export interface BoxPlacement {
  readonly widthM: number;
  readonly heightM: number;
  readonly depthM: number;
  readonly mountHeightM: number;
  readonly mount: Mount;
  /** From the wall to the back of a box that hangs on it. */
  readonly standOffM: number;
  /** From the wall to the back of a box on a post. */
  readonly postDistanceM: number;
}

/** From the wall to the back of the box, m. */
export function backOutM(box: Pick<BoxPlacement, 'mount' | 'standOffM' | 'postDistanceM'>): number {
  return box.mount === 'post' ? box.postDistanceM : box.standOffM;
}

const UP: Vector = [0, 0, 1];

/** The frame of a wall that faces `azimuthDeg`, clockwise from north. */
export function wallFrame(azimuthDeg: number): WallFrame {
  const out: Vector = [sinDeg(azimuthDeg), cosDeg(azimuthDeg), 0];
  return { out, right: [-out[1], out[0], 0], up: UP };
}

/** A point given by its distances along the wall, out of it, and above ground, m. */
export function pointOf(frame: WallFrame, place: { rightM: number; outM: number; upM: number }): Vector {
  return along(along([0, 0, place.upM], frame.right, place.rightM), frame.out, place.outM);
}

const scaled = (v: Vector, factor: number): Vector => [v[0] * factor, v[1] * factor, v[2] * factor];

/** The outer faces of the box as panels. */
export function boxPanels(frame: WallFrame, box: BoxPlacement): PerFace<Panel> {
  const { widthM: w, heightM: h, depthM: d } = box;
  const middle = pointOf(frame, { rightM: 0, outM: backOutM(box) + d / 2, upM: box.mountHeightM });
  const across = scaled(frame.right, w / 2);
  const out = scaled(frame.out, d / 2);
  const up = scaled(UP, h / 2);
  const left = scaled(frame.right, -1);
  return {
    front: { centre: along(middle, frame.out, d / 2), normal: frame.out, halfAcross: across, halfAlong: up },
    left: { centre: along(middle, left, w / 2), normal: left, halfAcross: out, halfAlong: up },
    right: { centre: along(middle, frame.right, w / 2), normal: frame.right, halfAcross: out, halfAlong: up },
    top: { centre: along(middle, UP, h / 2), normal: UP, halfAcross: across, halfAlong: out },
    bottom: { centre: along(middle, UP, -h / 2), normal: scaled(UP, -1), halfAcross: across, halfAlong: out },
    back: {
      centre: along(middle, frame.out, -d / 2),
      normal: scaled(frame.out, -1),
      halfAcross: across,
      halfAlong: up,
    },
  };
}

/**
 * The wall around the box as far as it warms with it: the box's outline, widened on each side by the larger of its sides,
 * as far as ground, top and ends of the wall allow.
 */
export function wallPanel(
  frame: WallFrame,
  box: BoxPlacement,
  wall: { readonly heightM: number; readonly leftEndM: number; readonly rightEndM: number },
): Panel {
  const margin = wallPatchMarginM(box);
  const left = Math.max(-box.widthM / 2 - margin, wall.leftEndM);
  const right = Math.min(box.widthM / 2 + margin, wall.rightEndM);
  const low = Math.max(0, Math.min(box.mountHeightM - box.heightM / 2 - margin, wall.heightM - margin));
  const high = Math.min(box.mountHeightM + box.heightM / 2 + margin, wall.heightM);
  return {
    centre: pointOf(frame, { rightM: (left + right) / 2, outM: 0, upM: (low + high) / 2 }),
    normal: frame.out,
    halfAcross: scaled(frame.right, (right - left) / 2),
    halfAlong: scaled(UP, (high - low) / 2),
  };
}

/** Area of a panel, m2. */
export function panelAreaM2({ halfAcross, halfAlong }: Panel): number {
  return 4 * Math.sqrt(dot(halfAcross, halfAcross) * dot(halfAlong, halfAlong));
}

/** How far the wall patch reaches beyond the box on each side, m. */
function wallPatchMarginM(box: BoxPlacement): number {
  return Math.max(box.widthM, box.heightM);
}

/** Area of each face, m2. */
export function faceAreasM2(box: BoxPlacement): PerFace<number> {
  const { widthM: w, heightM: h, depthM: d } = box;
  return { front: w * h, left: d * h, right: d * h, top: w * d, bottom: w * d, back: w * h };
}

/** Tilt of each face from horizontal, degrees: 0 faces up, 180 down. */
export const FACE_TILT_DEG: PerFace<number> = { front: 90, left: 90, right: 90, top: 0, bottom: 180, back: 90 };

/** Points spread evenly over a panel: `across` by `along` of them, at the middles of equal tiles. */
export function samplePoints(panel: Panel, across: number, alongCount: number): Vector[] {
  const points: Vector[] = [];
  for (let i = 0; i < across; i++) {
    for (let j = 0; j < alongCount; j++) {
      const u = (2 * i + 1) / across - 1;
      const v = (2 * j + 1) / alongCount - 1;
      points.push(along(along(panel.centre, panel.halfAcross, u), panel.halfAlong, v));
    }
  }
  return points;
}
