/** Makes site B of site A: one difference, everything else as it was. */
import { designClimate, monthOfSample, resolvedClearDay } from '../climate/design-climate.ts';
import { CLIMATE_SAMPLES } from '../climate/samples.ts';
import { FIELDS } from '../fields.ts';
import { FINISHES, type FinishName } from '../finishes.ts';
import { type Box, type Site, USUAL_HOOD_FACES, type Wall } from '../site.ts';
import { problem, SiteError, shown } from '../site-error.ts';
import { ruleProblems } from '../site-rules.ts';
import { namedWall } from '../siting/named-wall.ts';
import { readNumberText } from '../units.ts';
import type { Difference } from './difference.ts';

/** A box on a wall of a site. */
export interface Standing {
  readonly site: Site;
  readonly wallName: string;
}

/** The screen of a `shade`: this far from the wall, this high and wide, m. Invented: a fence or a trellis in front. */
export const SCREEN = { distanceM: 1, heightM: 2.4, widthM: 4 } as const;

/** Gap of a hood that a comparison puts on, m: the usual one. */
const HOOD_GAP_M = FIELDS['box.hood.gapM'].default.value;

/**
 * Site B and its wall.
 * @throws SiteError when the difference does not fit the site, or changes nothing
 */
export function secondStanding(site: Site, wallName: string, difference: Difference): Standing {
  const wall = namedWall(site, wallName);
  const second = changed(site, wall, difference);
  const problems = ruleProblems(second.site, readNumberText);
  if (problems.length > 0) throw new SiteError(problems);
  if (second.wallName === wallName && sameSite(second.site, site)) {
    const wrong = 'box B is as box A already';
    throw new SiteError([problem('difference', difference.kind, wrong, 'something that differs from the site')]);
  }
  return second;
}

/** Whether two sites have the same day; a climate may be named in two ways. */
function sameSite(a: Site, b: Site): boolean {
  const text = (site: Site) => JSON.stringify({ ...site, climate: resolvedClearDay(site) ?? site.climate });
  return text(a) === text(b);
}

function changed(site: Site, wall: Wall, difference: Difference): Standing {
  const wallName = wall.name;
  const withBox = (box: Partial<Box>): Standing => ({ site: { ...site, box: { ...site.box, ...box } }, wallName });
  const withWall = (now: Partial<Wall>): Standing => ({
    site: { ...site, walls: site.walls.map((one) => (one === wall ? { ...wall, ...now } : one)) },
    wallName,
  });
  switch (difference.kind) {
    case 'wall':
      return { site, wallName: otherWall(site, wall, difference.to) };
    case 'finish':
      return withBox({
        finish: difference.to,
        finishState: difference.state,
        ...FINISHES[difference.to][difference.state],
      });
    case 'hood':
      return withBox({ hood: difference.to === 'none' ? null : hoodOf(difference.to) });
    case 'eave':
      return withWall(eaved(site, wall, difference));
    case 'shade':
      return withWall({ obstructions: [...wall.obstructions, screen(difference.transmittance)] });
    case 'power':
      return withBox({ powerW: difference.powerW, compartments: scaledRooms(site.box, difference.powerW) });
    case 'wind':
      return { site: { ...site, climate: windy(site, difference.windMs) }, wallName };
    case 'climate':
      return { site: inClimate(site, difference.to), wallName };
    case 'altitude':
      return { site: { ...site, place: { ...site.place, altitudeM: difference.altitudeM } }, wallName };
  }
}

function otherWall(site: Site, wall: Wall, to: string): string {
  const others = site.walls.filter((one) => one !== wall).map(({ name }) => name);
  if (others.includes(to)) return to;
  const wrong = to === wall.name ? 'box A hangs on that wall' : `there is no wall ${shown(to)}`;
  throw new SiteError([problem('difference.to', shown(to), wrong, others.join(', '))]);
}

function hoodOf(finish: FinishName): NonNullable<Box['hood']> {
  return { faces: [...USUAL_HOOD_FACES], gapM: HOOD_GAP_M, openTop: true, ...FINISHES[finish].weathered };
}

function eaved({ box }: Site, wall: Wall, eave: Extract<Difference, { kind: 'eave' }>): Partial<Wall> {
  if (eave.depthM === 0) return { eave: null };
  const { depthM, heightAboveBoxM } = eave;
  const widthM = FIELDS['walls[].eave.widthM'].default.value;
  const topM = box.mountHeightM + box.heightM / 2 + heightAboveBoxM;
  return {
    eave: { depthM, heightAboveBoxM, widthM, offsetM: 0, transmittance: 0 },
    heightM: Math.max(wall.heightM, topM),
  };
}

function screen(transmittance: number): Wall['obstructions'][number] {
  return { kind: 'front', ...SCREEN, offsetM: 0, transmittance };
}

/** A lower room keeps its share of the power. */
function scaledRooms({ compartments, powerW }: Box, nowW: number): Box['compartments'] {
  if (compartments === null) return null;
  const lowerPowerW = powerW > 0 ? (compartments.lowerPowerW * nowW) / powerW : 0;
  return { ...compartments, lowerPowerW };
}

/** The same day with another wind. */
function windy(site: Site, windMs: number): Site['climate'] {
  const day = resolvedClearDay(site);
  if (day === null) return { ...site.climate, windMs };
  const { sample: _sample, month: _month, ...rest } = site.climate;
  return { ...rest, designDay: { ...day, windMs } };
}

/**
 * The site on the same date in a climate by its name: a sample's day of that month, or a standard's cycle with the wind that
 * the site had. Place, altitude and sun stay. The coldest night belongs to the former climate and goes with it.
 */
export function inClimate(site: Site, name: string): Site {
  const { date } = designClimate(site);
  const { windFromDeg } = site.climate;
  const from = windFromDeg !== undefined && { windFromDeg };
  const sample = CLIMATE_SAMPLES.find((one) => one.name === name);
  if (sample === undefined) {
    const cycle = name as NonNullable<Site['climate']['cycle']>;
    const windMs = resolvedClearDay(site)?.windMs ?? site.climate.windMs ?? FIELDS['climate.windMs'].default.value;
    return { ...site, climate: { ...from, cycle, date, windMs } };
  }
  const month = Number(date.slice(5, 7));
  const designDay = { ...monthOfSample(sample, month, site.place.latitudeDeg), date };
  return { ...site, climate: { ...from, designDay } };
}
