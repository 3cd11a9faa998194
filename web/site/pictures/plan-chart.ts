/** Where metres lie in the plan: north up, a circle round the box that the sun goes along. */
import type { Face, PlanPoint, PlanShape, SunOnBox, UnitSystem, WallPlan } from '../../../model/index.ts';
import { fromDisplay } from '../../../model/index.ts';
import { apartDeg, type Point } from './plane.ts';

export interface PlanChart {
  readonly middle: Point;
  readonly radiusPx: number;
  readonly pxPerM: number;
  at(point: PlanPoint): Point;
}

/** What stands farther away is not looked for: it would make the rest too small to see. */
const FARTHEST_M = 30;
const NEAREST_M = 3;

/** Room between the farthest thing and the circle. */
const MARGIN = 1.06;

const awayM = ([east, north]: PlanPoint) => Math.hypot(east, north);

/** How far the plan reaches, m: to all that stands before the wall within some 30 m, and to the ends of the wall. */
export function planReachM({ wallLine, box, shapes, building, wallAzimuthDeg }: WallPlan): number {
  const angle = (wallAzimuthDeg * Math.PI) / 180;
  // The back of the building shades nothing; it may lie outside.
  const before = (building ?? []).filter(([east, north]) => east * Math.sin(angle) + north * Math.cos(angle) > 0.1);
  const points = [...wallLine, ...box, ...before, ...shapes.flatMap(({ outline }) => outline)];
  const near = points.map(awayM).filter((m) => m <= FARTHEST_M);
  return Math.max(NEAREST_M, ...near) * MARGIN;
}

export function planChart(sizePx: number, rimPx: number, reachM: number): PlanChart {
  const middle: Point = [sizePx / 2, sizePx / 2];
  const radiusPx = sizePx / 2 - rimPx;
  const pxPerM = radiusPx / reachM;
  return {
    middle,
    radiusPx,
    pxPerM,
    at: ([east, north]) => [middle[0] + east * pxPerM, middle[1] - north * pxPerM],
  };
}

/** Whether part of a shape lies beyond the circle. */
export function reachesBeyond(outline: PlanShape['outline'], reachM: number): boolean {
  return outline.some((corner) => awayM(corner) > reachM);
}

/** A box that is drawn thinner than this cannot be seen; it is drawn larger, and the picture says so. */
const THINNEST_BOX_PX = 8;

export interface DrawnBox {
  readonly corners: readonly Point[];
  /** 1 for true to scale. */
  readonly enlarged: number;
}

/** The box, enlarged about the middle of its back where it would be too small. */
export function drawnBox({ box }: WallPlan, chart: PlanChart): DrawnBox {
  const corners = box.map(chart.at);
  const [backLeft, backRight, frontRight] = corners as [Point, Point, Point];
  const length = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1]);
  const thinnest = Math.min(length(backLeft, backRight), length(backRight, frontRight));
  const enlarged = Math.max(1, THINNEST_BOX_PX / thinnest);
  const back: Point = [(backLeft[0] + backRight[0]) / 2, (backLeft[1] + backRight[1]) / 2];
  return {
    enlarged,
    corners: corners.map(([x, y]): Point => [back[0] + (x - back[0]) * enlarged, back[1] + (y - back[1]) * enlarged]),
  };
}

/** The sides of a box that show from above, between corners that go round from the left end of its back. */
export const BOX_SIDES: readonly Face[] = ['back', 'right', 'front', 'left'];

/** A length of the scale bar: round in the displayed unit and at most a third of the radius. */
export function scaleBarM(chart: PlanChart, units: UnitSystem): number {
  const longestM = chart.radiusPx / chart.pxPerM / 3;
  const lengths = [0.5, 1, 2, 5, 10, 20, 50].map((shown) => fromDisplay('length', shown, units));
  return lengths.findLast((m) => m <= longestM) ?? (lengths[0] as number);
}

/** A step of ten minutes is worth this much of a turn when two instants have the sun in nearly the same direction. */
const STAY_DEG = 0.1;

/**
 * The instant whose sun stands nearest to a bearing. Where the sun goes back and forth, as it does in the tropics, the one
 * that is nearer in time to the present one.
 */
export function instantTowards(sun: readonly SunOnBox[], bearingDeg: number, presentIndex: number): number {
  const cost = (k: number) =>
    apartDeg((sun[k] as SunOnBox).azimuthDeg, bearingDeg) + STAY_DEG * Math.abs(k - presentIndex);
  return sun.reduce((best, _, k) => (cost(k) < cost(best) ? k : best), 0);
}

/** The instant nearest to a time. */
export function instantAt(sun: readonly SunOnBox[], utc: Date): number {
  const apart = (k: number) => Math.abs((sun[k] as SunOnBox).utc.getTime() - utc.getTime());
  return sun.reduce((best, _, k) => (apart(k) < apart(best) ? k : best), 0);
}
