/** The place where the device is, and what to say of it. */

export interface DevicePlace {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  /** Metres; above the ellipsoid or the sea, as the device has it. Null where it does not tell. */
  readonly altitudeM: number | null;
  readonly accuracyM: number;
}

/** Five decimals are a metre; more would pretend. */
const DECIMALS = 5;

/** An altitude that is less sure than this is left to the person, m: it moves the air pressure by one in a hundred. */
const ALTITUDE_WITHIN_M = 100;

export function placeFrom({ latitude, longitude, altitude, altitudeAccuracy, accuracy }: CoordinatesRead): DevicePlace {
  const sure = altitude !== null && (altitudeAccuracy === null || altitudeAccuracy <= ALTITUDE_WITHIN_M);
  return {
    latitudeDeg: Number(latitude.toFixed(DECIMALS)),
    longitudeDeg: Number(longitude.toFixed(DECIMALS)),
    altitudeM: sure ? Math.round(altitude) : null,
    accuracyM: accuracy,
  };
}

type CoordinatesRead = Pick<
  GeolocationCoordinates,
  'latitude' | 'longitude' | 'altitude' | 'altitudeAccuracy' | 'accuracy'
>;

export const NO_LOCATION =
  'The browser gives the location only to pages served over HTTPS, or has none to give. Type the coordinates.';

/** Codes of the W3C's Geolocation specification. */
const WHY: Readonly<Record<number, string>> = {
  1: 'The browser was told not to give the location. Allow it in the settings of the page, or type the coordinates.',
  2: 'The device does not know where it is. Step outside and try again, or type the coordinates.',
  3: 'The device did not find its place in time. Step outside and try again, or type the coordinates.',
};

export function whyNot(code: number): string {
  return WHY[code] ?? (WHY[2] as string);
}
