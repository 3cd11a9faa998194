/** How much of the free wind sweeps a box and its wall. */
import { bearingsApartDeg } from '../building-outline.ts';
import type { Site, Wall } from '../site.ts';
import { OUTDOOR_ASSUMPTIONS } from '../thermal/outdoor-surface.ts';

/** Further from the wind than this a wall lies in the lee, degrees. */
const LEE_FROM_DEG = 100;

/**
 * Speed of the wind along a wall against that of the free wind, 0 to 1. Where the direction of the wind is known a wall that
 * it meets has all of it and one in the lee a quarter, which halves the coefficient; where it is not, every wall is taken as
 * in the lee.
 *
 * Source: Sparrow, Ramsey and Mass 1979, J. Heat Transfer 101:199, as used by Walton 1983 (EnergyPlus Engineering Reference:
 * leeward where the wind comes from more than 100 degrees off the outward normal).
 */
export function wallShelter({ climate }: Site, wall: Wall): number {
  if (wall.windShelter !== null) return wall.windShelter;
  const { windFromDeg } = climate;
  const met = windFromDeg !== undefined && bearingsApartDeg(windFromDeg, wall.azimuthDeg) <= LEE_FROM_DEG;
  return met ? OUTDOOR_ASSUMPTIONS.windwardShelter : OUTDOOR_ASSUMPTIONS.windShelter;
}

/** Speed of the wind over the box against that of the free wind, 0 to 1; a post stands clear of the wall. */
export function boxShelter(site: Site, wall: Wall): number {
  if (site.box.mount === 'wall') return wallShelter(site, wall);
  return wall.windShelter ?? OUTDOOR_ASSUMPTIONS.postShelter;
}
