/**
 * Classes of margin for the map of a year. Their colours, in year.css, go from pale blue to black: darker is hotter
 * also without hue, and blue against orange shows the limit to those who do not tell red from green.
 */
import { toDisplay, type UnitSystem, unitSymbol } from '../../../model/index.ts';

export interface MarginClass {
  /** Names the colour: `margin-0` is the hottest. */
  readonly name: string;
  readonly words: string;
}

/** Borders between the classes in the displayed unit, room to the upper limit positive. */
const EDGES: Record<UnitSystem, readonly number[]> = {
  metric: [-10, -5, -2, 0, 5, 10, 20, 30],
  us: [-20, -10, -4, 0, 10, 20, 40, 60],
};

/** Colder than the lower limit: a class of its own, after all others. */
const COLD = EDGES.metric.length + 1;

export function marginClasses(units: UnitSystem): MarginClass[] {
  return [...marginWords(EDGES[units], units), 'below the lower limit'].map((text, k) => ({
    name: `margin-${k}`,
    words: text,
  }));
}

/** What lies below, between and above borders in the displayed unit, zero being one of them. */
export function marginWords(edges: readonly number[], units: UnitSystem): string[] {
  const unit = unitSymbol('temperatureDifference', units);
  return Array.from({ length: edges.length + 1 }, (_, k) => {
    const [from, to] = [edges[k - 1], edges[k]];
    if (from === undefined) return `more than ${-(to as number)} ${unit} over the limit`;
    if (to === undefined) return `more than ${from} ${unit} below it`;
    if (to <= 0) return to === 0 ? `up to ${-from} ${unit} over` : `${-to} to ${-from} ${unit} over`;
    return from === 0 ? `up to ${to} ${unit} below the limit` : `${from} to ${to} ${unit} below`;
  });
}

/** Index of the class that a temperature falls into. */
export function marginClassOf(celsius: number, limits: { minC: number; maxC: number }, units: UnitSystem): number {
  if (celsius < limits.minC) return COLD;
  const margin = toDisplay('temperatureDifference', limits.maxC - celsius, units);
  return EDGES[units].filter((edge) => margin >= edge).length;
}
