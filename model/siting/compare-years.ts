/** The walls of a site through the same year, held against each other. */
import type { Site } from '../site.ts';
import { evaluateYear } from './evaluate-year.ts';
import type { YearResult } from './year-result.ts';
import type { YearWeather } from './year-weather.ts';

export interface ComparedYear extends YearResult {
  /** Mean ageing of the electronics against that on the wall where they age slowest: 1 on that wall. */
  readonly ageingVersusBest: number;
}

export interface YearComparison {
  /** The wall on which the electronics age slowest, whatever speaks against it otherwise. */
  readonly bestWall: string;
  /** In the order of the site. */
  readonly walls: readonly ComparedYear[];
}

/**
 * Holds the years of several walls, in the same weather, against the one that ages slowest; the first of equals.
 * @throws RangeError for no years at all
 */
export function versusBest(years: readonly YearResult[]): YearComparison {
  const [first, ...others] = years;
  if (first === undefined) throw new RangeError('versusBest: there is no year');
  const best = others.reduce((a, b) => (b.ageingAgainst40C < a.ageingAgainst40C ? b : a), first);
  const walls = years.map((year) => ({ ...year, ageingVersusBest: year.ageingAgainst40C / best.ageingAgainst40C }));
  return { bestWall: best.wall, walls };
}

/**
 * Marches every wall of a site through a year of weather and holds the years against each other. Constraints are not asked:
 * a wall that ages slowest may be out of reach.
 * @throws what `evaluateYear` throws
 */
export function compareYears(site: Site, weather: YearWeather): YearComparison {
  return versusBest(site.walls.map(({ name }) => evaluateYear(site, name, weather)));
}
