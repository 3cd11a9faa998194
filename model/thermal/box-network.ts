/**
 * The heat balance of a box on a wall, put together as a network.
 *
 * Free nodes: ground before the wall, wall beside the box, wall behind it, six skins, air inside, electronics, and a
 * sheet before each face that a hood covers; no wall lies behind a box on a post. Boundaries: outside air, sky, deep
 * ground, indoors. A skin is one sheet with one temperature; sheets meet through air and radiation only, which keeps a
 * sunlit face a little too hot and is on the safe side.
 */
import type { Construction } from '../constructions.ts';
import { FACES, type Mount, openFaces } from '../faces.ts';
import type { FilmAir } from './air.ts';
import { CONTACT_GAP_M, risingGapCoefficient, stillGapCoefficient } from './gap.ts';
import { covers, type Hood, hoodCapacitiesJK, hoodLinks } from './hood.ts';
import { INSIDE_ASSUMPTIONS, type Inside, insideCapacitiesJK, insideLinks } from './inside.ts';
import { plateFacingUp } from './natural-convection.ts';
import { createNetwork, type Link, type Network } from './network.ts';
import {
  longwave,
  OUTDOOR_ASSUMPTIONS,
  type OutdoorSetting,
  outdoorCoefficient,
  outdoorSurface,
  radiation,
  SKY_SHARE,
  wallCoefficient,
} from './outdoor-surface.ts';
import { parallelPlates } from './radiation.ts';
import { dailyCapacityJm2K, dailyPenetrationM, type Slab } from './slab.ts';

export interface BoxNetworkInput extends OutdoorSetting {
  readonly box: Inside & {
    readonly emittance: number;
    readonly mount: Mount;
    readonly standOffM: number;
    readonly hood: Hood | null;
  };
  readonly wall: OutdoorSetting['wall'] & {
    readonly construction: Construction;
    /** Area of the wall patch beside the box, m2. */
    readonly areaM2: number;
    readonly heightM: number;
    /** Infinite for a wall that runs on. */
    readonly lengthM: number;
    /** Speed of the wind on the wall against that of the free wind. */
    readonly windShelter: number;
  };
  /** Share of the sky dome that the ground before the wall sees. */
  readonly groundSky: number;
  readonly pressurePa: number;
  /** Air at that pressure. */
  readonly film: FilmAir;
  /** Multiplies the convection coefficients inside; 1 but where their uncertainty is tried out. */
  readonly insideFactor: number;
}

/** Nodes that may belong to the box itself: what the ledger draws its border round. */
const BOX_NODES = [...FACES, 'insideAir', 'electronics', 'battery', 'partition', 'lowerAir'];

/** The nodes of the box that a network has. */
export function boxNodes({ names }: Pick<Network, 'names'>): string[] {
  return BOX_NODES.filter((name) => names.includes(name));
}

/** Ground that the box sees as one surface, m2; large against the box, so that its size does not matter. */
export const GROUND_AREA_M2 = 10;

/** Length over which air sweeps the ground, m. */
const GROUND_LENGTH_M = 1;

/** Dry soil (ISO 10456:2007 gives 1.5 to 2 W/(m K) and 2e6 J/(m3 K) moist; drier soil conducts less; value from memory). */
const SOIL: Slab = { conductivityWmK: 1, densityKgM3: 1600, specificHeatJkgK: 1250 };

/** Thick enough to show the daily swing of an endless depth. */
const DEEP_M = 2;

/** Builds the network of one box on one wall. */
export function buildBoxNetwork(input: BoxNetworkInput): Network {
  const { box, film } = input;
  const links: Link[] = [
    ...outsideOfBox(input, film),
    ...(box.mount === 'wall' ? mounting(input, film) : []),
    ...insideLinks(box, input.faceAreasM2, { film, pressurePa: input.pressurePa, factor: input.insideFactor }),
    ...wallAndGround(input, film),
  ];
  return createNetwork({
    capacitiesJK: capacities(input),
    boundaries: ['outsideAir', 'sky', 'deepGround', 'indoors'],
    links,
  });
}

function outsideOfBox(input: BoxNetworkInput, film: FilmAir): Link[] {
  return openFaces(input.box.mount).flatMap((face) => {
    const bare = { node: face, face, emittance: input.box.emittance };
    return covers(input.box.hood, face) ? hoodLinks(input, film, face) : outdoorSurface(input, film, bare);
  });
}

function mounting({ box, wall }: BoxNetworkInput, film: FilmAir): Link[] {
  const area = box.widthM * box.heightM;
  const gapM = Math.max(box.standOffM, CONTACT_GAP_M);
  const channel = risingGapCoefficient(film, { gapM, heightM: box.heightM });
  const across = stillGapCoefficient(film, gapM);
  const label = 'mounting';
  return [
    { kind: 'convection', from: 'back', to: 'wallBehind', areaM2: area, coefficient: across, label },
    radiation('back', 'wallBehind', area * parallelPlates(box.emittance, wall.emittance), label),
    { kind: 'convection', from: 'back', to: 'outsideAir', areaM2: area, coefficient: channel, label },
    { kind: 'convection', from: 'wallBehind', to: 'outsideAir', areaM2: area, coefficient: channel },
  ];
}

function wallAndGround({ box, wall, groundSky, pressurePa }: BoxNetworkInput, film: FilmAir): Link[] {
  const covered = box.widthM * box.heightM;
  const { construction } = wall;
  const { conductivityWmK: k, outerLayerM } = construction;
  const inwards = 1 / (outerLayerM / (2 * k) + construction.innerResistanceM2KW);
  const beside = wallCoefficient(film, { ...wall, roughness: construction.roughness }, pressurePa);
  const groundEmitterM2 = GROUND_AREA_M2 * OUTDOOR_ASSUMPTIONS.groundEmittance;
  // Sideways through the outer layer, across the perimeter of the covered patch, over a way of its area over its
  // perimeter: from the mean place in the patch to its edge and as far again. Common practice, no source.
  const perimeter = 2 * (box.widthM + box.heightM);
  const layerM = Math.min(outerLayerM, dailyPenetrationM(construction));
  const sideways = (k * layerM * perimeter) / (covered / perimeter);
  const wallBehind: Link[] = [
    { kind: 'conduction', from: 'wallBehind', to: 'indoors', conductanceWK: inwards * covered },
    { kind: 'conduction', from: 'wallBeside', to: 'wallBehind', conductanceWK: sideways },
  ];
  return [
    { kind: 'convection', from: 'wallBeside', to: 'outsideAir', areaM2: wall.areaM2, coefficient: beside },
    ...longwave('wallBeside', wall.areaM2 * wall.emittance, wall.view, SKY_SHARE.front),
    { kind: 'conduction', from: 'wallBeside', to: 'indoors', conductanceWK: inwards * wall.areaM2 },
    ...(box.mount === 'wall' ? wallBehind : []),
    {
      kind: 'convection',
      from: 'ground',
      to: 'outsideAir',
      areaM2: GROUND_AREA_M2,
      coefficient: outdoorCoefficient(film, plateFacingUp(GROUND_LENGTH_M), {
        lengthM: GROUND_LENGTH_M,
        shelter: OUTDOOR_ASSUMPTIONS.groundShelter,
      }),
    },
    radiation('ground', 'sky', groundEmitterM2 * groundSky, 'longwaveGround'),
    // The building and whatever else stands above the ground are taken to be as warm as the air.
    radiation('ground', 'outsideAir', groundEmitterM2 * (1 - groundSky), 'longwaveGround'),
    // Force-restore: Bhumralkar 1975, J. Appl. Meteorol. 14:1246; capacity and conductance of one daily penetration depth.
    {
      kind: 'conduction',
      from: 'ground',
      to: 'deepGround',
      conductanceWK: (GROUND_AREA_M2 * SOIL.conductivityWmK) / dailyPenetrationM(SOIL),
    },
  ];
}

function capacities({ box, faceAreasM2, wall, pressurePa }: BoxNetworkInput): Record<string, number> {
  const { specificHeatJkgK, shellMassShare } = INSIDE_ASSUMPTIONS;
  const covered = box.widthM * box.heightM;
  const shellM2 = FACES.reduce((sum, face) => sum + faceAreasM2[face], 0);
  const perShellM2 = (box.massKg * shellMassShare * specificHeatJkgK) / shellM2;
  const wallM2 = dailyCapacityJm2K(wall.construction, wall.construction.outerLayerM);
  return {
    ground: GROUND_AREA_M2 * dailyCapacityJm2K(SOIL, DEEP_M),
    wallBeside: wall.areaM2 * wallM2,
    ...(box.mount === 'wall' && { wallBehind: covered * wallM2 }),
    front: faceAreasM2.front * perShellM2,
    left: faceAreasM2.left * perShellM2,
    right: faceAreasM2.right * perShellM2,
    top: faceAreasM2.top * perShellM2,
    bottom: faceAreasM2.bottom * perShellM2,
    back: faceAreasM2.back * perShellM2,
    ...insideCapacitiesJK(box, pressurePa),
    ...hoodCapacitiesJK(box.hood, faceAreasM2),
  };
}
