/** How a box fares on one wall through a year of weather. */
import type { Site } from '../site.ts';
import { marchYear } from './march-year.ts';
import { namedWall } from './named-wall.ts';
import { type YearResult, yearResult } from './year-result.ts';
import { type YearWeather, yearCalendar } from './year-weather.ts';

export interface YearOptions {
  /** Whether the box in full shade is marched, too, for `ageingFactor`; true where left out. */
  readonly shadeReference?: boolean;
}

/**
 * Marches one wall of a site through a year of weather.
 * @throws SiteError when the site has no wall of that name; RangeError for weather whose rows do not fill days
 */
export function evaluateYear(
  site: Site,
  wallName: string,
  weather: YearWeather,
  options: YearOptions = {},
): YearResult {
  const wall = namedWall(site, wallName);
  const calendar = yearCalendar(site, weather);
  const tally = marchYear(site, wall, calendar, false);
  const shaded = (options.shadeReference ?? true) ? marchYear(site, wall, calendar, true) : null;
  return yearResult(wall, calendar, tally, shaded?.ageing ?? null);
}
