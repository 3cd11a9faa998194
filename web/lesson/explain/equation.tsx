/** An equation as MathML, which browsers draw and screen readers speak. */
import { h, type VNode } from 'preact';
import type { MathNode } from '../../../model/index.ts';

interface FormulaProps {
  readonly math: MathNode;
  /** The same as text. */
  readonly words: string;
}

interface EquationProps extends FormulaProps {
  /** Of what it is the equation. */
  readonly title: string;
}

/** On a line of its own, where a long one scrolls. */
export function Equation({ title, math, words }: EquationProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="equation" tabIndex={0} aria-label={`Equation: ${title}`}>
      <Formula math={math} words={words} display="block" />
    </section>
  );
}

/** A formula or a sign within a line. */
export function Formula({ math, words, display = 'inline' }: FormulaProps & { display?: 'inline' | 'block' }) {
  const inner = math.tag === 'math' ? (math.children ?? []) : [math];
  return h('math', { display, 'aria-label': words }, ...inner.map(node));
}

function node({ tag, text, children = [] }: MathNode): VNode {
  return h(tag, null, text ?? null, ...children.map(node));
}
