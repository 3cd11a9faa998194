/**
 * The heat balance of a closed box on a wall, put together as a network.
 *
 * Free nodes: ground before the wall, wall beside the box, wall behind it, six skins, air inside, electronics, and a
 * sheet before each face that a hood covers; no wall lies behind a box on a post. Boundaries: outside air, sky, deep
 * ground, indoors. A skin is one sheet with one temperature; sheets meet through air and radiation only, which keeps a
 * sunlit face a little too hot and is on the safe side.
 */
import type { Construction } from '../constructions.ts';
import { FACES, type Mount, openFaces } from '../faces.ts';
import { AIR_SPECIFIC_HEAT_JKGK, airDensity, type FilmAir, filmAirTable } from './air.ts';
import { CONTACT_GAP_M, channelCoefficient } from './gap.ts';
import { covers, type Hood, hoodCapacitiesJK, hoodLinks } from './hood.ts';
import {
  irregularSolid,
  type NaturalCoefficient,
  plateFacingDown,
  plateFacingUp,
  stillVerticalPlate,
  verticalPlate,
} from './natural-convection.ts';
import { type Coefficient, createNetwork, type Link, type Network } from './network.ts';
import {
  longwave,
  OUTDOOR_ASSUMPTIONS,
  type OutdoorSetting,
  outdoorCoefficient,
  outdoorSurface,
  radiation,
  SKY_SHARE,
} from './outdoor-surface.ts';
import { parallelPlates, roomExchangeAreas } from './radiation.ts';
import { dailyCapacityJm2K, dailyPenetrationM, type Slab } from './slab.ts';

export interface BoxNetworkInput extends OutdoorSetting {
  readonly box: {
    readonly widthM: number;
    readonly heightM: number;
    readonly depthM: number;
    readonly emittance: number;
    readonly massKg: number;
    readonly mount: Mount;
    readonly standOffM: number;
    readonly hood: Hood | null;
  };
  readonly wall: OutdoorSetting['wall'] & {
    readonly construction: Construction;
    /** Area of the wall patch beside the box, m2. */
    readonly areaM2: number;
    readonly heightM: number;
  };
  /** Share of the sky dome that the ground before the wall sees. */
  readonly groundSky: number;
  readonly pressurePa: number;
}

/** Node names of the box itself: what the ledger draws its border round. */
export const BOX_NODES = [...FACES, 'insideAir', 'electronics'] as const;

/** What the box network takes for granted; shown to the user as assumptions. */
export const BOX_ASSUMPTIONS = {
  /** Share of the mass that is shell; the rest is electronics. */
  shellMassShare: 0.5,
  /** Specific heat of shell and electronics, J/(kg K): between aluminium (900) and plastics (1500). */
  specificHeatJkgK: 1000,
  /** Emittance of surfaces inside: paint, plastic, circuit boards. */
  insideEmittance: 0.9,
  /** Area of one side of the electronics against that of the back plate; both sides give heat off. */
  boardAreaShare: 0.6,
} as const;

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
  const { box } = input;
  const film = filmAirTable(input.pressurePa);
  const boardM2 = BOX_ASSUMPTIONS.boardAreaShare * box.widthM * box.heightM;
  const links: Link[] = [
    ...outsideOfBox(input, film),
    ...(box.mount === 'wall' ? mounting(input, film) : []),
    ...insideOfBox(input, film, boardM2),
    ...wallAndGround(input, film),
  ];
  return createNetwork({
    capacitiesJK: capacities(input),
    boundaries: ['outsideAir', 'sky', 'deepGround', 'indoors'],
    links,
  });
}

function stillCoefficient(film: FilmAir, natural: NaturalCoefficient): Coefficient {
  return (surfaceK, airK) => natural(film(surfaceK, airK), surfaceK, airK);
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
  const channel: Coefficient = (surfaceK, airK) =>
    channelCoefficient(film(surfaceK, airK), surfaceK - airK, gapM, box.heightM);
  const across: Coefficient = (backK, wallK) => film(backK, wallK).conductivityWmK / gapM;
  const label = 'mounting';
  return [
    { kind: 'convection', from: 'back', to: 'wallBehind', areaM2: area, coefficient: across, label },
    radiation('back', 'wallBehind', area * parallelPlates(box.emittance, wall.emittance), label),
    { kind: 'convection', from: 'back', to: 'outsideAir', areaM2: area, coefficient: channel, label },
    { kind: 'convection', from: 'wallBehind', to: 'outsideAir', areaM2: area, coefficient: channel },
  ];
}

function insideOfBox({ box, faceAreasM2 }: BoxNetworkInput, film: FilmAir, boardM2: number): Link[] {
  const levelLengthM = (box.widthM * box.depthM) / (2 * (box.widthM + box.depthM));
  const upright = stillCoefficient(film, stillVerticalPlate(box.heightM));
  const walls: [string, number, Coefficient][] = [
    ['front', faceAreasM2.front, upright],
    ['left', faceAreasM2.left, upright],
    ['right', faceAreasM2.right, upright],
    ['back', faceAreasM2.back, upright],
    // The air lies below the lid and above the floor.
    ['top', faceAreasM2.top, stillCoefficient(film, plateFacingDown(levelLengthM))],
    ['bottom', faceAreasM2.bottom, stillCoefficient(film, plateFacingUp(levelLengthM))],
    ['electronics', 2 * boardM2, stillCoefficient(film, irregularSolid(box.heightM * BOX_ASSUMPTIONS.boardAreaShare))],
  ];
  const exchange = roomExchangeAreas(
    walls.map(([, areaM2]) => ({ areaM2, emittance: BOX_ASSUMPTIONS.insideEmittance })),
  );
  return walls.flatMap(([name, areaM2, coefficient], i): Link[] => [
    { kind: 'convection', from: name, to: 'insideAir', areaM2, coefficient },
    ...walls.slice(i + 1).map(([other], j) => ({
      kind: 'radiation' as const,
      from: name,
      to: other,
      exchangeAreaM2: exchange[i]?.[i + 1 + j] ?? 0,
    })),
  ]);
}

function wallAndGround({ box, wall, groundSky }: BoxNetworkInput, film: FilmAir): Link[] {
  const covered = box.widthM * box.heightM;
  const { construction } = wall;
  const { conductivityWmK: k, outerLayerM } = construction;
  const inwards = 1 / (outerLayerM / (2 * k) + construction.innerResistanceM2KW);
  const shelter = OUTDOOR_ASSUMPTIONS.windShelter;
  const beside = outdoorCoefficient(film, verticalPlate(wall.heightM), { lengthM: wall.heightM, shelter });
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
      coefficient: outdoorCoefficient(film, plateFacingUp(GROUND_LENGTH_M), { lengthM: GROUND_LENGTH_M, shelter }),
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
  const { specificHeatJkgK, shellMassShare } = BOX_ASSUMPTIONS;
  const covered = box.widthM * box.heightM;
  const shellM2 = FACES.reduce((sum, face) => sum + faceAreasM2[face], 0);
  const perShellM2 = (box.massKg * shellMassShare * specificHeatJkgK) / shellM2;
  const wallM2 = dailyCapacityJm2K(wall.construction, wall.construction.outerLayerM);
  const airKg = airDensity(300, pressurePa) * covered * box.depthM;
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
    insideAir: airKg * AIR_SPECIFIC_HEAT_JKGK,
    electronics: box.massKg * (1 - shellMassShare) * specificHeatJkgK,
    ...hoodCapacitiesJK(box.hood, faceAreasM2),
  };
}
