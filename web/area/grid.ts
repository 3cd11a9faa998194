/** A grid as it is typed: corners, step, and how many points that makes. */
import type { Grid } from './api.ts';

export const MOST_POINTS = 5_000_000;

export type GridText = Readonly<Record<keyof Grid, string>>;

export interface ReadGrid {
  /** Null where something is missing or wrong. */
  readonly grid: Grid | null;
  readonly points: number;
  /** What is wrong, by field; what is merely empty is not. */
  readonly problems: Readonly<Partial<Record<keyof Grid, string>>>;
}

const RANGES: Record<keyof Grid, { readonly most: number; readonly least: number; readonly allowed: string }> = {
  south: { least: -90, most: 90, allowed: '−90 to 90°' },
  west: { least: -180, most: 180, allowed: '−180 to 180°' },
  north: { least: -90, most: 90, allowed: '−90 to 90°' },
  east: { least: -180, most: 180, allowed: '−180 to 180°' },
  stepDeg: { least: 1e-6, most: 90, allowed: 'above 0 and up to 90°' },
};

const KEYS = Object.keys(RANGES) as (keyof Grid)[];

export function readGrid(text: GridText): ReadGrid {
  const problems: Partial<Record<keyof Grid, string>> = {};
  const values: Partial<Record<keyof Grid, number>> = {};
  for (const key of KEYS) {
    // Phones in many countries offer only the comma; a minus may be a real one.
    const typed = text[key].trim().replace(',', '.').replace('−', '-').replace(/\s*°$/, '');
    if (typed === '') continue;
    const value = Number(typed);
    const { least, most, allowed } = RANGES[key];
    if (Number.isFinite(value) && value >= least && value <= most) values[key] = value;
    else problems[key] = `a number is needed, ${allowed}`;
  }
  const { south, north } = values;
  if (south !== undefined && north !== undefined && south > north) problems.south = 'it lies north of the north';
  const whole = KEYS.every((key) => values[key] !== undefined) && Object.keys(problems).length === 0;
  if (!whole) return { grid: null, points: 0, problems };
  const grid = values as Grid;
  const points = gridSize(grid);
  if (points <= MOST_POINTS) return { grid, points, problems };
  return { grid: null, points, problems: { stepDeg: 'it makes more than 5 million points; take a wider step' } };
}

/** Points on the grid, edges included, as the server counts them. A west that lies east of the east crosses the 180th meridian. */
export function gridSize({ south, west, north, east, stepDeg }: Grid): number {
  const span = east >= west ? east - west : east - west + 360;
  const along = (deg: number) => Math.floor(deg / stepDeg + 1e-9) + 1;
  return along(span) * along(north - south);
}

/** A box from two corners that somebody pointed at, in hundredths of a degree; it goes the shorter way round. */
export function boxOfCorners(a: readonly [number, number], b: readonly [number, number]): Omit<Grid, 'stepDeg'> {
  const [[lonA, latA], [lonB, latB]] = [a, b];
  const [low, high] = lonA < lonB ? [lonA, lonB] : [lonB, lonA];
  const [west, east] = high - low > 180 ? [high, low] : [low, high];
  return { south: tidy(Math.min(latA, latB)), west: tidy(west), north: tidy(Math.max(latA, latB)), east: tidy(east) };
}

const tidy = (deg: number): number => Number(deg.toFixed(2));

const STEPS_DEG = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20];
const USUAL_POINTS = 400;

/** The finest round step that makes no more than some hundred points of a box. */
export function usualStepDeg(box: Omit<Grid, 'stepDeg'>): number {
  return STEPS_DEG.find((stepDeg) => gridSize({ ...box, stepDeg }) <= USUAL_POINTS) ?? 20;
}
