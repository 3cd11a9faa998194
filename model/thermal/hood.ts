/**
 * A hood: sheets that stand off some faces of the box and take the sun in their stead. Each sheet is a node; the air in the
 * gap behind an upright one rises and carries heat away, if it can leave at the top.
 */
import type { Face } from '../faces.ts';
import type { FilmAir } from './air.ts';
import { risingGapCoefficient, stillGapCoefficient } from './gap.ts';
import type { Link } from './network.ts';
import { type OutdoorSetting, outdoorSurface, radiation } from './outdoor-surface.ts';
import { parallelPlates } from './radiation.ts';

export interface Hood {
  readonly faces: readonly Face[];
  readonly gapM: number;
  readonly emittance: number;
  /** Whether air can leave the gap at the top. */
  readonly openTop: boolean;
}

/** Sheet of a hood: 1 mm of aluminium, J/(m2 K) (2700 kg/m3, 900 J/(kg K)). */
const SHEET_CAPACITY_JM2K = 2430;

/** Whether a hood covers a face. */
export function covers(hood: Hood | null, face: Face): boolean {
  return hood?.faces.includes(face) ?? false;
}

/** Name of the node of the sheet before a face. */
export function hoodNode(face: Face): string {
  return `hood-${face}`;
}

/** Heat capacities of the sheets, J/K. */
export function hoodCapacitiesJK(hood: Hood | null, areasM2: OutdoorSetting['faceAreasM2']): Record<string, number> {
  const entries = (hood?.faces ?? []).map((face) => [hoodNode(face), SHEET_CAPACITY_JM2K * areasM2[face]]);
  return Object.fromEntries(entries);
}

/**
 * Links of a covered face: its sheet trades with the surroundings as the face would, and with the face across the gap by
 * radiation (large parallel plates), by conduction through the air, and on upright faces both give heat to the air that
 * rises between them (Bar-Cohen and Rohsenow 1984, see `channelCoefficient`). Under a level sheet the air is taken as still.
 */
export function hoodLinks(
  setting: OutdoorSetting & { readonly box: { readonly emittance: number; readonly hood: Hood | null } },
  film: FilmAir,
  face: Face,
): Link[] {
  const { box, faceAreasM2 } = setting;
  if (box.hood === null) return [];
  const { gapM, emittance, openTop } = box.hood;
  const node = hoodNode(face);
  const areaM2 = faceAreasM2[face];
  const across = stillGapCoefficient(film, gapM);
  const label = 'hood';
  const links: Link[] = [
    ...outdoorSurface(setting, film, { node, face, emittance }),
    radiation(face, node, areaM2 * parallelPlates(box.emittance, emittance), label),
    { kind: 'convection', from: face, to: node, areaM2, coefficient: across, label },
  ];
  if (!openTop || face === 'top' || face === 'bottom') return links;
  const rising = risingGapCoefficient(film, { gapM, heightM: box.heightM });
  return [
    ...links,
    { kind: 'convection', from: face, to: 'outsideAir', areaM2, coefficient: rising, label },
    { kind: 'convection', from: node, to: 'outsideAir', areaM2, coefficient: rising },
  ];
}
