/** From a wall and its day to the network of the box and what drives it. */
import { CONSTRUCTIONS } from '../constructions.ts';
import { FACES } from '../faces.ts';
import { KELVIN } from '../physical-constants.ts';
import { faceAreasM2, wallPatchMarginM } from '../shading/wall-frame.ts';
import type { Box, Site, Wall } from '../site.ts';
import { pressureAtAltitude } from '../solar/atmosphere.ts';
import { buildBoxNetwork, GROUND_AREA_M2 } from '../thermal/box-network.ts';
import type { Network } from '../thermal/network.ts';
import type { DayForcing } from '../thermal/periodic-day.ts';
import { blackbodyK } from '../thermal/radiation.ts';
import type { SiteDay } from './design-day.ts';
import { faceViewFactors, totalSun, type WallShade, type WallSun } from './face-sun.ts';

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

/** Albedo of the ground before a wall. */
export function albedoBefore(site: Site, wall: Wall): number {
  return wall.groundAlbedo ?? site.ground.albedo;
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
  const windMs = Float64Array.from(day.steps, ({ weather }) => weather.windMs);
  const meanAirK = day.steps.reduce((sum, { weather }) => sum + weather.airC, 0) / day.steps.length + KELVIN;
  const boundariesK = day.steps.map(({ weather }) =>
    Float64Array.of(weather.airC + KELVIN, blackbodyK(weather.skyLongwaveWm2), meanAirK, meanAirK),
  );
  const nodes = { wall: network.indexOf('wallBeside'), ground: network.indexOf('ground') };
  const electronics = network.indexOf('electronics');
  const areas = faceAreasM2(site.box);
  const absorbers = FACES.map((face) => ({
    face,
    node: network.indexOf(face),
    absorberM2: site.box.solarAbsorptance * areas[face],
  }));
  const wallAbsorberM2 = wall.solarAbsorptance * wallPatchAreaM2(site.box);
  const groundAbsorberM2 = (1 - albedoBefore(site, wall)) * GROUND_AREA_M2;
  const sourcesW = sun.map((now) => {
    const row = new Float64Array(network.freeCount);
    for (const { face, node, absorberM2 } of absorbers) row[node] = absorberM2 * totalSun(now.faces[face]);
    row[nodes.wall] = wallAbsorberM2 * totalSun(now.wall);
    row[nodes.ground] = groundAbsorberM2 * now.ground;
    row[electronics] = site.box.powerW;
    return row;
  });
  return { steps: day.steps.length, stepS: day.stepS, boundariesK, sourcesW, windMs };
}
