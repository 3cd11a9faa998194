import { CAUTIONS } from '../../model/index.ts';
import { wrap } from '../terminal/wrap.ts';

/** The cautions that close a report: what comes before all of them, what always holds, and what the day adds. */
export function cautionLines(ofTheDay: readonly string[] = []): string[] {
  return [
    'Mind:',
    wrap('None of this permits anything: local code, the rules of the trade and those of the makers come first.', '  '),
    ...[...CAUTIONS, ...ofTheDay].map((caution) => wrap(caution, '  - ')),
  ];
}
