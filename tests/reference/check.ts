/**
 * One check against the outside, and the one way to measure it: the page of `npm run validate` and the gate in `npm test`
 * both read it here.
 */

/**
 * How well the published figure is known. verified: read in a retrieved source, the carrier named where it is not the document
 * itself. recomputed: inputs and formula read, the figure worked out from them. from memory: nobody opened the document.
 * common practice: a saying of the trade or a judgement, without a source.
 */
export type Status = 'verified' | 'recomputed' | 'from memory' | 'common practice';

interface Common {
  readonly id: string;
  readonly what: string;
  readonly source: string;
  readonly status: Status;
  readonly unit: string;
  readonly ours: () => number;
}

/** A figure with one right answer. */
export interface ValueCheck extends Common {
  readonly value: number;
  readonly allowed: number;
  /** Why this much is allowed. */
  readonly reason: string;
}

/** A comparison: a measurement, another correlation, a rule of the trade. Ours may lie outside, and then says why. */
export interface BandCheck extends Common {
  readonly low: number;
  readonly high: number;
  /** How the band was laid round the published figure. */
  readonly reason: string;
  /** Inputs that the source does not give. */
  readonly assumed?: string;
  /** Present when ours is known to lie outside: the physical reason. */
  readonly outside?: string;
}

export type Check = ValueCheck | BandCheck;

export const isBand = (check: Check): check is BandCheck => 'low' in check;

export type Verdict = 'holds' | 'fails' | 'inside' | 'outside';

export interface Measured {
  readonly check: Check;
  readonly ours: number;
  /** Ours minus the value; for a band how far outside, 0 within it. */
  readonly difference: number;
  /** Share of what is allowed that the difference uses up; 0 for a band. */
  readonly used: number;
  readonly verdict: Verdict;
}

/** Measures one check. What is not a finite number fails, in a band too. */
export function measure(check: Check): Measured {
  const ours = check.ours();
  if (isBand(check)) {
    const difference = ours < check.low ? ours - check.low : ours > check.high ? ours - check.high : 0;
    const verdict = !Number.isFinite(ours) ? 'fails' : difference === 0 ? 'inside' : 'outside';
    return { check, ours, difference, used: 0, verdict };
  }
  const difference = ours - check.value;
  const used = Math.abs(difference) / check.allowed;
  return { check, ours, difference, used, verdict: used <= 1 ? 'holds' : 'fails' };
}

/** A topic of the page: its checks and what a reader should know of them. */
export interface Topic {
  readonly title: string;
  readonly text: string;
  readonly checks: readonly Check[];
  /** A table that compares more than one figure with ours, in Markdown. */
  readonly table?: () => string;
}

/** Works a figure out once, when it is first asked for. */
export function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** A share of a figure, as what is allowed. */
export const shareOf = (value: number, share: number): number => Math.abs(value) * share;

/** Bounds half as large and half as large again, for another correlation or a figure said to be about so much. */
export const byHalf = (value: number): { low: number; high: number } => ({ low: 0.5 * value, high: 1.5 * value });
