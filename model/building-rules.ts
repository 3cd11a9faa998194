/** What must hold between a building's outline and the walls that stand on its edges. */
import {
  bearingsApartDeg,
  EDGE_TOLERANCE_DEG,
  edgeFacing,
  otherEdgesFrom,
  outlineEdges,
  outlineFault,
  type PlanPoint,
} from './building-outline.ts';
import { boxRoom } from './obstruction-rules.ts';
import type { RawSite } from './raw-site.ts';
import { type Problem, problem, shown } from './site-error.ts';

/** The problems of a raw site's building and of where its walls stand on it. */
export function buildingProblems(raw: RawSite): Problem[] {
  const walls = raw.at('walls');
  const paths = Array.isArray(walls) ? walls.map((_, index) => `walls.${index}`) : [];
  if ((raw.at('building') ?? null) === null) return paths.flatMap((path) => withoutBuilding(raw, path));
  const outline = rawOutline(raw);
  if (outline === undefined) return [];
  const fault = outlineFault(outline);
  if (fault !== null)
    return [problem('building.outlineM', shown(outline), fault, 'corners in order round the building')];
  return [...lowBuilding(raw), ...paths.flatMap((path) => onOutline(raw, path, outline))];
}

/** A box that hangs on a building does not reach above it. */
function lowBuilding(raw: RawSite): Problem[] {
  const heightM = raw.number('building.heightM');
  const room = boxRoom(raw);
  if (heightM === undefined || room === undefined || raw.at('box.mount') === 'post' || heightM >= room.topM) return [];
  const wrong = 'the building is lower than the box on it';
  return [problem('building.heightM', shown(raw.at('building.heightM')), wrong, `from ${room.topM.toFixed(2)} m`)];
}

function withoutBuilding(raw: RawSite, path: string): Problem[] {
  return ['edge', 'alongM']
    .map((key) => `${path}.${key}`)
    .filter((at) => (raw.at(at) ?? null) !== null)
    .map((at) => problem(at, shown(raw.at(at)), "goes with a building's outline only", ''));
}

/** The corners; undefined while one of them is missing or wrong, which is a problem of its own. */
function rawOutline(raw: RawSite): PlanPoint[] | undefined {
  const list = raw.at('building.outlineM');
  if (!Array.isArray(list) || list.length < 3) return undefined;
  const corners = Array.from(list, (_, k) => [0, 1].map((axis) => raw.number(`building.outlineM.${k}.${axis}`)));
  return corners.flat().includes(undefined) ? undefined : (corners as unknown as PlanPoint[]);
}

function onOutline(raw: RawSite, path: string, outline: readonly PlanPoint[]): Problem[] {
  const azimuthDeg = raw.number(`${path}.azimuthDeg`);
  if (azimuthDeg === undefined) return [];
  const edges = outlineEdges(outline);
  const entered = raw.at(`${path}.edge`) ?? null;
  const at = entered === null ? `${path}.azimuthDeg` : `${path}.edge`;
  const index = entered ?? edgeFacing(outline, azimuthDeg);
  const bearings = edges.map((edge, k) => `edge ${k} faces ${Math.round(edge.azimuthDeg)} deg`).join(', ');
  if (index === undefined) {
    return [problem(at, shown(raw.at(at)), "no edge of the building's outline faces that way", bearings)];
  }
  const edge = typeof index === 'number' ? edges[index] : undefined;
  if (edge === undefined) {
    return [problem(at, shown(raw.at(at)), "the building's outline has no such edge", `0 to ${edges.length - 1}`)];
  }
  if (bearingsApartDeg(edge.azimuthDeg, azimuthDeg) > EDGE_TOLERANCE_DEG) {
    const wrong = `the wall faces ${Math.round(azimuthDeg)} deg and this edge does not`;
    return [problem(at, shown(raw.at(at)), wrong, bearings)];
  }
  return alongEdge(raw, path, outline, index as number);
}

/** The box must hang within its edge and clear of the others. */
function alongEdge(raw: RawSite, path: string, outline: readonly PlanPoint[], edge: number): Problem[] {
  const room = boxRoom(raw);
  const lengthM = outlineEdges(outline)[edge]?.lengthM ?? 0;
  const entered = (raw.at(`${path}.alongM`) ?? null) !== null;
  const alongM = entered ? raw.number(`${path}.alongM`) : lengthM / 2;
  if (room === undefined || alongM === undefined) return [];
  const half = room.backM > 0 ? 0 : room.halfWidthM;
  const at = entered ? `${path}.alongM` : `${path}.azimuthDeg`;
  const say = (wrong: string, allowed: string) => [problem(at, shown(raw.at(at)), wrong, allowed)];
  if (lengthM < 2 * half) return say('the box is wider than this edge of the building', `${lengthM.toFixed(2)} m`);
  if (alongM < half || alongM > lengthM - half) {
    return say('the box reaches past this edge', `${half.toFixed(2)} to ${(lengthM - half).toFixed(2)} m`);
  }
  const cuts = otherEdgesFrom(outline, { edge, alongM }).some(({ left, right }) =>
    passesThrough(left, right, [-room.halfWidthM, room.backM], [room.halfWidthM, room.frontM]),
  );
  return cuts ? say('another wall of the building cuts through the box', 'a place clear of the corner') : [];
}

/** Whether the inside of a rectangle with straight sides has a point in common with a segment. */
function passesThrough(from: PlanPoint, to: PlanPoint, low: PlanPoint, high: PlanPoint): boolean {
  let enter = 0;
  let leave = 1;
  for (const axis of [0, 1] as const) {
    const step = to[axis] - from[axis];
    if (step === 0) {
      if (from[axis] <= low[axis] || from[axis] >= high[axis]) return false;
      continue;
    }
    const [a, b] = [(low[axis] - from[axis]) / step, (high[axis] - from[axis]) / step];
    enter = Math.max(enter, Math.min(a, b));
    leave = Math.min(leave, Math.max(a, b));
  }
  return enter < leave;
}
