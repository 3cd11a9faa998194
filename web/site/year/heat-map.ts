/** The map of a year in pixels: a column for each day, the hours upward, cells of one class as one path. */
import type { UnitSystem } from '../../../model/index.ts';
import { marginClasses, marginClassOf } from './margin-classes.ts';
import type { CalendarDay } from './year-calendar.ts';

/** A strip of days; a narrow page has two of them, one above the other. */
export interface Band {
  readonly top: number;
  readonly days: readonly CalendarDay[];
  /** First days of months, with the width of the month. */
  readonly months: readonly { readonly month: number; readonly left: number; readonly width: number }[];
}

export interface HeatMap {
  readonly left: number;
  readonly width: number;
  readonly height: number;
  readonly bandHeight: number;
  readonly bands: readonly Band[];
  /** One path for each class that occurs, by the index of the class. */
  readonly paths: readonly { readonly index: number; readonly d: string }[];
  /** The day and hour at a place of the picture; null beside the map. */
  at(x: number, y: number): { readonly day: CalendarDay; readonly hour: number } | null;
}

/** Narrower than this, half a year fills a strip, px. */
const ONE_BAND_PX = 560;

/** Room for the names of the hours, and for those of the months below a strip, px. */
const LEFT_PX = 30;
const BELOW_PX = 26;
const ABOVE_PX = 8;

export function heatMap(
  days: readonly CalendarDay[],
  { limits, units, widthPx }: { limits: { minC: number; maxC: number }; units: UnitSystem; widthPx: number },
): HeatMap {
  const parts = widthPx < ONE_BAND_PX ? halves(days) : [days];
  const hourPx = parts.length > 1 ? 6 : 9;
  const bandHeight = 24 * hourPx;
  const longest = Math.max(...parts.map(({ length }) => length));
  const dayPx = (widthPx - LEFT_PX - 1) / longest;
  const bands = parts.map((part, k) => ({
    top: ABOVE_PX + k * (bandHeight + BELOW_PX),
    days: part,
    months: monthsOf(part, dayPx),
  }));

  const drawn = marginClasses(units).map((): string[] => []);
  for (const { top, days: part } of bands) {
    for (const [column, { limitedC }] of part.entries()) {
      const x = round(LEFT_PX + column * dayPx);
      const width = round(LEFT_PX + (column + 1) * dayPx - x);
      const classes = limitedC.map((celsius) => marginClassOf(celsius, limits, units));
      for (const { value, from, to } of runsOf(classes)) {
        const y = top + bandHeight - to * hourPx;
        drawn[value]?.push(`M${x} ${y}h${width}v${(to - from) * hourPx}h${-width}z`);
      }
    }
  }
  return {
    left: LEFT_PX,
    width: round(longest * dayPx),
    height: ABOVE_PX + bands.length * (bandHeight + BELOW_PX),
    bandHeight,
    bands,
    paths: drawn.flatMap((pieces, index) => (pieces.length === 0 ? [] : [{ index, d: pieces.join('') }])),
    at(x, y) {
      const band = bands.find(({ top }) => y >= top && y < top + bandHeight);
      const day = band?.days[Math.floor((x - LEFT_PX) / dayPx)];
      if (band === undefined || day === undefined) return null;
      return { day, hour: Math.floor((band.top + bandHeight - y - 1e-9) / hourPx) };
    },
  };
}

/** January to June above July to December. */
function halves(days: readonly CalendarDay[]): (readonly CalendarDay[])[] {
  return [days.filter(({ month }) => month <= 6), days.filter(({ month }) => month > 6)].filter(
    ({ length }) => length > 0,
  );
}

function monthsOf(days: readonly CalendarDay[], dayPx: number) {
  return runsOf(days.map(({ month }) => month)).map(({ value, from, to }) => ({
    month: value,
    left: LEFT_PX + from * dayPx,
    width: (to - from) * dayPx,
  }));
}

/** Stretches of one value, `from` inclusive, `to` exclusive. */
function runsOf(values: readonly number[]) {
  const runs: { value: number; from: number; to: number }[] = [];
  for (const [at, value] of values.entries()) {
    const last = runs.at(-1);
    if (last !== undefined && last.value === value) last.to = at + 1;
    else runs.push({ value, from: at, to: at + 1 });
  }
  return runs;
}

const round = (px: number): number => Math.round(px * 100) / 100;
