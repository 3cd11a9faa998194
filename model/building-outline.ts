/**
 * The outline of a building on the ground: its corners in order, metres east and north of any fixed place. Edge number k
 * runs from corner k to the next one; corners may be given in either sense of rotation.
 */
import { wrapDegrees } from './compass.ts';

/** Metres east and north. */
export type PlanPoint = readonly [eastM: number, northM: number];

export interface OutlineEdge {
  /** Its ends, as seen by a person who faces it from outside. */
  readonly left: PlanPoint;
  readonly right: PlanPoint;
  readonly lengthM: number;
  /** The direction it faces, degrees clockwise from true north. */
  readonly azimuthDeg: number;
}

/** Twice the area of an outline, m2; positive for corners in anticlockwise order. */
function doubleArea(outline: readonly PlanPoint[]): number {
  return outline.reduce((sum, [e, n], k) => {
    const [nextE, nextN] = outline[(k + 1) % outline.length] as PlanPoint;
    return sum + e * nextN - nextE * n;
  }, 0);
}

/** The edges of an outline, in the order of its corners. */
export function outlineEdges(outline: readonly PlanPoint[]): OutlineEdge[] {
  const anticlockwise = doubleArea(outline) > 0;
  return outline.map((corner, k): OutlineEdge => {
    const next = outline[(k + 1) % outline.length] as PlanPoint;
    // With the building to the left of the walk round it, who faces an edge from outside has its start to the left.
    const [left, right] = anticlockwise ? [corner, next] : [next, corner];
    const east = right[0] - left[0];
    const north = right[1] - left[1];
    const azimuthDeg = wrapDegrees((Math.atan2(north, -east) * 180) / Math.PI);
    return { left, right, lengthM: Math.hypot(east, north), azimuthDeg };
  });
}

/** Degrees between two bearings, 0 to 180. */
export function bearingsApartDeg(a: number, b: number): number {
  const apart = wrapDegrees(a - b);
  return Math.min(apart, 360 - apart);
}

/** A wall's bearing and the edge that it stands on may differ by what a hand compass is out, degrees. */
export const EDGE_TOLERANCE_DEG = 10;

/** The longest edge that faces a bearing, by its number; undefined where none does. */
export function edgeFacing(outline: readonly PlanPoint[], azimuthDeg: number): number | undefined {
  const facing = outlineEdges(outline)
    .map((edge, index) => ({ edge, index }))
    .filter(({ edge }) => bearingsApartDeg(edge.azimuthDeg, azimuthDeg) <= EDGE_TOLERANCE_DEG)
    .sort((a, b) => b.edge.lengthM - a.edge.lengthM || a.index - b.index);
  return facing[0]?.index;
}

/** What is wrong with an outline; null where nothing is. */
export function outlineFault(outline: readonly PlanPoint[]): string | null {
  const edges = outlineEdges(outline);
  if (edges.some(({ lengthM }) => lengthM < 0.01)) return 'two corners in a row lie on one spot';
  const crosses = edges.some((edge, i) =>
    edges.some((other, j) => {
      const neighbours = (j - i + edges.length) % edges.length;
      return j > i && neighbours > 1 && neighbours < edges.length - 1 && segmentsMeet(edge, other);
    }),
  );
  if (crosses) return 'the outline crosses itself';
  return Math.abs(doubleArea(outline)) / 2 < 0.1 ? 'the outline encloses no ground' : null;
}

type Segment = Pick<OutlineEdge, 'left' | 'right'>;

/** Whether two segments have a point in common. */
function segmentsMeet(a: Segment, b: Segment): boolean {
  const apart = ([0, 1] as const).some((axis) => {
    const reach = ({ left, right }: Segment) => [left[axis], right[axis]].sort((x, y) => x - y) as [number, number];
    const [[lowA, highA], [lowB, highB]] = [reach(a), reach(b)];
    return highA < lowB || highB < lowA;
  });
  if (apart) return false;
  const side = (s: Segment, p: PlanPoint) =>
    Math.sign((s.right[0] - s.left[0]) * (p[1] - s.left[1]) - (s.right[1] - s.left[1]) * (p[0] - s.left[0]));
  return side(a, b.left) * side(a, b.right) <= 0 && side(b, a.left) * side(b, a.right) <= 0;
}

/** A place on an outline: on which edge, and how far from its left end, as seen from outside. */
export interface PlaceOnOutline {
  readonly edge: number;
  readonly alongM: number;
}

/** The edge of a number. @throws RangeError where the outline has none of it */
export function outlineEdge(outline: readonly PlanPoint[], edge: number): OutlineEdge {
  const own = outlineEdges(outline)[edge];
  if (own === undefined) throw new RangeError(`building outline: no edge ${edge}`);
  return own;
}

/** From corners to what a person sees who faces a place on the outline: metres to the right of it, and out from it. */
export function seenFrom(
  outline: readonly PlanPoint[],
  { edge, alongM }: PlaceOnOutline,
): (corner: PlanPoint) => [rightM: number, outM: number] {
  const { left, right, lengthM } = outlineEdge(outline, edge);
  const [rightE, rightN] = [(right[0] - left[0]) / lengthM, (right[1] - left[1]) / lengthM];
  return ([e, n]) => {
    const [de, dn] = [e - left[0], n - left[1]];
    // Out of the wall is its right turned a quarter clockwise: who faces a south wall has east to the right.
    return [de * rightE + dn * rightN - alongM, de * rightN - dn * rightE];
  };
}

/** The edges of an outline but the one of a place, each by its ends as seen from that place. */
export function otherEdgesFrom(
  outline: readonly PlanPoint[],
  place: PlaceOnOutline,
): { left: [rightM: number, outM: number]; right: [rightM: number, outM: number] }[] {
  const seen = seenFrom(outline, place);
  return outlineEdges(outline)
    .filter((_, k) => k !== place.edge)
    .map(({ left, right }) => ({ left: seen(left), right: seen(right) }));
}
