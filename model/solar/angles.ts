const RAD = Math.PI / 180;

/** Degrees to radians. */
export const radians = (deg: number): number => deg * RAD;

/** Radians to degrees. */
export const degrees = (rad: number): number => rad / RAD;

/** Sine of an angle in degrees. */
export const sinDeg = (deg: number): number => Math.sin(deg * RAD);

/** Cosine of an angle in degrees. */
export const cosDeg = (deg: number): number => Math.cos(deg * RAD);
