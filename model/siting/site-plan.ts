/** A building with all of its walls as seen from above. */
import { outlineEdge, type PlanPoint } from '../building-outline.ts';
import type { Site } from '../site.ts';
import { type PlanShape, wallPlan } from './wall-plan.ts';

/** Where the box would hang on a wall. */
export interface PlanMark {
  readonly wall: string;
  readonly azimuthDeg: number;
  /** Null where no outline says where the wall stands. */
  readonly at: PlanPoint | null;
}

/** Metres east and north of the foot of the wall below the box; north is up. */
export interface SitePlan {
  /** The wall whose place is the origin. */
  readonly wall: string;
  /** The corners of the building; null where only the bearings of its walls are known. */
  readonly building: readonly PlanPoint[] | null;
  readonly marks: readonly PlanMark[];
  /** What stands before the wall, and its eave. */
  readonly shapes: readonly PlanShape[];
}

/**
 * The plan of a site, seen from one of its walls.
 * @throws SiteError when the site has no wall of that name
 */
export function sitePlan(site: Site, wallName: string): SitePlan {
  const { building, shapes } = wallPlan(site, wallName);
  return {
    wall: wallName,
    building,
    shapes,
    marks: site.walls.map(({ name, azimuthDeg, edge, alongM }) => ({
      wall: name,
      azimuthDeg,
      at: building === null || edge === null || alongM === null ? null : pointOnEdge(building, edge, alongM),
    })),
  };
}

/** A place on an edge, counted from its left end as seen from outside. */
function pointOnEdge(outline: readonly PlanPoint[], edge: number, alongM: number): PlanPoint {
  const { left, right, lengthM } = outlineEdge(outline, edge);
  const share = alongM / lengthM;
  return [left[0] + share * (right[0] - left[0]), left[1] + share * (right[1] - left[1])];
}
