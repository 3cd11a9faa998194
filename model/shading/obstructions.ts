/** From what a person enters to the bodies that shade. */
import { otherEdgesFrom, type PlanPoint } from '../building-outline.ts';
import type { Obstruction } from '../site.ts';
import type { Body } from './bodies.ts';

/** When a scene is looked at: trees have leaves or not. */
export interface Season {
  /** Calendar month, 1 to 12. */
  readonly month: number;
  readonly southern: boolean;
}

/** An eave or soffit: a level rectangle that stands out from the wall. */
export interface EaveShape {
  readonly depthM: number;
  readonly heightAboveBoxM: number;
  readonly widthM: number;
  readonly offsetM: number;
  /** Share of light through slats or a trellis; 0 for a solid one. */
  readonly transmittance: number;
}

/** A building by its outline, and where on which of its edges the box hangs. */
export interface BuildingShape {
  readonly outlineM: readonly PlanPoint[];
  readonly heightM: number;
  readonly edge: number;
  /** From the left end of that edge, as one faces it, to the middle of the box. */
  readonly alongM: number;
}

/** The walls of a building besides the one that the box hangs on. */
export function buildingBodies({ outlineM, heightM, edge, alongM }: BuildingShape): Body[] {
  return otherEdgesFrom(outlineM, { edge, alongM }).map(({ left, right }): Body => {
    const rising = (right[0] - left[0]) * (right[1] - left[1]) >= 0;
    return {
      low: [Math.min(left[0], right[0]), Math.min(left[1], right[1]), 0],
      high: [Math.max(left[0], right[0]), Math.max(left[1], right[1]), heightM],
      shape: rising ? 'risingSheet' : 'fallingSheet',
      transmittance: 0,
    };
  });
}

/** The body of an eave over a box whose top lies at `boxTopM`. */
export function eaveBody(eave: EaveShape, boxTopM: number): Body {
  const up = boxTopM + eave.heightAboveBoxM;
  const half = eave.widthM / 2;
  const body = opaque([eave.offsetM - half, 0, up], [eave.offsetM + half, eave.depthM, up]);
  return { ...body, transmittance: eave.transmittance };
}

/** The bodies of an obstruction in a season. */
export function bodiesOf(obstruction: Obstruction, season: Season): Body[] {
  if (obstruction.kind === 'sideWall') {
    const { side, distanceM, depthM, heightM } = obstruction;
    const right = side === 'right' ? distanceM : -distanceM;
    return [opaque([right, 0, 0], [right, depthM, heightM])];
  }
  if (obstruction.kind === 'front') {
    const { distanceM, widthM, heightM, offsetM, transmittance } = obstruction;
    const half = widthM / 2;
    const body = opaque([offsetM - half, distanceM, 0], [offsetM + half, distanceM, heightM]);
    return [{ ...body, transmittance }];
  }
  if (obstruction.kind === 'block') {
    const { rightM, outM, widthM, depthM, heightM } = obstruction;
    return [opaque([rightM - widthM / 2, outM, 0], [rightM + widthM / 2, outM + depthM, heightM])];
  }
  return treeBodies(obstruction, season);
}

type Tree = Extract<Obstruction, { kind: 'tree' }>;

function treeBodies(tree: Tree, season: Season): Body[] {
  const { rightM, outM, crownDiameterM, crownBaseM, heightM, trunkDiameterM } = tree;
  const crown = crownDiameterM / 2;
  const trunk = trunkDiameterM / 2;
  return [
    {
      low: [rightM - crown, outM - crown, crownBaseM],
      high: [rightM + crown, outM + crown, heightM],
      shape: 'crown',
      transmittance: inLeaf(tree, season) ? tree.leafOnTransmittance : tree.leafOffTransmittance,
    },
    opaque([rightM - trunk, outM - trunk, 0], [rightM + trunk, outM + trunk, crownBaseM]),
  ];
}

/** Which of the obstructions are trees in leaf; seasons that agree in it look alike. */
export function leafPattern(obstructions: readonly Obstruction[], season: Season): string {
  return obstructions.map((one) => (one.kind === 'tree' && inLeaf(one, season) ? 'leaf' : '-')).join();
}

/** Months are those of a northern tree, first to last; south of the equator the year is shifted by half. */
function inLeaf({ leafOnMonths: [first, last] }: Tree, { month, southern }: Season): boolean {
  const northern = southern ? ((month + 5) % 12) + 1 : month;
  return first <= last ? northern >= first && northern <= last : northern >= first || northern <= last;
}

function opaque(low: Body['low'], high: Body['high']): Body {
  return { low, high, shape: 'box', transmittance: 0 };
}
