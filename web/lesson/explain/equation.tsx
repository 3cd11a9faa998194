/** An equation as MathML, which browsers draw and screen readers speak. */
import { h, type VNode } from 'preact';
import type { MathNode } from '../../../model/index.ts';
import { ScrollRegion } from '../scroll-region.tsx';

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
    <ScrollRegion kind="equation" label={`Equation: ${title}`}>
      <Formula math={math} words={words} display="block" />
    </ScrollRegion>
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
