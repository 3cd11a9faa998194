/** A wall and what stands before it as seen from above, with the sun of the design day. */
import { outlineEdge, type PlanPoint, seenFrom } from '../building-outline.ts';
import { bodiesOf, eaveBody } from '../shading/obstructions.ts';
import { backOutM, pointOf, type WallFrame, wallFrame } from '../shading/wall-frame.ts';
import type { Obstruction, Site, Wall } from '../site.ts';
import { siteDay } from './design-day.ts';
import { namedWall } from './named-wall.ts';
import { boxInSun, type SunOnBox } from './sun-diagram.ts';
import { seasonOf, standingOf } from './wall-views.ts';

/** Something with an outline on the ground or above it. */
export interface PlanShape {
  readonly kind: 'eave' | Obstruction['kind'];
  /** Its place in the list of obstructions; null for an eave. */
  readonly index: number | null;
  readonly transmittance: number;
  /** Height of its top above ground, m. */
  readonly topM: number;
  /** Corners in order; two for something flat. A crown is drawn round. */
  readonly outline: PlanPoint[];
}

/** Metres east and north of the foot of the wall below the middle of the box; north is up. */
export interface WallPlan {
  readonly wall: string;
  readonly wallAzimuthDeg: number;
  readonly timeZone: string;
  readonly date: string;
  /** The corners of the building; null where only the wall is known. */
  readonly building: PlanPoint[] | null;
  /** Left and right end of the wall as seen by a person who faces it. */
  readonly wallLine: [PlanPoint, PlanPoint];
  /** True where the wall runs on beyond the ends of the line. */
  readonly endless: boolean;
  readonly box: PlanPoint[];
  readonly shapes: PlanShape[];
  /** The design day every ten minutes, the whole civil day. */
  readonly sun: SunOnBox[];
}

/** How far a wall without ends is drawn to each side, m. */
const DRAWN_M = 6;

/** Steps of five minutes between the instants of the plan. */
const STEP_EVERY = 2;

const CROWN_CORNERS = 36;

/**
 * The plan of a wall.
 * @throws SiteError when the site has no wall of that name
 */
export function wallPlan(site: Site, wallName: string): WallPlan {
  const wall = namedWall(site, wallName);
  const day = siteDay(site);
  const frame = wallFrame(wall.azimuthDeg);
  const { box } = site;
  const back = backOutM(box);
  const onBox = boxInSun(site, wall, day.civil.date);
  return {
    wall: wall.name,
    wallAzimuthDeg: wall.azimuthDeg,
    timeZone: day.civil.timeZone,
    date: day.civil.date,
    ...buildingOf(site, wall, frame),
    box: rectangle(frame, [-box.widthM / 2, back], [box.widthM / 2, back + box.depthM]),
    shapes: shapesOf(site, wall, frame, day.civil.date),
    sun: day.steps.filter((_, k) => k % STEP_EVERY === 0).map(({ utc, sun }) => onBox(utc, sun)),
  };
}

function buildingOf({ building }: Site, wall: Wall, frame: WallFrame) {
  if (building === null || wall.edge === null || wall.alongM === null) {
    const wallLine: [PlanPoint, PlanPoint] = [onGround(frame, -DRAWN_M, 0), onGround(frame, DRAWN_M, 0)];
    return { building: null, wallLine, endless: true };
  }
  const own = outlineEdge(building.outlineM, wall.edge);
  // The outline is turned, by what a compass is out, until its edge faces the way of the wall.
  const facing = seenFrom(building.outlineM, { edge: wall.edge, alongM: wall.alongM });
  const seen = (corner: PlanPoint): PlanPoint => onGround(frame, ...facing(corner));
  const wallLine: [PlanPoint, PlanPoint] = [seen(own.left), seen(own.right)];
  return { building: building.outlineM.map(seen), wallLine, endless: false };
}

function shapesOf(site: Site, wall: Wall, frame: WallFrame, date: string): PlanShape[] {
  const season = seasonOf(site, date);
  const { eave, boxTopM } = standingOf(site, wall, season);
  const bodyOutline = (body: ReturnType<typeof eaveBody>): PlanPoint[] => {
    const [low, high] = [body.low, body.high];
    if (body.shape === 'crown')
      return ring(frame, (low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (high[0] - low[0]) / 2);
    if (low[0] === high[0] || low[1] === high[1])
      return [onGround(frame, low[0], low[1]), onGround(frame, high[0], high[1])];
    return rectangle(frame, [low[0], low[1]], [high[0], high[1]]);
  };
  const obstructions = wall.obstructions.flatMap((obstruction, index) =>
    bodiesOf(obstruction, season).map((body): PlanShape => {
      const { transmittance, high } = body;
      return { kind: obstruction.kind, index, transmittance, topM: high[2], outline: bodyOutline(body) };
    }),
  );
  if (eave === null || eave.depthM <= 0) return obstructions;
  const body = eaveBody(eave, boxTopM);
  const { transmittance, high } = body;
  return [{ kind: 'eave', index: null, transmittance, topM: high[2], outline: bodyOutline(body) }, ...obstructions];
}

function onGround(frame: WallFrame, rightM: number, outM: number): PlanPoint {
  const [e, n] = pointOf(frame, { rightM, outM, upM: 0 });
  return [e, n];
}

function rectangle(frame: WallFrame, low: readonly [number, number], high: readonly [number, number]): PlanPoint[] {
  return [
    onGround(frame, low[0], low[1]),
    onGround(frame, high[0], low[1]),
    onGround(frame, high[0], high[1]),
    onGround(frame, low[0], high[1]),
  ];
}

function ring(frame: WallFrame, rightM: number, outM: number, radiusM: number): PlanPoint[] {
  return Array.from({ length: CROWN_CORNERS }, (_, k) => {
    const phi = (2 * Math.PI * k) / CROWN_CORNERS;
    return onGround(frame, rightM + radiusM * Math.cos(phi), outM + radiusM * Math.sin(phi));
  });
}
