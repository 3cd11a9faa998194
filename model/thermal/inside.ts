/**
 * The inside of a box: one room, or two with a sheet between them. In each room the air trades with the surfaces round it,
 * and the surfaces with each other by radiation.
 */
import type { PerFace } from '../faces.ts';
import { AIR_SPECIFIC_HEAT_JKGK, airDensity, type FilmAir } from './air.ts';
import { type Battery, batteryAreaM2, batteryCapacityJK, batteryEdgeM } from './battery.ts';
import {
  irregularSolid,
  type NaturalCoefficient,
  naturalCoefficient,
  plateFacingDown,
  plateFacingUp,
  stillVerticalPlate,
} from './natural-convection.ts';
import type { Link } from './network.ts';
import { roomExchangeAreas } from './radiation.ts';
import { stackFlowCoefficient, type Vents, ventsOpen } from './vents.ts';

/** A second room below the one with the electronics. */
export interface Compartments {
  /** Share of the height that the lower room has. */
  readonly lowerShare: number;
  /** Heat given off in the lower room besides the battery's, W. */
  readonly lowerPowerW: number;
}

export interface Inside {
  readonly widthM: number;
  readonly heightM: number;
  readonly depthM: number;
  readonly massKg: number;
  readonly vents: Vents | null;
  readonly battery: Battery | null;
  readonly compartments: Compartments | null;
}

/** What the inside takes for granted; shown to the user as assumptions. */
export const INSIDE_ASSUMPTIONS = {
  /** Share of the mass that is shell; the rest is electronics. */
  shellMassShare: 0.5,
  /** Specific heat of shell and electronics, J/(kg K): between aluminium (900) and plastics (1500). */
  specificHeatJkgK: 1000,
  /** Emittance of surfaces inside: paint, plastic, circuit boards. */
  insideEmittance: 0.9,
  /** Area of one side of the electronics against that of the back plate; both sides give heat off. */
  boardAreaShare: 0.6,
} as const;

/** Sheet between two rooms: 1 mm of steel, J/(m2 K) (7800 kg/m3, 470 J/(kg K)). */
const PARTITION_CAPACITY_JM2K = 3670;

/** A surface of a room: its node, its area, and how the air of the room takes heat from it. */
type Surface = readonly [node: string, areaM2: number, natural: NaturalCoefficient];

/** A room by the node of its air and the surfaces round it. */
interface Room {
  readonly air: string;
  readonly heightM: number;
  readonly surfaces: readonly Surface[];
}

/**
 * Links of the inside.
 * @param factor by which the convection coefficients inside are multiplied; 1 but where their uncertainty is tried out
 */
export function insideLinks(
  box: Inside,
  areasM2: PerFace<number>,
  { film, pressurePa, factor }: { film: FilmAir; pressurePa: number; factor: number },
): Link[] {
  const links = roomsOf(box, areasM2).flatMap((room) => roomLinks(room, film, factor));
  if (!ventsOpen(box.vents)) return links;
  const coefficient = stackFlowCoefficient(box.vents, pressurePa);
  return [
    ...links,
    { kind: 'convection', from: 'insideAir', to: 'outsideAir', areaM2: 1, coefficient, label: 'vents' },
  ];
}

/** Heat capacities of what is inside besides the shell, J/K. */
export function insideCapacitiesJK(box: Inside, pressurePa: number): Record<string, number> {
  const { specificHeatJkgK, shellMassShare } = INSIDE_ASSUMPTIONS;
  const airJK = airDensity(300, pressurePa) * AIR_SPECIFIC_HEAT_JKGK * box.widthM * box.depthM * box.heightM;
  const lowerShare = box.compartments?.lowerShare ?? 0;
  return {
    insideAir: airJK * (1 - lowerShare),
    electronics: box.massKg * (1 - shellMassShare) * specificHeatJkgK,
    ...(box.battery && { battery: batteryCapacityJK(box.battery) }),
    ...(box.compartments && {
      lowerAir: airJK * lowerShare,
      partition: PARTITION_CAPACITY_JM2K * box.widthM * box.depthM,
    }),
  };
}

function roomsOf(box: Inside, areas: PerFace<number>): Room[] {
  const { widthM, heightM, depthM, battery, compartments } = box;
  const lowerShare = compartments?.lowerShare ?? 0;
  const upperM = heightM * (1 - lowerShare);
  const levelM = (widthM * depthM) / (2 * (widthM + depthM));
  const board = INSIDE_ASSUMPTIONS.boardAreaShare;
  const sides = (roomM: number): Surface[] =>
    (['front', 'left', 'right', 'back'] as const).map((face) => [
      face,
      areas[face] * (roomM / heightM),
      stillVerticalPlate(roomM),
    ]);
  const electronics: Surface = ['electronics', 2 * board * widthM * upperM, irregularSolid(upperM * board)];
  const stored: Surface[] = battery ? [['battery', batteryAreaM2(battery), irregularSolid(batteryEdgeM(battery))]] : [];
  // The air lies below a lid and above a floor.
  const lid: Surface = ['top', areas.top, plateFacingDown(levelM)];
  const floor: Surface = ['bottom', areas.bottom, plateFacingUp(levelM)];
  if (compartments === null) {
    return [{ air: 'insideAir', heightM, surfaces: [...sides(heightM), lid, floor, electronics, ...stored] }];
  }
  const lowerM = heightM * lowerShare;
  const partition = (natural: NaturalCoefficient): Surface => ['partition', widthM * depthM, natural];
  return [
    {
      air: 'insideAir',
      heightM: upperM,
      surfaces: [...sides(upperM), lid, partition(plateFacingUp(levelM)), electronics],
    },
    {
      air: 'lowerAir',
      heightM: lowerM,
      surfaces: [...sides(lowerM), partition(plateFacingDown(levelM)), floor, ...stored],
    },
  ];
}

function roomLinks({ air, surfaces }: Room, film: FilmAir, factor: number): Link[] {
  const exchange = roomExchangeAreas(
    surfaces.map(([, areaM2]) => ({ areaM2, emittance: INSIDE_ASSUMPTIONS.insideEmittance })),
  );
  return surfaces.flatMap(([from, areaM2, natural], i): Link[] => {
    const coefficient = naturalCoefficient(film, natural);
    return [
      { kind: 'convection', from, to: air, areaM2: areaM2 * factor, coefficient },
      ...surfaces.slice(i + 1).map(([to], j) => ({
        kind: 'radiation' as const,
        from,
        to,
        exchangeAreaM2: exchange[i]?.[i + 1 + j] ?? 0,
      })),
    ];
  });
}
