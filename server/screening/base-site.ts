/** The site file whose box, limits and walls hold for every row. */
import type { SiteInput } from '../../model/index.ts';
import { readSiteInput } from '../site-file.ts';
import type { BaseSite } from './row-site.ts';

/** What belongs to one wall of one place and means nothing elsewhere. */
const OF_ONE_WALL = ['name', 'azimuthDeg', 'edge', 'alongM', 'electrodeDistanceM', 'cableDistanceM', 'horizon'];

/**
 * Reads the parts of a site file that a screening takes over.
 * @throws BadInput when it is no valid site
 */
export async function readBaseSite(path: string): Promise<BaseSite> {
  return baseOf((await readSiteInput(path)).input as SiteInput);
}

/** Place, climate, building and the list of walls are those of the rows. */
export function baseOf({ box, limits, ground, constraints, walls }: SiteInput): BaseSite {
  const wall = Object.fromEntries(Object.entries(walls[0] ?? {}).filter(([key]) => !OF_ONE_WALL.includes(key)));
  return { box, wall, ...(limits && { limits }), ...(ground && { ground }), ...(constraints && { constraints }) };
}
