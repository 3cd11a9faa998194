/** Which design climate a row is screened with, and how far that comes from. */
import {
  assumedClimate,
  CLIMATE_SAMPLES,
  distanceKm,
  type LocatedDay,
  lapsed,
  STANDARD_CYCLES,
} from '../../model/index.ts';
import type { ColumnKey } from './columns.ts';
import type { RowPlace } from './row-place.ts';

/** A weather file reduced to its design day. */
export interface Station {
  readonly name: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly altitudeM: number;
  readonly day: LocatedDay;
}

export interface ClimateSettings {
  /** A sample or cycle for every row that brings no climate of its own. */
  readonly named?: string | undefined;
  /** Weather files; the nearest one stands for a row. */
  readonly stations: readonly Station[];
}

/** Where the design climate of a row comes from. */
export type ClimateSource = 'columns' | 'named' | 'weather file' | 'assumed';

export interface ChosenClimate {
  /** For the site file. */
  readonly entry: Readonly<Record<string, unknown>>;
  readonly source: ClimateSource;
  readonly text: string;
  /** Of the weather file, km. */
  readonly distanceKm: number | null;
  /** Of the place, where the row says none. */
  readonly altitudeM?: number | undefined;
}

/** Dates of the design day where only temperatures are given: a month after the solstice, when the air is hottest. */
const HOTTEST_DATE = { north: '2026-07-21', south: '2026-01-21' } as const;

/** The row's own columns come first, then the sample it names, the one named for all, the nearest weather file, an assumption. */
export function chooseClimate(
  cell: (key: ColumnKey) => string | undefined,
  place: RowPlace,
  { named, stations }: ClimateSettings,
): ChosenClimate {
  // What is no number is refused with the rest of the row.
  const { latitudeDeg = 0, longitudeDeg = 0, altitudeM } = place;
  const maxC = cell('designMax');
  if (maxC !== undefined) {
    const date = cell('date') ?? (latitudeDeg < 0 ? HOTTEST_DATE.south : HOTTEST_DATE.north);
    const rest = { dailyRangeK: cell('dailyRange'), dewPointC: cell('dewPoint'), windMs: cell('wind') };
    const day = { date, maxC, ...rest, linkeTurbidity: cell('turbidity') };
    return {
      entry: { designDay: withoutBlanks(day) },
      source: 'columns',
      text: 'columns of the row',
      distanceKm: null,
    };
  }
  const name = cell('climate') ?? named;
  if (name !== undefined) return { entry: entryNamed(name), source: 'named', text: name, distanceKm: null };
  const station = nearest(stations, { latitudeDeg, longitudeDeg });
  if (station !== null) {
    const { day, altitudeM: stationM, name: text } = station.at;
    return {
      entry: { designDay: { ...(altitudeM === undefined ? day : lapsed(day, stationM, altitudeM)) } },
      source: 'weather file',
      text,
      distanceKm: station.km,
      altitudeM: stationM,
    };
  }
  const { day, shares, outsideDeg } = assumedClimate({ latitudeDeg, altitudeM: altitudeM ?? 0 });
  const parts = shares.map(({ name: part, share }) => `${part} ${Math.round(share * 100)} %`).join(', ');
  const outside = outsideDeg > 0 ? `, ${outsideDeg.toFixed(1)} degrees outside their latitudes` : '';
  return { entry: { designDay: { ...day } }, source: 'assumed', text: `${parts}${outside}`, distanceKm: null };
}

/** A sample or a cycle; what is neither is left for the site's own check. */
export function entryNamed(name: string): Record<string, unknown> {
  return STANDARD_CYCLES.some((cycle) => cycle.name === name) ? { cycle: name } : { sample: name };
}

export const CLIMATE_NAMES = [...CLIMATE_SAMPLES, ...STANDARD_CYCLES].map(({ name }) => name);

function nearest(stations: readonly Station[], place: { latitudeDeg: number; longitudeDeg: number }) {
  let best: { at: Station; km: number } | null = null;
  for (const at of stations) {
    const km = distanceKm(at, place);
    if (best === null || km < best.km) best = { at, km };
  }
  return best;
}

function withoutBlanks(values: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
}
