/**
 * A formula once, read in three ways: as Unicode text, as MathML and as a number for given values. What is shown is so
 * what is reckoned with.
 */
export type Formula =
  /** A symbol, "T_in": a letter and what stands below it. */
  | { readonly kind: 'symbol'; readonly id: string }
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'sum'; readonly terms: readonly Formula[] }
  | { readonly kind: 'minus'; readonly of: Formula }
  | { readonly kind: 'product'; readonly factors: readonly Formula[] }
  | { readonly kind: 'quotient'; readonly over: Formula; readonly under: Formula }
  | { readonly kind: 'power'; readonly base: Formula; readonly exponent: Formula }
  | { readonly kind: 'call'; readonly name: FunctionName; readonly of: readonly Formula[] };

/** Angles in degrees. */
export type FunctionName = 'exp' | 'sin' | 'cos' | 'asin' | 'sqrt' | 'cbrt' | 'min' | 'max';

const RAD = Math.PI / 180;

const FUNCTIONS: Readonly<Record<FunctionName, (...of: number[]) => number>> = {
  exp: Math.exp,
  sin: (deg = 0) => Math.sin(deg * RAD),
  cos: (deg = 0) => Math.cos(deg * RAD),
  asin: (x = 0) => Math.asin(x) / RAD,
  sqrt: Math.sqrt,
  cbrt: Math.cbrt,
  min: Math.min,
  max: Math.max,
};

type Part = Formula | string | number;

const formula = (part: Part): Formula => {
  if (typeof part === 'string') return { kind: 'symbol', id: part };
  return typeof part === 'number' ? { kind: 'number', value: part } : part;
};

/** Text stands for a symbol, a number for itself. */
export const sum = (...terms: Part[]): Formula => ({ kind: 'sum', terms: terms.map(formula) });
export const minus = (of: Part): Formula => ({ kind: 'minus', of: formula(of) });
export const difference = (a: Part, b: Part): Formula => sum(a, minus(b));
export const product = (...factors: Part[]): Formula => ({ kind: 'product', factors: factors.map(formula) });
export const quotient = (over: Part, under: Part): Formula => ({
  kind: 'quotient',
  over: formula(over),
  under: formula(under),
});
export const power = (base: Part, exponent: Part): Formula => ({
  kind: 'power',
  base: formula(base),
  exponent: formula(exponent),
});
export const call = (name: FunctionName, ...of: Part[]): Formula => ({ kind: 'call', name, of: of.map(formula) });

/**
 * The number of a formula.
 * @throws RangeError for a symbol without a value
 */
export function evaluate(f: Formula, values: ReadonlyMap<string, number>): number {
  const at = (part: Formula): number => evaluate(part, values);
  switch (f.kind) {
    case 'symbol': {
      const value = values.get(f.id);
      if (value === undefined) throw new RangeError(`formula: no value for ${f.id}`);
      return value;
    }
    case 'number':
      return f.value;
    case 'sum':
      return f.terms.reduce((total, term) => total + at(term), 0);
    case 'minus':
      return -at(f.of);
    case 'product':
      return f.factors.reduce((total, factor) => total * at(factor), 1);
    case 'quotient':
      return at(f.over) / at(f.under);
    case 'power':
      return at(f.base) ** at(f.exponent);
    case 'call':
      return FUNCTIONS[f.name](...f.of.map(at));
  }
}

const SUPERSCRIPTS: Readonly<Record<string, string>> = { '2': '²', '3': '³', '4': '⁴' };

const letters = (id: string): [base: string, below: string] => {
  const at = id.indexOf('_');
  return at < 0 ? [id, ''] : [id.slice(0, at), id.slice(at + 1)];
};

/** A symbol as text, "T_in". */
export const symbolText = (id: string): string => id;

export const numberText = (value: number): string =>
  String(value)
    .replace(/e([-+]?\d+)/, '·10^$1')
    .replace('-', '−');

/** The formula in a line of text. */
export function formulaText(f: Formula): string {
  const inside = (part: Formula): string =>
    part.kind === 'sum' || part.kind === 'minus' ? `(${formulaText(part)})` : formulaText(part);
  const tight = (part: Formula): string =>
    part.kind === 'product' || part.kind === 'quotient' || part.kind === 'power'
      ? `(${formulaText(part)})`
      : inside(part);
  switch (f.kind) {
    case 'symbol':
      return symbolText(f.id);
    case 'number':
      return numberText(f.value);
    case 'sum':
      return f.terms
        .map((term, k) =>
          term.kind === 'minus'
            ? `${k === 0 ? '−' : ' − '}${inside(term.of)}`
            : `${k === 0 ? '' : ' + '}${formulaText(term)}`,
        )
        .join('');
    case 'minus':
      return `−${inside(f.of)}`;
    case 'product':
      return f.factors.map(inside).join(' · ');
    case 'quotient':
      return `${inside(f.over)} / ${tight(f.under)}`;
    case 'power': {
      const exponent = formulaText(f.exponent);
      const raised = SUPERSCRIPTS[exponent];
      return raised === undefined ? `${tight(f.base)}^${tight(f.exponent)}` : `${tight(f.base)}${raised}`;
    }
    case 'call':
      return `${{ sqrt: '√', cbrt: '∛', asin: 'arcsin' }[f.name as 'sqrt'] ?? f.name}(${f.of.map(formulaText).join(', ')})`;
  }
}

/** A node of MathML: its element, and either text or children. */
export interface MathNode {
  readonly tag: 'math' | 'mrow' | 'mi' | 'mn' | 'mo' | 'mfrac' | 'msup' | 'msub' | 'msqrt' | 'mroot' | 'mtext';
  readonly text?: string;
  readonly children?: readonly MathNode[];
}

const leaf = (tag: MathNode['tag'], text: string): MathNode => ({ tag, text });
const node = (tag: MathNode['tag'], ...children: MathNode[]): MathNode => ({ tag, children });
const operator = (text: string): MathNode => leaf('mo', text);

/** A symbol as MathML. */
export function symbolMath(id: string): MathNode {
  const [base, below] = letters(id);
  return below === '' ? leaf('mi', base) : node('msub', leaf('mi', base), leaf('mtext', below));
}

/** The formula as MathML. */
export function formulaMath(f: Formula): MathNode {
  const fenced = (part: Formula): MathNode => node('mrow', operator('('), formulaMath(part), operator(')'));
  const inside = (part: Formula): MathNode =>
    part.kind === 'sum' || part.kind === 'minus' ? fenced(part) : formulaMath(part);
  const base = (part: Formula): MathNode =>
    part.kind === 'symbol' || part.kind === 'number' ? formulaMath(part) : fenced(part);
  switch (f.kind) {
    case 'symbol':
      return symbolMath(f.id);
    case 'number':
      return leaf('mn', numberText(f.value));
    case 'sum':
      return node(
        'mrow',
        ...f.terms.flatMap((term, k) => {
          if (term.kind === 'minus') return [operator('−'), inside(term.of)];
          return k === 0 ? [formulaMath(term)] : [operator('+'), formulaMath(term)];
        }),
      );
    case 'minus':
      return node('mrow', operator('−'), inside(f.of));
    case 'product':
      return node(
        'mrow',
        ...f.factors.flatMap((factor, k) => (k === 0 ? [inside(factor)] : [operator('·'), inside(factor)])),
      );
    case 'quotient':
      return node('mfrac', formulaMath(f.over), formulaMath(f.under));
    case 'power':
      return node('msup', base(f.base), formulaMath(f.exponent));
    case 'call': {
      const of = f.of.map(formulaMath);
      if (f.name === 'sqrt') return node('msqrt', ...of);
      if (f.name === 'cbrt') return node('mroot', ...of, leaf('mn', '3'));
      const listed = of.flatMap((one, k) => (k === 0 ? [one] : [operator(','), one]));
      return node('mrow', leaf('mi', f.name === 'asin' ? 'arcsin' : f.name), operator('('), ...listed, operator(')'));
    }
  }
}
