/** From a wall and its day to the network of the box and what drives it. */
import type { CivilDay } from '../civil-day.ts';
import { CONSTRUCTIONS } from '../constructions.ts';
import { DUTIES } from '../duty.ts';
import { KELVIN } from '../physical-constants.ts';
import { faceAreasM2, panelAreaM2 } from '../shading/wall-frame.ts';
import type { Site, Wall } from '../site.ts';
import { pressureAtAltitude } from '../solar/atmosphere.ts';
import type { FilmAir } from '../thermal/air.ts';
import { buildBoxNetwork, GROUND_AREA_M2 } from '../thermal/box-network.ts';
import { filmAirTable } from '../thermal/film-air.ts';
import { covers, hoodNode } from '../thermal/hood.ts';
import type { Network } from '../thermal/network.ts';
import type { DayForcing } from '../thermal/periodic-day.ts';
import { blackbodyK } from '../thermal/radiation.ts';
import { stepTable, writeRow } from '../thermal/step-table.ts';
import type { SiteDay } from './design-day.ts';
import type { WallShade } from './receivers.ts';
import { faceViewFactors } from './wall-shade.ts';
import type { WallSun } from './wall-sun.ts';
import { boxShelter, wallShelter } from './wind-shelter.ts';

/** What a caller may have at hand, or try out. */
export interface NetworkOptions {
  /** Air at the pressure of the place. */
  readonly film?: FilmAir | undefined;
  /** Multiplies the convection coefficients inside; 1 where left out. */
  readonly insideFactor?: number | undefined;
}

/** The network of a site's box on a wall. */
export function wallNetwork(site: Site, wall: Wall, shade: WallShade, options: NetworkOptions = {}): Network {
  const { box } = site;
  const pressurePa = pressureAtAltitude(site.place.altitudeM);
  const { film = filmAirTable(pressurePa), insideFactor = 1 } = options;
  return buildBoxNetwork({
    box,
    faceAreasM2: faceAreasM2(box),
    faceViews: faceViewFactors(shade),
    wall: {
      construction: CONSTRUCTIONS[wall.construction],
      emittance: wall.emittance,
      areaM2: wallPatchAreaM2(shade, site),
      heightM: wall.heightM,
      lengthM: wallLengthM(shade),
      view: shade.wall.view.factors,
      windShelter: wallShelter(site, wall),
    },
    windShelter: boxShelter(site, wall),
    insideFactor,
    film,
    groundSky: shade.faces.front.view.groundSky,
    pressurePa,
  });
}

/** What of a day drives a network. */
export interface ForcedDay extends Pick<SiteDay, 'steps' | 'stepS'> {
  /** Hour of the local clock at which the day begins; midnight where left out. */
  readonly firstHour?: number;
  /** A civil day of the place. */
  readonly civil?: CivilDay;
}

/** Share of the entered power at each step of a day, by the local clock. */
export function dutyShares({ box }: Site, { steps, stepS, firstHour = 0, civil }: ForcedDay): Float64Array {
  const { hourly } = DUTIES[box.duty];
  // Where the clock changes the hours since midnight are not those of the clock.
  const changes = civil !== undefined && civil.hours !== 24;
  const shares = new Float64Array(steps.length);
  steps.forEach(({ utc }, k) => {
    const hour = changes ? Number(civil.clockTime(utc).slice(0, 2)) : Math.floor(firstHour + (k * stepS) / 3600);
    shares[k] = hourly[hour % 24] as number;
  });
  return shares;
}

/** Albedo of the ground before a wall. */
export function albedoBefore(site: Site, wall: Wall): number {
  return wall.groundAlbedo ?? site.ground.albedo;
}

/** Length of the wall, m; infinite where no outline of the building is given. */
function wallLengthM({ scene }: WallShade): number {
  return scene.wall.rightEndM - scene.wall.leftEndM;
}

/** Area of the wall patch beside the box, m2; behind a box on a post the patch is whole. */
function wallPatchAreaM2(shade: WallShade, { box }: Site): number {
  return panelAreaM2(shade.wall.panel) - (box.mount === 'wall' ? box.widthM * box.heightM : 0);
}

/**
 * Boundaries, absorbed sun, dissipation and wind of each step, laid out for the network. Indoors is taken as warm as the
 * outside air on average; the deep ground starts there too and is balanced afterwards.
 */
export function dayForcing(input: {
  site: Site;
  wall: Wall;
  day: ForcedDay;
  shade: WallShade;
  sun: WallSun;
  network: Network;
}): DayForcing {
  const { site, wall, day, shade, sun, network } = input;
  const steps = day.steps.length;
  const windMs = new Float64Array(steps);
  day.steps.forEach(({ weather }, k) => {
    windMs[k] = weather.windMs;
  });
  const meanAirK = day.steps.reduce((sum, { weather }) => sum + weather.airC, 0) / steps + KELVIN;
  const boundariesK = stepTable(steps, network.names.length - network.freeCount);
  day.steps.forEach(({ weather }, k) => {
    writeRow(boundariesK, k, [weather.airC + KELVIN, blackbodyK(weather.skyLongwaveWm2), meanAirK, meanAirK]);
  });

  const sourcesW = stepTable(steps, network.freeCount);
  const fill = (node: string, wattsAt: (step: number) => number): void => {
    const column = network.indexOf(node);
    for (let k = 0; k < steps; k++) sourcesW.values[k * sourcesW.width + column] = wattsAt(k);
  };
  const areas = faceAreasM2(site.box);
  for (const face of shade.open) {
    const { box } = site;
    const { total } = sun.faces[face];
    const [node, absorptance] =
      box.hood !== null && covers(box.hood, face)
        ? [hoodNode(face), box.hood.solarAbsorptance]
        : [face, box.solarAbsorptance];
    fill(node, (k) => absorptance * areas[face] * (total[k] as number));
  }
  const wallAbsorberM2 = wall.solarAbsorptance * wallPatchAreaM2(shade, site);
  fill('wallBeside', (k) => wallAbsorberM2 * (sun.wall.total[k] as number));
  const groundAbsorberM2 = (1 - albedoBefore(site, wall)) * GROUND_AREA_M2;
  fill('ground', (k) => groundAbsorberM2 * (sun.ground[k] as number));
  const { powerW, battery, compartments } = site.box;
  const lowerW = compartments?.lowerPowerW ?? 0;
  const share = dutyShares(site, day);
  fill('electronics', (k) => (powerW - lowerW) * (share[k] as number));
  if (compartments !== null) fill('lowerAir', (k) => lowerW * (share[k] as number));
  if (battery !== null) fill('battery', () => battery.powerW);
  return { steps, stepS: day.stepS, boundariesK, sourcesW, windMs };
}
