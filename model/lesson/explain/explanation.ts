/** A figure opened up: the equation behind it, what stands for each symbol, and whose equation it is. */
import type { QuantityKind } from '../../units.ts';
import { evaluate, type Formula, formulaMath, formulaText, type MathNode, numberText, symbolMath } from './formula.ts';

export interface ExplainedSymbol {
  /** "T_in" */
  readonly symbol: string;
  readonly math: MathNode;
  readonly name: string;
  readonly value: number;
  /** The value as it is put into the equation. */
  readonly shown: string;
  /** SI; empty for a pure number. */
  readonly unit: string;
  /** The figure that explains this value in its turn; null where there is none. */
  readonly what: string | null;
}

export interface Explanation {
  readonly what: string;
  readonly title: string;
  /** Equation with the symbol of the figure on its left, as text and as MathML. */
  readonly equation: string;
  readonly math: MathNode;
  readonly symbols: readonly ExplainedSymbol[];
  readonly value: number;
  readonly shown: string;
  readonly unit: string;
  /** For a page that shows the value in the units of its reader. */
  readonly quantity: QuantityKind | null;
  /** What the shown values give when put into the equation. */
  readonly evaluated: number;
  /** The equation with the shown values in it and what comes out, as text. */
  readonly check: string;
  /** By how much the shown value and what comes out may differ, because values are shown rounded or a term is left out. */
  readonly within: number;
  readonly source: string;
  /** What is left out or taken for granted; empty where there is nothing to say. */
  readonly note: string;
  /** The instant that it holds for; null for a figure of the whole day. */
  readonly atUtc: Date | null;
}

/** A symbol as it is handed in: name, value, unit, and the figure that explains it. */
export type Given = readonly [name: string, value: number, unit: string, what?: string | undefined];

/** Digits that values are shown with. */
const DIGITS = 5;

/** Share of the largest term by which rounding may move the outcome. */
const ROUNDING = 2e-3;

export interface ExplanationInput {
  readonly what: string;
  readonly title: string;
  readonly symbol: string;
  readonly formula: Formula;
  readonly given: Readonly<Record<string, Given>>;
  readonly value: number;
  readonly unit: string;
  readonly quantity?: QuantityKind;
  readonly source: string;
  readonly note?: string;
  readonly atUtc?: Date | null;
  /** Where more than rounding is left out, in the unit of the figure. */
  readonly within?: number;
}

/** Puts an explanation together and reckons its check. */
export function explanation(input: ExplanationInput): Explanation {
  const { formula, given, value, symbol, unit } = input;
  const symbols = Object.entries(given).map(
    ([id, [name, of, itsUnit, what]]): ExplainedSymbol => ({
      symbol: id,
      math: symbolMath(id),
      name,
      value: of,
      shown: shownText(of),
      unit: itsUnit,
      what: what ?? null,
    }),
  );
  const rounded = new Map(symbols.map((one) => [one.symbol, shownValue(one.value)]));
  const evaluated = evaluate(formula, rounded);
  const outcome = `${shownText(evaluated)}${unit === '' ? '' : ` ${unit}`}`;
  return {
    what: input.what,
    title: input.title,
    equation: `${symbol} = ${formulaText(formula)}`,
    math: {
      tag: 'math',
      children: [{ tag: 'mrow', children: [symbolMath(symbol), { tag: 'mo', text: '=' }, formulaMath(formula)] }],
    },
    symbols,
    value,
    shown: shownText(value),
    unit,
    quantity: input.quantity ?? null,
    evaluated,
    check: `${formulaText(withValues(formula, rounded))} = ${outcome}`,
    within: input.within ?? ROUNDING * Math.max(Math.abs(value), largestTerm(formula, rounded)),
    source: input.source,
    note: input.note ?? '',
    atUtc: input.atUtc ?? null,
  };
}

const shownValue = (value: number): number => Number(value.toPrecision(DIGITS));
const shownText = (value: number): string => numberText(shownValue(value));

/** The formula with numbers in place of its symbols. */
function withValues(f: Formula, values: ReadonlyMap<string, number>): Formula {
  const put = (part: Formula): Formula => withValues(part, values);
  switch (f.kind) {
    case 'symbol': {
      const value = values.get(f.id) ?? 0;
      return value < 0 ? { kind: 'minus', of: { kind: 'number', value: -value } } : { kind: 'number', value };
    }
    case 'number':
      return f;
    case 'sum':
      return { ...f, terms: f.terms.map(put) };
    case 'minus':
      return { ...f, of: put(f.of) };
    case 'product':
      return { ...f, factors: f.factors.map(put) };
    case 'quotient':
      return { ...f, over: put(f.over), under: put(f.under) };
    case 'power':
      return { ...f, base: put(f.base), exponent: put(f.exponent) };
    case 'call':
      return { ...f, of: f.of.map(put) };
  }
}

/** The largest number among the terms of sums: rounding acts on those. */
function largestTerm(f: Formula, values: ReadonlyMap<string, number>): number {
  const parts = {
    symbol: [],
    number: [],
    sum: 'terms' in f ? f.terms : [],
    minus: 'of' in f && !Array.isArray(f.of) ? [f.of as Formula] : [],
    product: 'factors' in f ? f.factors : [],
    quotient: 'over' in f ? [f.over] : [],
    power: [],
    call: [],
  }[f.kind] as readonly Formula[];
  const own = f.kind === 'sum' ? f.terms.map((term) => Math.abs(evaluate(term, values))) : [0];
  return Math.max(0, ...own, ...parts.map((part) => largestTerm(part, values)));
}
