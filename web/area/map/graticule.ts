/** Meridians and parallels across a map, as far apart as they can be read, and a bar that tells distances. */
import { type Frame, kmPerPx, lonLatAt, type View } from './frame.ts';

export interface GridLine {
  readonly line: { readonly type: 'LineString'; readonly coordinates: number[][] };
  readonly label: string;
  /** Where the label goes: the place on the line nearest to the edge of the map. */
  readonly at: [number, number];
  readonly along: 'bottom' | 'left';
}

const STEPS_DEG = [30, 20, 10, 5, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01];
/** Lines across the map, about. */
const LINES = 4;
const SAMPLES = 8;

export function graticule(frame: Frame, view: View): GridLine[] {
  const { widthPx, heightPx } = frame;
  const centre = lonLatAt(frame, view, [widthPx / 2, heightPx / 2]);
  const seen: [number, number][] = [];
  for (let i = 0; i <= SAMPLES; i += 1) {
    for (let j = 0; j <= SAMPLES; j += 1) {
      const at = lonLatAt(frame, view, [(widthPx * i) / SAMPLES, (heightPx * j) / SAMPLES]);
      if (at !== null) seen.push(at);
    }
  }
  if (centre === null) return [];
  // Where the map reaches beyond the globe, all of it may be in sight.
  const all = seen.length < (SAMPLES + 1) ** 2;
  const middle = all ? -(frame.base.rotate()[0] ?? 0) : centre[0];
  // Longitudes as differences from the middle, so that the 180th meridian is none of its own.
  const offsets = all ? [-179.99, 179.99] : seen.map(([lon]) => turned(lon - middle));
  const [west, east] = [Math.min(...offsets), Math.max(...offsets)];
  const latitudes = all ? [-89.99, 89.99] : seen.map(([, lat]) => lat);
  const [south, north] = [Math.min(...latitudes), Math.max(...latitudes)];
  const step = STEPS_DEG.find((deg) => Math.min(east - west, (north - south) * 2) / deg >= LINES) ?? 0.01;
  const lines: GridLine[] = [];
  for (const lon of multiples(middle + west, middle + east, step)) {
    const low = Math.max(-89.99, south - step);
    const coordinates = even(low, Math.min(89.99, north + step)).map((lat) => [lon, lat]);
    lines.push({
      line: { type: 'LineString', coordinates },
      label: degrees(turned(lon), 'E', 'W', step),
      at: [lon, south],
      along: 'bottom',
    });
  }
  for (const lat of multiples(Math.max(-89, south), Math.min(89, north), step)) {
    const coordinates = even(middle + west, middle + east).map((lon) => [lon, lat]);
    lines.push({
      line: { type: 'LineString', coordinates },
      label: degrees(lat, 'N', 'S', step),
      at: [middle + west, lat],
      along: 'left',
    });
  }
  return lines;
}

const turned = (deg: number): number => ((((deg + 180) % 360) + 360) % 360) - 180;

function multiples(from: number, to: number, step: number): number[] {
  const first = Math.ceil(from / step);
  return Array.from({ length: Math.max(0, Math.floor(to / step) - first + 1) }, (_, k) => (first + k) * step);
}

/** Pieces are bent along great circles, which parallels are not: many short ones. */
const PIECES = 90;
const even = (from: number, to: number): number[] =>
  Array.from({ length: PIECES + 1 }, (_, k) => from + ((to - from) * k) / PIECES);

/** "113.5° W" */
function degrees(deg: number, plus: string, minus: string, step: number): string {
  const decimals = step >= 1 ? 0 : step >= 0.1 ? 1 : 2;
  const text = Math.abs(deg).toFixed(decimals);
  return Number(text) === 0 || Number(text) === 180 ? `${text}°` : `${text}°\u00a0${deg > 0 ? plus : minus}`;
}

/** International mile. */
const KM_PER_MILE = 1.609344;

/** A round length and how long it is on the map, at most `mostPx`. */
export function scaleBar(frame: Frame, view: View, unit: 'km' | 'mi', mostPx: number): { px: number; label: string } {
  const perPx = kmPerPx(frame, view) / (unit === 'mi' ? KM_PER_MILE : 1);
  const power = 10 ** Math.floor(Math.log10(perPx * mostPx));
  const length = [5, 2, 1].map((digit) => digit * power).find((one) => one <= perPx * mostPx) ?? power;
  return { px: length / perPx, label: `${Number(length.toPrecision(1))}\u00a0${unit}` };
}
