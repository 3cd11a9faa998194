/**
 * Classes of margin for the map of a region: fewer than those of a year, each with a sign of its own, so that colour is not
 * needed. What is over the limit has corners and grows with the heat; what is below is round.
 */
import { toDisplay, type UnitSystem } from '../../model/index.ts';
import { marginWords } from '../site/year/margin-classes.ts';

export interface MarginBand {
  readonly words: string;
  /** Path of the sign round 0,0, px. */
  readonly d: string;
  readonly fill: string;
}

/** Borders in the displayed unit, room to the limit that decides positive. */
const EDGES: Record<UnitSystem, readonly number[]> = {
  metric: [-10, -5, 0, 5, 10],
  us: [-20, -10, 0, 10, 20],
};

const circle = (r: number): string => `M${-r} 0a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;

/** The colours are those of the year's map, where darker is hotter in grey, too. */
const SIGNS: readonly Omit<MarginBand, 'words'>[] = [
  { d: 'M-6.5-6.5H6.5V6.5H-6.5Z', fill: '#000' },
  { d: 'M0-7.5 7.5 5.5H-7.5Z', fill: '#a63603' },
  { d: 'M0-7.5 6.5 0 0 7.5-6.5 0Z', fill: '#e8690b' },
  // A ring within a ring.
  { d: `${circle(6)}${circle(2)}`, fill: '#8fbfe0' },
  { d: circle(5), fill: '#b5d5ec' },
  { d: circle(3.5), fill: '#fafcff' },
  { d: 'M-6-3.5-3.5-6 0-2.5 3.5-6 6-3.5 2.5 0 6 3.5 3.5 6 0 2.5-3.5 6-6 3.5-2.5 0Z', fill: '#6a3d9a' },
];

/** Where no wall is permitted: after all others. */
export const NO_WALL = EDGES.metric.length + 1;

export function marginBands(units: UnitSystem): MarginBand[] {
  const words = [...marginWords(EDGES[units], units), 'no wall is permitted'];
  return SIGNS.map((sign, k) => ({ ...sign, words: words[k] ?? '' }));
}

/** Index of the class of a margin, K; the hottest is 0. */
export function bandOf(marginK: number | null, units: UnitSystem): number {
  if (marginK === null) return NO_WALL;
  const margin = toDisplay('temperatureDifference', marginK, units);
  return EDGES[units].filter((edge) => margin >= edge).length;
}

/** How many margins fall into each class. */
export function bandCounts(margins: readonly (number | null)[], units: UnitSystem): number[] {
  const bands = margins.map((margin) => bandOf(margin, units));
  return SIGNS.map((_, k) => bands.filter((band) => band === k).length);
}
