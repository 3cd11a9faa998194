import type { Assumption } from '../../model/index.ts';
import { wrap } from '../terminal/wrap.ts';

/** Assumptions, a line each, led by the part of the site they are about where that changes. */
export function assumptionLines(assumptions: readonly Assumption[]): string[] {
  const groups = new Map<string, Set<string>>();
  for (const { subject, text, origin } of assumptions) {
    const part = subject.split(/[.[]/)[0] ?? subject;
    const said = groups.get(part) ?? new Set();
    groups.set(part, said.add(origin === '' ? text : `${text} (${origin})`));
  }
  const width = Math.max(0, ...[...groups.keys()].map((part) => part.length));
  return [...groups].flatMap(([part, said]) =>
    [...said].map((line, index) => wrap(line, `  ${(index === 0 ? part : '').padEnd(width)}  `)),
  );
}
