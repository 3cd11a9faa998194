import type { Site, Wall } from '../site.ts';
import { problem, SiteError, shown } from '../site-error.ts';

/**
 * The wall of a name.
 * @throws SiteError when the site has no wall of that name
 */
export function namedWall(site: Site, wallName: string): Wall {
  const wall = site.walls.find(({ name }) => name === wallName);
  if (wall !== undefined) return wall;
  const names = site.walls.map(({ name }) => name).join(', ');
  throw new SiteError([problem('wall', shown(wallName), `there is no wall ${shown(wallName)}`, names)]);
}
