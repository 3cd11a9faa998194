/** Differences that a site leaves room for: what a page offers to choose from. */
import { CLIMATE_SAMPLES, STANDARD_CYCLES } from '../climate/samples.ts';
import { FINISH_NAMES } from '../finishes.ts';
import type { Site } from '../site.ts';
import { SiteError } from '../site-error.ts';
import { namedWall } from '../siting/named-wall.ts';
import type { Difference, DifferenceKind } from './difference.ts';
import { secondStanding } from './second-site.ts';

/** Usual steps of each number; common practice, no source. */
const EAVES_M = [0, 0.3, 0.6, 0.9, 1.5];
const SCREENS = [0, 0.3];
const POWER_FACTORS = [0, 0.5, 0.75, 1.5, 2, 3];
const WINDS_MS = [0, 1, 2, 5, 8];
const ALTITUDES_M = [0, 500, 1500, 2600, 4000];

/** The differences of a kind that a box on a wall can be compared with, those that change nothing left out. */
export function differenceChoices(site: Site, wallName: string, kind: DifferenceKind): Difference[] {
  const wall = namedWall(site, wallName);
  const candidates: Record<DifferenceKind, () => Difference[]> = {
    wall: () => site.walls.filter((one) => one !== wall).map(({ name }) => ({ kind: 'wall', to: name })),
    finish: () => FINISH_NAMES.map((to) => ({ kind: 'finish', to, state: 'weathered' })),
    hood: () =>
      (['none', 'whitePaint', 'lightGreyPaint', 'blackPaint', 'bareAluminium'] as const).map((to) => ({
        kind: 'hood',
        to,
      })),
    eave: () => EAVES_M.map((depthM) => ({ kind: 'eave', depthM, heightAboveBoxM: 0.3 })),
    shade: () => SCREENS.map((transmittance) => ({ kind: 'shade', transmittance })),
    power: () => POWER_FACTORS.map((factor) => ({ kind: 'power', powerW: factor * site.box.powerW })),
    wind: () => WINDS_MS.map((windMs) => ({ kind: 'wind', windMs })),
    climate: () => [...CLIMATE_SAMPLES, ...STANDARD_CYCLES].map(({ name }) => ({ kind: 'climate', to: name })),
    altitude: () => ALTITUDES_M.map((altitudeM) => ({ kind: 'altitude', altitudeM })),
  };
  return candidates[kind]().filter((difference) => fits(site, wallName, difference));
}

function fits(site: Site, wallName: string, difference: Difference): boolean {
  try {
    secondStanding(site, wallName, difference);
    return true;
  } catch (error) {
    if (error instanceof SiteError) return false;
    throw error;
  }
}
