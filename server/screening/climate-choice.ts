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
  const name = cell('climate');
  const ownDay = designDayOf(cell);
  if (ownDay !== undefined) {
    const date = latitudeDeg < 0 ? HOTTEST_DATE.south : HOTTEST_DATE.north;
    return {
      // A climate that is named beside it contradicts it, which the site's own check tells, as it tells a day without its highest.
      entry: { ...(name !== undefined && entryNamed(name)), designDay: { date, ...ownDay } },
      source: 'columns',
      text: 'columns of the row',
      distanceKm: null,
    };
  }
  const used = name ?? named;
  if (used !== undefined) return { entry: entryNamed(used), source: 'named', text: used, distanceKm: null };
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

/** What the row says of a design day of its own; undefined where it says nothing. Every cell counts, so that none is passed over. */
function designDayOf(cell: (key: ColumnKey) => string | undefined): Record<string, string> | undefined {
  const cells = {
    date: cell('date'),
    maxC: cell('designMax'),
    dailyRangeK: cell('dailyRange'),
    dewPointC: cell('dewPoint'),
    windMs: cell('wind'),
    linkeTurbidity: cell('turbidity'),
  };
  const given = Object.entries(cells).filter((entry): entry is [string, string] => entry[1] !== undefined);
  return given.length === 0 ? undefined : Object.fromEntries(given);
}
