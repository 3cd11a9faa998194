/** A point (m) or a direction in local coordinates: east, north, up. */
export type Vector = readonly [east: number, north: number, up: number];

export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** `origin` plus `distance` steps of `direction`. */
export const along = (origin: Vector, direction: Vector, distance: number): Vector => [
  origin[0] + direction[0] * distance,
  origin[1] + direction[1] * distance,
  origin[2] + direction[2] * distance,
];
