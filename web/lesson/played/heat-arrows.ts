/** The ledger of a moment as arrows: few enough to be read across a room, as thick as their watts. */
import type { Ledger, LedgerPath } from '../../../model/index.ts';

interface Way {
  readonly key: string;
  readonly words: string;
  readonly paths: readonly LedgerPath[];
}

/** Paths of the ledger that a trainee names with one word; storage is told in the box itself. */
const WAYS: readonly Way[] = [
  { key: 'sun', words: 'Sun', paths: ['sunBeam', 'sunDiffuse', 'sunReflected'] },
  { key: 'electronics', words: 'Own heat', paths: ['dissipation'] },
  { key: 'hood', words: 'Hood', paths: ['hood'] },
  { key: 'air', words: 'Air', paths: ['convection'] },
  { key: 'sky', words: 'Sky', paths: ['longwaveSky'] },
  { key: 'ground', words: 'Ground', paths: ['longwaveGround'] },
  { key: 'wall', words: 'Wall', paths: ['longwaveWall', 'mounting'] },
  { key: 'around', words: 'Around', paths: ['longwaveSurroundings'] },
  { key: 'vents', words: 'Vents', paths: ['vents'] },
];

export interface HeatArrow {
  readonly key: string;
  readonly words: string;
  /** Always positive; the side tells the direction. */
  readonly watts: number;
  readonly side: 'in' | 'out';
}

/** Arrows that sum up lines of the balance, and which: such lines may run against each other. */
export const SUMMED_ARROWS: readonly Pick<Way, 'words' | 'paths'>[] = WAYS.filter(({ paths }) => paths.length > 1);

/** Flows below this show as 0.0 W. */
const LEAST_W = 0.05;

/** Arrows of a moment, the largest first on each side. */
export function heatArrows(ledger: Ledger): HeatArrow[] {
  return WAYS.map(({ key, words, paths }): HeatArrow => {
    const watts = paths.reduce((sum, path) => sum + ledger[path], 0);
    return { key, words, watts: Math.abs(watts), side: watts < 0 ? 'out' : 'in' };
  })
    .filter(({ watts }) => watts >= LEAST_W)
    .sort((a, b) => b.watts - a.watts);
}

/** The largest flow of these ledgers, W: what the thickest arrow stands for. */
export function largestFlowW(ledgers: readonly Ledger[]): number {
  return ledgers.reduce((most, ledger) => Math.max(most, ...heatArrows(ledger).map(({ watts }) => watts)), LEAST_W);
}

/** No flow is drawn thinner. */
const THINNEST_PX = 2;

/** Thickness of an arrow: in proportion to its watts, so that widths may be added up by eye. */
export function arrowPx(watts: number, largestW: number, thickestPx: number): number {
  return Math.max(THINNEST_PX, (watts / largestW) * thickestPx);
}
