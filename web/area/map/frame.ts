/** How places come onto the map: a projection that fits them all, and the view that a person has moved to. */
import { type GeoProjection, geoAzimuthalEqualArea, geoBounds, geoEqualEarth } from 'd3-geo';

export interface Places {
  readonly latitudeDeg: readonly number[];
  readonly longitudeDeg: readonly number[];
}

/** Screen = base * k + (x, y). */
export interface View {
  readonly k: number;
  readonly x: number;
  readonly y: number;
}

export interface Frame {
  readonly widthPx: number;
  readonly heightPx: number;
  /** The projection at rest. */
  readonly base: GeoProjection;
  /** Makes another one of its kind, to be moved. */
  readonly another: () => GeoProjection;
  readonly kLeast: number;
  readonly kMost: number;
  /** Whether distances are nearly the same everywhere, so that one bar can tell them. */
  readonly hasScale: boolean;
}

export const AT_REST: View = { k: 1, x: 0, y: 0 };

/** Equal-area for both: a whole world (Savric, Patterson and Jenny 2019) where places lie far apart, else Lambert's about their middle. */
export function frameFor(places: Places | null, widthPx: number, heightPx: number): Frame {
  const points =
    places === null ? [] : places.longitudeDeg.map((lon, k) => [lon, places.latitudeDeg[k] ?? 0] as [number, number]);
  const geometry = { type: 'MultiPoint' as const, coordinates: points };
  const [[west, south], [east, north]] =
    points.length > 0
      ? geoBounds(geometry)
      : [
          [-180, -90],
          [180, 90],
        ];
  const spanDeg = (east - west + 360) % 360 || (east === west ? 0 : 360);
  const middleDeg = wrapped(west + spanDeg / 2);
  const isWorld = spanDeg > FAR_DEG || north - south > FAR_DEG;
  const edge = isWorld ? WORLD_EDGE_PX : EDGE_PX;
  const inner: [[number, number], [number, number]] = [
    [edge, edge],
    [widthPx - edge, heightPx - edge],
  ];
  const another = (): GeoProjection =>
    isWorld
      ? geoEqualEarth().rotate([points.length > 0 && spanDeg < ROUND_DEG ? -middleDeg : 0, 0])
      : geoAzimuthalEqualArea().rotate([-middleDeg, -(south + north) / 2]);
  const base = another().fitExtent(inner, isWorld ? { type: 'Sphere' } : geometry);
  // A single place has no extent: some kilometres round it are shown.
  const mostScale = (Math.min(widthPx, heightPx) / LEAST_SPAN_KM) * EARTH_KM;
  if (!(base.scale() <= mostScale)) base.scale(mostScale).translate([widthPx / 2, heightPx / 2]);
  const kLeast = isWorld ? 1 : Math.min(1, heightPx / (4 * base.scale()));
  return { widthPx, heightPx, base, another, kLeast, kMost: kFor(base), hasScale: !isWorld };
}

/** Mean radius, IUGG. */
const EARTH_KM = 6371.0088;
/** Room for signs at the edge, and for the figures of the meridians. */
const EDGE_PX = 28;
const WORLD_EDGE_PX = 8;
const FAR_DEG = 75;
/** Places all round the globe have no middle to turn it to. */
const ROUND_DEG = 300;
const LEAST_SPAN_KM = 4;
/** Nearer than this, the outlines and most lists of addresses say nothing more, km in a pixel. */
const FINEST_KM_PX = 0.002;

const kFor = (base: GeoProjection): number => Math.max(1, EARTH_KM / FINEST_KM_PX / base.scale());

const wrapped = (deg: number): number => ((((deg + 180) % 360) + 360) % 360) - 180;

/** Kilometres in a pixel at the middle of the map. */
export const kmPerPx = ({ base }: Frame, { k }: View): number => EARTH_KM / (base.scale() * k);

/** The projection of a view; it cuts off what lies outside the map. */
export function projectionOf({ base, another, widthPx, heightPx }: Frame, { k, x, y }: View): GeoProjection {
  const [tx, ty] = base.translate();
  return another()
    .scale(base.scale() * k)
    .translate([tx * k + x, ty * k + y])
    .clipExtent([
      [-1, -1],
      [widthPx + 1, heightPx + 1],
    ]);
}

/** Zooms by a factor about a place of the map. */
export function zoomed(frame: Frame, view: View, factor: number, [px, py]: readonly [number, number]): View {
  const k = Math.min(frame.kMost, Math.max(frame.kLeast, view.k * factor));
  const by = k / view.k;
  return kept(frame, { k, x: px - (px - view.x) * by, y: py - (py - view.y) * by });
}

export function panned(frame: Frame, view: View, dx: number, dy: number): View {
  return kept(frame, { k: view.k, x: view.x + dx, y: view.y + dy });
}

/** Whether a place of the base is within the map. */
export function inSight({ widthPx, heightPx }: Frame, { k, x, y }: View, [bx, by]: readonly [number, number]): boolean {
  const [px, py] = [bx * k + x, by * k + y];
  return px >= 0 && px <= widthPx && py >= 0 && py <= heightPx;
}

/** The view that shows a place of the base in the middle, no farther than it is. */
export function centred(frame: Frame, view: View, [bx, by]: readonly [number, number]): View {
  return kept(frame, { k: view.k, x: frame.widthPx / 2 - bx * view.k, y: frame.heightPx / 2 - by * view.k });
}

/** The middle of the map stays on what the map showed at rest, so that nobody loses it. */
function kept({ widthPx, heightPx }: Frame, { k, x, y }: View): View {
  const within = (at: number, size: number) => Math.min(size / 2, Math.max(size / 2 - size * k, at));
  return { k, x: within(x, widthPx), y: within(y, heightPx) };
}

/** Places on the base, columns of px; NaN where the projection has no place for them. */
export interface Placed {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

export function placed({ base }: Frame, { latitudeDeg, longitudeDeg }: Places): Placed {
  const x = new Float64Array(latitudeDeg.length);
  const y = new Float64Array(latitudeDeg.length);
  latitudeDeg.forEach((lat, k) => {
    const at = base([longitudeDeg[k] ?? 0, lat]);
    x[k] = at?.[0] ?? Number.NaN;
    y[k] = at?.[1] ?? Number.NaN;
  });
  return { x, y };
}

/** Longitude and latitude of a place of the map; null beside the globe. */
export function lonLatAt(
  frame: Frame,
  { k, x, y }: View,
  [px, py]: readonly [number, number],
): [number, number] | null {
  const at = frame.base.invert?.([(px - x) / k, (py - y) / k]);
  if (!at || !Number.isFinite(at[0]) || !Number.isFinite(at[1])) return null;
  // Beside the globe the inverse gives some place all the same; it does not lead back.
  const back = frame.base(at);
  const near = back !== null && Math.hypot(back[0] * k + x - px, back[1] * k + y - py) < 1;
  return near ? [wrapped(at[0]), at[1]] : null;
}
