/**
 * From the sky onto a plane. The diffuse sky has three parts after Perez: an even dome, a glow round the sun and a band
 * at the horizon. They are kept apart because shade treats each differently.
 */
import { cosDeg, radians, sinDeg } from './angles.ts';
import { relativeAirMass } from './atmosphere.ts';
import { extraterrestrialNormal } from './extraterrestrial.ts';
import type { SunPosition } from './sun-position.ts';

/** Perez et al. 1990, Solar Energy 44(5):271-289, Table 6 (all sites): F11 F12 F13 F21 F22 F23, a row for each sky. */
const PEREZ_COEFFICIENTS: readonly (readonly [number, number, number, number, number, number])[] = [
  [-0.008, 0.588, -0.062, -0.06, 0.072, -0.022],
  [0.13, 0.683, -0.151, -0.019, 0.066, -0.029],
  [0.33, 0.487, -0.221, 0.055, -0.064, -0.026],
  [0.568, 0.187, -0.295, 0.109, -0.152, -0.014],
  [0.873, -0.392, -0.362, 0.226, -0.462, 0.001],
  [1.132, -1.237, -0.412, 0.288, -0.823, 0.056],
  [1.06, -1.6, -0.359, 0.264, -1.127, 0.131],
  [0.678, -0.327, -0.25, 0.156, -1.377, 0.251],
];

/** Upper edges of the sky-clearness bins, same table. */
const CLEARNESS_EDGES = [1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2];

const KAPPA = 1.041;
const COS_85 = cosDeg(85);

/** The diffuse sky taken apart, each part free of the plane it falls on, W/m2. */
export interface DiffuseSky {
  /** Horizontal irradiance of the even dome: a plane gets its sky view factor times this. */
  readonly isotropic: number;
  /** Circumsolar irradiance normal to the sun: a plane gets the cosine of incidence times this. */
  readonly circumsolarNormal: number;
  /** Horizon band: a plane gets the sine of its tilt times this. May be negative. */
  readonly horizon: number;
}

/**
 * Splits diffuse horizontal irradiance into dome, circumsolar and horizon parts.
 *
 * Source: Perez, Ineichen, Seals, Michalsky, Stewart 1990, as above, eq. 1 (clearness), 2 (brightness), 6 to 9.
 * @param extraterrestrialWm2 normal to the sun
 */
export function perezSky(input: {
  elevationDeg: number;
  dni: number;
  dhi: number;
  extraterrestrialWm2: number;
  relativeAirMass: number;
}): DiffuseSky {
  const { elevationDeg, dni, dhi } = input;
  if (dhi <= 0) return { isotropic: 0, circumsolarNormal: 0, horizon: 0 };
  // Twilight has no circumsolar glow to speak of: an even dome.
  if (elevationDeg <= 0) return { isotropic: dhi, circumsolarNormal: 0, horizon: 0 };
  const z = radians(90 - elevationDeg);
  const kz3 = KAPPA * z ** 3;
  const epsilon = ((dhi + dni) / dhi + kz3) / (1 + kz3);
  const delta = (dhi * input.relativeAirMass) / input.extraterrestrialWm2;
  const bin = CLEARNESS_EDGES.findIndex((edge) => epsilon < edge);
  const row = PEREZ_COEFFICIENTS[bin < 0 ? CLEARNESS_EDGES.length : bin];
  if (row === undefined) throw new RangeError(`perezSky: no sky for a clearness of ${epsilon}`);
  const [f11, f12, f13, f21, f22, f23] = row;
  // The paper holds F1 to 0; above 1 the dome would be negative, which skies brighter than any measured one would give.
  const f1 = Math.min(1, Math.max(0, f11 + f12 * delta + f13 * z));
  const f2 = f21 + f22 * delta + f23 * z;
  return {
    isotropic: dhi * (1 - f1),
    circumsolarNormal: (dhi * f1) / Math.max(COS_85, Math.cos(z)),
    horizon: dhi * f2,
  };
}

/**
 * Cosine of the angle between the sun and the normal of a plane; negative when the sun is behind it. Any tilt (0 faces up) and
 * azimuth, degrees. Source: Duffie and Beckman, Solar Engineering of Thermal Processes, eq. 1.6.3, in elevation and azimuth.
 */
export function cosIncidence(sun: SunPosition, tiltDeg: number, azimuthDeg: number): number {
  return (
    sinDeg(sun.elevationDeg) * cosDeg(tiltDeg) +
    cosDeg(sun.elevationDeg) * sinDeg(tiltDeg) * cosDeg(sun.azimuthDeg - azimuthDeg)
  );
}

/** Irradiance on a plane, part by part, W/m2. */
export interface PlaneIrradiance {
  readonly beam: number;
  readonly circumsolar: number;
  readonly isotropic: number;
  readonly horizon: number;
  readonly ground: number;
  readonly total: number;
}

/**
 * Irradiance on an unshaded plane, W/m2: beam, the three diffuse parts of Perez 1990, and reflection from a level ground
 * of the given albedo (isotropic, Liu and Jordan 1963).
 * @param tiltDeg 0 faces up, 90 is a wall, 180 faces down
 * @param azimuthDeg direction the plane faces, clockwise from true north
 */
export function irradianceOnPlane(input: {
  utc: Date;
  sun: SunPosition;
  dni: number;
  dhi: number;
  ghi: number;
  tiltDeg: number;
  azimuthDeg: number;
  albedo: number;
}): PlaneIrradiance {
  const { utc, sun, dni, dhi, ghi, tiltDeg, azimuthDeg, albedo } = input;
  const sky = perezSky({
    elevationDeg: sun.elevationDeg,
    dni,
    dhi,
    extraterrestrialWm2: extraterrestrialNormal(utc),
    relativeAirMass: relativeAirMass(sun.elevationDeg),
  });
  const incidence = sun.elevationDeg > 0 ? Math.max(0, cosIncidence(sun, tiltDeg, azimuthDeg)) : 0;
  const cosTilt = cosDeg(tiltDeg);
  const beam = dni * incidence;
  const circumsolar = sky.circumsolarNormal * incidence;
  const isotropic = (sky.isotropic * (1 + cosTilt)) / 2;
  const horizon = sky.horizon * sinDeg(tiltDeg);
  const ground = (ghi * albedo * (1 - cosTilt)) / 2;
  // The horizon part can be negative under an overcast sky; the diffuse sky as a whole cannot.
  const diffuse = Math.max(0, circumsolar + isotropic + horizon);
  return { beam, circumsolar, isotropic, horizon, ground, total: beam + diffuse + ground };
}
