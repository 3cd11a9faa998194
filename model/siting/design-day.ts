/** The design day of a site, step by step: sun, weather and sky, shared by all of its walls. */
import { type CivilDay, civilDay } from '../civil-day.ts';
import { type DesignClimate, designClimate, type Weather } from '../climate/design-climate.ts';
import type { Site } from '../site.ts';
import { problem, SiteError } from '../site-error.ts';
import { pressureAtAltitude, relativeAirMass } from '../solar/atmosphere.ts';
import { apparentSolarHour, equationOfTimeMin, extraterrestrialNormal } from '../solar/extraterrestrial.ts';
import { type SunPosition, sunPosition } from '../solar/sun-position.ts';
import { type DiffuseSky, perezSky } from '../solar/transposition.ts';
import type { FilmAir } from '../thermal/air.ts';
import { filmAirTable } from '../thermal/film-air.ts';
import { type ShadeMemory, shadeMemory } from './wall-shade.ts';

export interface DayStep {
  readonly utc: Date;
  readonly sun: SunPosition;
  readonly relativeAirMass: number;
  /** Apparent solar time, hours. */
  readonly solarHour: number;
  readonly weather: Weather;
  readonly sky: DiffuseSky;
}

export interface SiteDay {
  readonly civil: CivilDay;
  readonly climate: DesignClimate;
  readonly stepS: number;
  readonly steps: readonly DayStep[];
  /** Air at the pressure of the place, shared by its walls; one march at a time. */
  readonly film: FilmAir;
  /** Of walls at this place, on this day and others. */
  readonly shades: ShadeMemory;
}

/** Longest and usual time step, seconds. */
const LONGEST_STEP_S = 300;

export interface SiteDayOptions {
  /** Seconds, at most 300, a whole number of them in the civil day; 300 or a little less where left out. */
  readonly stepS?: number | undefined;
  /** A day of the same place and date, whose suns are taken over. */
  readonly like?: SiteDay;
  /** Shades prepared for other days, or for the site as it was before. */
  readonly shades?: ShadeMemory | undefined;
}

/**
 * Works out a site's design day.
 * @throws RangeError for a step that does not fit; SiteError where the date does not exist at the place
 */
export function siteDay(
  site: Site,
  { stepS, like, shades = like?.shades ?? shadeMemory() }: SiteDayOptions = {},
): SiteDay {
  const climate = designClimate(site);
  const civil = like?.civil ?? existingDay(climate.date, site.place.timeZone);
  const count = stepCount(civil.hours * 3600, stepS);
  const { latitudeDeg, longitudeDeg } = site.place;
  // The sun's distance and the equation of time are those of noon all day: they move by less than 0.04 % and 0.5 minutes.
  const noon = noonOf(civil);
  const extraterrestrialWm2 = extraterrestrialNormal(noon);
  const equationMin = equationOfTimeMin(noon);
  const steps = Array.from({ length: count }, (_, k): DayStep => {
    const known = like?.steps[k];
    const utc = known?.utc ?? new Date(civil.startUtc.getTime() + (k * civil.hours * 3_600_000) / count);
    const sun = known?.sun ?? sunPosition(utc, latitudeDeg, longitudeDeg);
    const airMass = known?.relativeAirMass ?? relativeAirMass(sun.elevationDeg);
    const solarHour = known?.solarHour ?? apparentSolarHour(utc, longitudeDeg, equationMin);
    const weather = climate.at({ sun, solarHour, relativeAirMass: airMass, extraterrestrialWm2 });
    const { elevationDeg } = sun;
    const { dni, dhi } = weather;
    const sky = perezSky({ elevationDeg, dni, dhi, extraterrestrialWm2, relativeAirMass: airMass });
    return { utc, sun, relativeAirMass: airMass, solarHour, weather, sky };
  });
  const film = like?.film ?? filmAirTable(pressureAtAltitude(site.place.altitudeM));
  return { civil, climate, stepS: (civil.hours * 3600) / count, steps, film, shades };
}

/** The middle of a civil day. */
export const noonOf = ({ startUtc, hours }: CivilDay): Date => new Date(startUtc.getTime() + hours * 1_800_000);

/** Steps of a day; some zones changed their clocks by odd seconds, so that not every day holds whole five minutes. */
function stepCount(dayS: number, stepS: number | undefined): number {
  if (stepS === undefined) return Math.ceil(dayS / LONGEST_STEP_S);
  const count = dayS / stepS;
  if (stepS > 0 && stepS <= LONGEST_STEP_S && Number.isInteger(count)) return count;
  throw new RangeError(`stepS: ${stepS} s; allowed: up to ${LONGEST_STEP_S} s, a whole number of them in the day`);
}

function existingDay(date: string, timeZone: string): CivilDay {
  try {
    return civilDay(date, timeZone);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new SiteError([problem('climate', date, error.message, 'a date that the place has')]);
  }
}
