/** The one temperature of a day that its margin is the margin of: the highest or the lowest of what the limits refer to. */
import type { Site } from '../site.ts';
import type { Remedy, RemedyList } from './remedies.ts';
import { coldDecides, type DaySummary, decidingMarginK } from './results.ts';

export interface DecidingFigure {
  /** "Electronics at the peak" */
  readonly name: string;
  /** The same before its value, in few words: "electronics", "inside down to". */
  readonly short: string;
  readonly valueC: number;
  /** Whether it is the peak of the air inside, which is shown in any case. */
  readonly isInsidePeak: boolean;
}

type Limits = Site['limits'];
type Margins = Pick<DaySummary, 'marginK' | 'coldMarginK'>;

const NAMES: Readonly<Record<'peak' | 'lowest', Record<Limits['refersTo'], string>>> = {
  peak: {
    insideAir: 'Inside air at the peak',
    outsideAir: 'Outside air at the peak',
    componentCase: 'Electronics at the peak',
  },
  lowest: {
    insideAir: 'Lowest inside air',
    outsideAir: 'Lowest outside air',
    componentCase: 'Electronics at their coldest',
  },
};

const SHORT: Readonly<Record<Limits['refersTo'], string>> = {
  insideAir: 'inside',
  outsideAir: 'outside',
  componentCase: 'electronics',
};

/** The figure that a verdict goes by: the peak against the upper limit, or the lowest against the lower one where that is nearer; degC and K. */
export function decidingFigure(day: Margins, limits: Limits): DecidingFigure {
  return figure(limits, { cold: coldDecides(day), marginK: decidingMarginK(day) });
}

/** The one of a wall as it stands, before any remedy, or with one. */
export function figureOf(
  { marginK, coldDecides: cold }: Pick<RemedyList | Remedy, 'marginK' | 'coldDecides'>,
  limits: Limits,
): DecidingFigure {
  return figure(limits, { cold, marginK });
}

function figure(limits: Limits, { cold, marginK }: { cold: boolean; marginK: number }): DecidingFigure {
  return {
    name: NAMES[cold ? 'lowest' : 'peak'][limits.refersTo],
    short: `${SHORT[limits.refersTo]}${cold ? ' down to' : ''}`,
    valueC: cold ? limits.minC + marginK : limits.maxC - marginK,
    isInsidePeak: !cold && limits.refersTo === 'insideAir',
  };
}

/** A column of a table of walls. */
export interface FigureBesideInside {
  /** "electronics", "lowest" */
  readonly head: string;
  /** "electronics: highest temperature of what the limits refer to" */
  readonly legend: string;
  valueC(day: Margins): number;
}

/** What such a table shows beside the peak of the air inside, where that does not decide on every wall; null where it does. */
export function figureBesideInside(days: readonly Margins[], limits: Limits): FigureBesideInside | null {
  const cold = days.some(coldDecides);
  if (limits.refersTo === 'insideAir' && !cold) return null;
  const head = cold ? 'lowest' : SHORT[limits.refersTo];
  return {
    head,
    legend: `${head}: ${cold ? 'lowest' : 'highest'} temperature of what the limits refer to`,
    valueC: ({ marginK, coldMarginK }) => (cold ? limits.minC + coldMarginK : limits.maxC - marginK),
  };
}
