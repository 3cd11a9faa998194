/** From a wall and its day to the network of the box and what drives it. */
import { CONSTRUCTIONS } from '../constructions.ts';
import { FACES } from '../faces.ts';
import { faceAreasM2, wallPatchMarginM } from '../shading/wall-frame.ts';
import type { Box, Site, Wall } from '../site.ts';
import { pressureAtAltitude } from '../solar/atmosphere.ts';
import { buildBoxNetwork, GROUND_AREA_M2 } from '../thermal/box-network.ts';
import type { Network } from '../thermal/network.ts';
import type { DayForcing } from '../thermal/periodic-day.ts';
import { blackbodyK } from '../thermal/radiation.ts';
import type { SiteDay } from './design-day.ts';
import { faceViewFactors, totalSun, type WallShade, type WallSun } from './face-sun.ts';

/** 0 degC in kelvin. */
export const KELVIN = 273.15;

/** The network of a site's box on a wall. */
export function wallNetwork(site: Site, wall: Wall, shade: WallShade): Network {
  const { box } = site;
  return buildBoxNetwork({
    box,
    faceAreasM2: faceAreasM2(box),
    faceViews: faceViewFactors(shade),
    wall: {
      construction: CONSTRUCTIONS[wall.construction],
      emittance: wall.emittance,
      areaM2: wallPatchAreaM2(box),
      heightM: wall.heightM,
      view: shade.wall.view.factors,
    },
    pressurePa: pressureAtAltitude(site.place.altitudeM),
  });
}

/** Area of the wall patch beside the box, m2. */
function wallPatchAreaM2(box: Box): number {
  const margin = wallPatchMarginM(box);
  return (box.widthM + 2 * margin) * (box.heightM + 2 * margin) - box.widthM * box.heightM;
}

/**
 * Boundaries, absorbed sun, dissipation and wind of each step, laid out for the network. Indoors is taken as warm as the
 * outside air on average; the deep ground starts there too and is balanced afterwards.
 */
export function dayForcing(
  site: Site,
  wall: Wall,
  day: SiteDay,
  sun: readonly WallSun[],
  network: Network,
): DayForcing {
  const steps = day.steps.length;
  const n = network.freeCount;
  const boundaries = network.names.length - n;
  const boundariesK = new Float64Array(steps * boundaries);
  const sourcesW = new Float64Array(steps * n);
  const windMs = Float64Array.from(day.steps, ({ weather }) => weather.windMs);
  const meanAirK = day.steps.reduce((sum, { weather }) => sum + weather.airC, 0) / steps + KELVIN;
  const at = (name: string) => network.indexOf(name);
  const areas = faceAreasM2(site.box);
  const faceNodes = FACES.map((face) => ({
    face,
    node: at(face),
    absorberM2: site.box.solarAbsorptance * areas[face],
  }));
  const wallAbsorberM2 = wall.solarAbsorptance * wallPatchAreaM2(site.box);
  const groundAbsorberM2 = (1 - site.ground.albedo) * GROUND_AREA_M2;

  day.steps.forEach(({ weather }, k) => {
    boundariesK.set([weather.airC + KELVIN, blackbodyK(weather.skyLongwaveWm2), meanAirK, meanAirK], k * boundaries);
    const row = sourcesW.subarray(k * n, (k + 1) * n);
    const now = sun[k] as WallSun;
    for (const { face, node, absorberM2 } of faceNodes) row[node] = absorberM2 * totalSun(now.faces[face]);
    row[at('wallBeside')] = wallAbsorberM2 * totalSun(now.wall);
    row[at('ground')] = groundAbsorberM2 * now.ground;
    row[at('electronics')] = site.box.powerW;
  });
  return { steps, stepS: day.stepS, boundariesK, sourcesW, windMs };
}
