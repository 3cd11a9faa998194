/** How the peak inside depends on the way a wall faces, everything else equal. */
import type { Site } from '../site.ts';
import { siteDay } from './design-day.ts';
import { judgeWall } from './judged-day.ts';
import { namedWall } from './named-wall.ts';

/** One bearing of the rose. */
export interface RosePoint {
  readonly azimuthDeg: number;
  readonly peakInsideAirC: number;
}

/** Bearings of the rose are this far apart, degrees. */
export const ROSE_STEP_DEG = 10;

/**
 * Peaks of the air inside on the design day by the bearing of a bare wall: built as the named one, without eave,
 * neighbours or skyline. Yields one bearing at a time, north first and clockwise, so that a caller can show progress and stop.
 * @throws SiteError when the site has no wall of that name
 */
export function* bearingRose(site: Site, wallName: string): Generator<RosePoint> {
  const wall = namedWall(site, wallName);
  const bare = { ...wall, eave: null, obstructions: [], horizon: [], edge: null, alongM: null };
  const alone = { ...site, building: null };
  const day = siteDay(site);
  for (let azimuthDeg = 0; azimuthDeg < 360; azimuthDeg += ROSE_STEP_DEG) {
    const { peakInsideAirC } = judgeWall(alone, { ...bare, azimuthDeg }, day);
    yield { azimuthDeg, peakInsideAirC };
  }
}
