/** From what a person enters to the bodies that shade. */
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
}

/** The body of an eave over a box whose top lies at `boxTopM`. */
export function eaveBody(eave: EaveShape, boxTopM: number): Body {
  const up = boxTopM + eave.heightAboveBoxM;
  const half = eave.widthM / 2;
  return opaque([eave.offsetM - half, 0, up], [eave.offsetM + half, eave.depthM, up]);
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
      rounded: true,
      transmittance: inLeaf(tree, season) ? tree.leafOnTransmittance : tree.leafOffTransmittance,
    },
    opaque([rightM - trunk, outM - trunk, 0], [rightM + trunk, outM + trunk, crownBaseM]),
  ];
}

/** Months are those of a northern tree, first to last; south of the equator the year is shifted by half. */
function inLeaf({ leafOnMonths: [first, last] }: Tree, { month, southern }: Season): boolean {
  const northern = southern ? ((month + 5) % 12) + 1 : month;
  return first <= last ? northern >= first && northern <= last : northern >= first || northern <= last;
}

function opaque(low: Body['low'], high: Body['high']): Body {
  return { low, high, rounded: false, transmittance: 0 };
}
