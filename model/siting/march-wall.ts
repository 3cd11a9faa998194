/** One wall through one day: shade, sun, network and march together. */
import type { Site, Wall } from '../site.ts';
import type { Network } from '../thermal/network.ts';
import { balanceDeepGround, type DayForcing, marchPeriodicDay, type PeriodicDay } from '../thermal/periodic-day.ts';
import { albedoBefore, dayForcing, wallNetwork } from './day-forcing.ts';
import type { SiteDay } from './design-day.ts';
import { type DayShade, prepareWallShade } from './wall-shade.ts';
import { type WallSun, wallSun } from './wall-sun.ts';

export interface MarchedWall {
  readonly network: Network;
  readonly forcing: DayForcing;
  readonly march: PeriodicDay;
  readonly sun: WallSun;
}

/** What a caller may have at hand, or try out. */
export interface MarchOptions {
  /** Of this wall and the suns of this day, prepared before. */
  readonly shade?: DayShade;
  /** Multiplies the convection coefficients inside; 1 where left out. */
  readonly insideFactor?: number;
}

/** Marches the box on a wall through a day that was worked out before. */
export function marchWall(site: Site, wall: Wall, day: SiteDay, options: MarchOptions = {}): MarchedWall {
  const { shade = prepareWallShade(site, wall, day), insideFactor = 1 } = options;
  const network = wallNetwork(site, wall, shade, { film: day.film, insideFactor });
  const reflectors = { albedo: albedoBefore(site, wall), wallAbsorptance: wall.solarAbsorptance };
  const sun = wallSun(shade, day.steps, reflectors, shade.lit);
  const forcing = dayForcing({ site, wall, day, shade, sun, network });
  balanceDeepGround(network, forcing, { surface: 'ground', deep: 'deepGround' });
  return { network, forcing, march: marchPeriodicDay(network, forcing), sun };
}
