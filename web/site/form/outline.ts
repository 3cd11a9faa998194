/** The building's outline as it is entered: rectangles to start from, and corners that come and go in a draft. */
import { fromDisplay, outlineEdges, type PlanPoint, toDisplay, type UnitSystem } from '../../../model/index.ts';
import { type Draft, isDraft, listAt, valueAt, withValue } from '../draft.ts';

export const OUTLINE = 'building.outlineM';

export const FEWEST_CORNERS = 3;

export interface Rectangle {
  /** What one wall faces, degrees clockwise from true north; that wall is edge 0. */
  readonly bearingDeg: number;
  /** Along that wall. */
  readonly lengthM: number;
  /** Along the walls at a right angle to it. */
  readonly widthM: number;
  readonly firstCorner: PlanPoint;
  readonly anticlockwise: boolean;
}

/** The corners of a rectangle; clockwise, its edges face the bearing and 90, 180 and 270 degrees on. */
export function rectangleCorners(rectangle: Rectangle, units: UnitSystem): PlanPoint[] {
  const { bearingDeg, lengthM, widthM, firstCorner, anticlockwise } = rectangle;
  const along = step(bearingDeg + (anticlockwise ? -90 : 90), lengthM);
  const back = step(bearingDeg + 180, widthM);
  const [east, north] = firstCorner;
  return [[0, 0], along, [along[0] + back[0], along[1] + back[1]] as const, back].map(
    ([e = 0, n = 0]): PlanPoint => [rounded(east + e, units, 3), rounded(north + n, units, 3)],
  );
}

/** The rectangle that an outline is, sizes to the hundredth of the displayed unit; null where it is none. */
export function rectangleOf(outline: readonly PlanPoint[], units: UnitSystem): Rectangle | null {
  const [first, second] = outlineEdges(outline);
  const firstCorner = outline[0];
  if (outline.length !== 4 || first === undefined || second === undefined || firstCorner === undefined) return null;
  const anticlockwise = first.left === firstCorner;
  // The corners are rounded; the longer wall tells the bearing better.
  const bearing = first.lengthM >= second.lengthM ? first.azimuthDeg : second.azimuthDeg + (anticlockwise ? 90 : -90);
  const rectangle = {
    bearingDeg: (Math.round(bearing * 10) / 10 + 360) % 360,
    lengthM: rounded(first.lengthM, units, 2),
    widthM: rounded(second.lengthM, units, 2),
    firstCorner,
    anticlockwise,
  };
  const corners = rectangleCorners(rectangle, units);
  // A tenth of a degree along a long wall, and what rounding adds.
  const nearM = 0.01 + Math.max(first.lengthM, second.lengthM) * 0.002;
  const near = corners.every(([e, n], k) => {
    const corner = outline[k] as PlanPoint;
    return Math.hypot(e - corner[0], n - corner[1]) < nearM;
  });
  return near && rectangle.lengthM > 0 && rectangle.widthM > 0 ? rectangle : null;
}

/** The corners in a draft; null while one of them is not a pair of numbers. */
export function enteredOutline(draft: unknown): readonly PlanPoint[] | null {
  const list = listAt(draft, OUTLINE);
  return list.length >= FEWEST_CORNERS && list.every(isPoint) ? list : null;
}

/** A draft with a corner halfway between corner k and the next; walls stay on the edges that they stand on. */
export function withCornerAfter(draft: Draft, k: number, units: UnitSystem): Draft {
  const list = listAt(draft, OUTLINE);
  const [from, to] = [list[k], list[(k + 1) % list.length]];
  const halfway =
    isPoint(from) && isPoint(to)
      ? [rounded((from[0] + to[0]) / 2, units, 3), rounded((from[1] + to[1]) / 2, units, 3)]
      : [undefined, undefined];
  return withEdges(withValue(draft, OUTLINE, list.toSpliced(k + 1, 0, halfway)), (edge) =>
    edge > k ? edge + 1 : edge,
  );
}

/** A draft without corner k, whose two edges become one. */
export function withoutCorner(draft: Draft, k: number): Draft {
  const list = listAt(draft, OUTLINE);
  const left = list.length - 1;
  return withEdges(withValue(draft, OUTLINE, list.toSpliced(k, 1)), (edge) =>
    edge >= k ? (edge - 1 + left) % left : edge,
  );
}

/** A draft without the building, and so without what only a building's wall has. */
export function withoutBuilding(draft: Draft): Draft {
  return listAt(draft, 'walls').reduce<Draft>(
    (changed, _, index) => ['edge', 'alongM'].reduce((rest, key) => without(rest, `walls.${index}.${key}`), changed),
    without(draft, 'building'),
  );
}

function without(draft: Draft, path: string): Draft {
  return valueAt(draft, path) === undefined ? draft : withValue(draft, path, undefined);
}

/** A draft with other numbers for the edges that walls name. */
function withEdges(draft: Draft, renumbered: (edge: number) => number): Draft {
  return listAt(draft, 'walls').reduce<Draft>((changed, wall, index) => {
    const edge = isDraft(wall) ? wall['edge'] : undefined;
    if (typeof edge !== 'number' || renumbered(edge) === edge) return changed;
    return withValue(changed, `walls.${index}.edge`, renumbered(edge));
  }, draft);
}

function isPoint(entry: unknown): entry is PlanPoint {
  return Array.isArray(entry) && entry.length === 2 && entry.every((axis) => Number.isFinite(axis));
}

/** Metres east and north of a walk in a direction. */
function step(bearingDeg: number, metres: number): PlanPoint {
  const angle = (bearingDeg * Math.PI) / 180;
  return [metres * Math.sin(angle), metres * Math.cos(angle)];
}

/** Metres, short in the displayed unit. */
function rounded(metres: number, units: UnitSystem, decimals: number): number {
  const shown = Number(toDisplay('length', metres, units).toFixed(decimals));
  // Beyond twelve digits stands the noise of the conversion; and no "-0".
  return Number(fromDisplay('length', shown, units).toPrecision(12)) + 0;
}
