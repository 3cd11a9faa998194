/** From the north of a compass to true north, with the World Magnetic Model. */
import { bearingTenths } from '../../../model/index.ts';

export interface Declination {
  /** Degrees that magnetic north lies east of true north; west: negative. */
  readonly declinationDeg: number;
  /** What it comes from: "WMM-2025". */
  readonly origin: string;
  /** Whether the horizontal field is so weak that a compass can hardly be relied on. */
  readonly weak: boolean;
}

export interface MagneticPlace {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly altitudeM: number;
}

/** Below this horizontal intensity the World Magnetic Model's report warns of compasses, nT (caution zone; value from memory). */
const WEAK_FIELD_NT = 6000;

/**
 * The declination at a place on a day. The model comes when it is first needed.
 * @throws Error for a day that no model on the page covers, or when the model cannot be loaded
 */
export async function declinationAt(
  { latitudeDeg, longitudeDeg, altitudeM }: MagneticPlace,
  date: Date,
): Promise<Declination> {
  const loaded = await import('./magnetic-model.ts').catch(() => null);
  if (loaded === null) {
    throw new Error(
      'The magnetic model could not be loaded. Enter the bearing from true north, or try again when connected.',
    );
  }
  const model = loaded.modelOf(date);
  if (model === null) {
    throw new Error(
      'The magnetic model of this page does not cover the present date. Enter the bearing from true north.',
    );
  }
  const { decl, h } = model.point([latitudeDeg, longitudeDeg, altitudeM / 1000]);
  return { declinationDeg: decl, origin: model.name, weak: h < WEAK_FIELD_NT };
}

/** A magnetic bearing counted from true north, to the tenth of a degree, 0 to below 360. */
export function trueBearing(magneticDeg: number, declinationDeg: number): number {
  return bearingTenths(magneticDeg + declinationDeg);
}

/** "magnetic 10°, declination +11.2°, true 21.2°" */
export function conversionText(magneticDeg: number, declinationDeg: number): string {
  const shown = Math.abs(declinationDeg).toFixed(1);
  const signed = shown === '0.0' ? shown : `${declinationDeg > 0 ? '+' : '−'}${shown}`;
  const degrees = (value: number) => Number(value.toFixed(1));
  return `magnetic ${degrees(magneticDeg)}°, declination ${signed}°, true ${degrees(trueBearing(magneticDeg, declinationDeg))}°`;
}
