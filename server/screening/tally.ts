/** Counts of a screening; those of its batches add up. */
import { KIT_CLASSES } from '../../model/index.ts';

export interface Tally {
  /** Rows read, of whatever kind. */
  readonly rows: number;
  readonly screened: number;
  readonly rejected: number;
  /** Rows without any text, which are passed over. */
  readonly blank: number;
  /** Screened rows by kit class. */
  readonly kits: Readonly<Record<string, number>>;
  /** Screened rows by where their design climate comes from. */
  readonly climates: Readonly<Record<string, number>>;
  /** Screened rows by the margin of the best wall, in steps of 5 K, by the lower end of the step. */
  readonly margins: Readonly<Record<string, number>>;
  /** Rejected rows by their first reason. */
  readonly reasons: Readonly<Record<string, number>>;
}

export const NO_TALLY: Tally = {
  rows: 0,
  screened: 0,
  rejected: 0,
  blank: 0,
  kits: Object.fromEntries(KIT_CLASSES.map(({ name }) => [name, 0])),
  climates: {},
  margins: {},
  reasons: {},
};

export const MARGIN_STEP_K = 5;

/** More kinds of reasons than this are counted as one, so that a tally stays small. */
const MOST_REASONS = 50;
export const OTHER_REASONS = 'other reasons';

export function addTallies(a: Tally, b: Tally): Tally {
  return {
    rows: a.rows + b.rows,
    screened: a.screened + b.screened,
    rejected: a.rejected + b.rejected,
    blank: a.blank + b.blank,
    kits: sum(a.kits, b.kits),
    climates: sum(a.climates, b.climates),
    margins: sum(a.margins, b.margins),
    reasons: sum(a.reasons, b.reasons, MOST_REASONS),
  };
}

type Counts = Readonly<Record<string, number>>;

function sum(a: Counts, b: Counts, most = Number.POSITIVE_INFINITY): Counts {
  const added: Record<string, number> = { ...a };
  for (const [key, count] of Object.entries(b)) {
    const room = added[key] !== undefined || Object.keys(added).length < most;
    const under = room ? key : OTHER_REASONS;
    added[under] = (added[under] ?? 0) + count;
  }
  return added;
}

export const marginStep = (marginK: number): string => String(Math.floor(marginK / MARGIN_STEP_K) * MARGIN_STEP_K);
