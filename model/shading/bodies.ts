/**
 * What stands in the way of rays, in the coordinates of a wall: metres to the right of the box as one faces the wall,
 * out from the wall, and up from the ground. In them eaves, fences, side walls and blocks are boxes with straight sides;
 * the other walls of a building stand at any angle.
 */

/** Right, out, up. */
export type WallPoint = readonly [right: number, out: number, up: number];

/** A body by the straight sides that hold it, which may be flat. */
export interface Body {
  readonly low: WallPoint;
  readonly high: WallPoint;
  /**
   * A box fills its sides, a crown is the ellipsoid within them, an upright sheet stands on one of the two diagonals of
   * their floor: `falling` from the left far from the wall to the right near it, `rising` the other way.
   */
  readonly shape: 'box' | 'crown' | 'risingSheet' | 'fallingSheet';
  /** Share of the light that goes through, 0 to 1. */
  readonly transmittance: number;
}

/** Rays that graze a body by less than this count as missing it, m. */
const GRAZING_M = 1e-9;

/** Whether the half-line from `from` along `towards` meets a body before `reach` of its steps. */
export function meets(body: Body, from: WallPoint, towards: WallPoint, reach: number): boolean {
  return enters(body, from, towards) < reach;
}

function enters(body: Body, from: WallPoint, towards: WallPoint): number {
  if (body.shape === 'box') return entersSides(body, from, towards);
  return body.shape === 'crown' ? entersEllipsoid(body, from, towards) : crossesSheet(body, from, towards);
}

/** Steps to an upright sheet; infinite for a miss. */
function crossesSheet({ low, high, shape }: Body, from: WallPoint, towards: WallPoint): number {
  const right = high[0] - low[0];
  const out = shape === 'risingSheet' ? high[1] - low[1] : low[1] - high[1];
  const startOut = shape === 'risingSheet' ? low[1] : high[1];
  const across = towards[0] * out - towards[1] * right;
  if (Math.abs(across) < 1e-12) return Number.POSITIVE_INFINITY;
  const steps = ((low[0] - from[0]) * out - (startOut - from[1]) * right) / across;
  if (steps < 0) return Number.POSITIVE_INFINITY;
  const upM = from[2] + steps * towards[2];
  if (upM < low[2] - GRAZING_M || upM > high[2] + GRAZING_M) return Number.POSITIVE_INFINITY;
  const atRight = from[0] + steps * towards[0] - low[0];
  const atOut = from[1] + steps * towards[1] - startOut;
  const along = (atRight * right + atOut * out) / (right * right + out * out);
  return along >= 0 && along <= 1 ? steps : Number.POSITIVE_INFINITY;
}

/** Steps to the first point within straight sides; infinite for a miss. */
function entersSides({ low, high }: Body, from: WallPoint, towards: WallPoint): number {
  let enter = 0;
  let leave = Number.POSITIVE_INFINITY;
  for (let axis = 0; axis < 3; axis++) {
    const start = from[axis] as number;
    const step = towards[axis] as number;
    const a = low[axis] as number;
    const b = high[axis] as number;
    if (Math.abs(step) < 1e-12) {
      if (start < a - GRAZING_M || start > b + GRAZING_M) return Number.POSITIVE_INFINITY;
      continue;
    }
    const near = ((step > 0 ? a : b) - start) / step;
    const far = ((step > 0 ? b : a) - start) / step;
    if (near > enter) enter = near;
    if (far < leave) leave = far;
  }
  return enter <= leave + GRAZING_M ? enter : Number.POSITIVE_INFINITY;
}

/** Steps to the first point within the ellipsoid that fills the sides; infinite for a miss. */
function entersEllipsoid({ low, high }: Body, from: WallPoint, towards: WallPoint): number {
  let aa = 0;
  let ab = 0;
  let bb = -1;
  for (let axis = 0; axis < 3; axis++) {
    const radius = ((high[axis] as number) - (low[axis] as number)) / 2;
    const start = ((from[axis] as number) - ((high[axis] as number) + (low[axis] as number)) / 2) / radius;
    const step = (towards[axis] as number) / radius;
    aa += step * step;
    ab += start * step;
    bb += start * start;
  }
  if (bb <= 0) return 0;
  const discriminant = ab * ab - aa * bb;
  if (discriminant <= 0 || ab > 0) return Number.POSITIVE_INFINITY;
  return (-ab - Math.sqrt(discriminant)) / aa;
}
