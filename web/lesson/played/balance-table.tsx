/** The heat balance of a moment for each box, to be added up: in, less out, less what is stored, leaves nothing. */
import { formatQuantity, type Ledger, type UnitSystem } from '../../../model/index.ts';
import { LEDGER_WORDS } from '../../site/words.ts';
import type { Curve } from '../comparison/day-curves.tsx';
import { ExplainButton } from '../explain/explain-button.tsx';
import { ScrollRegion } from '../scroll-region.tsx';
import { balance, busyPaths } from './balance.ts';

interface BalanceTableProps {
  readonly boxes: readonly Curve[];
  readonly step: number;
  readonly time: string;
  readonly units: UnitSystem;
}

export function BalanceTable({ boxes, step, time, units }: BalanceTableProps) {
  const ledgers = boxes.flatMap(({ played }) => played.ledgers[step] ?? []);
  const watts = (value: number) => formatQuantity('power', value, units);
  const signed = (value: number) => `${value < 0 ? '−' : '+'}${watts(Math.abs(value))}`;
  const total = (of: (ledger: Ledger) => number) => ledgers.map((ledger) => watts(of(ledger)));
  return (
    <ScrollRegion kind="table-scroll" label={`Heat balance at ${time}`}>
      <table class="balance">
        <caption>Heat balance at {time}; + into the box, − out of it</caption>
        <thead>
          <tr>
            <th scope="col">Way of the heat</th>
            {boxes.map(({ letter }) => (
              <th key={letter} scope="col">
                Box {letter}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {busyPaths(ledgers).map((path) => (
            <tr key={path}>
              <th scope="row">{LEDGER_WORDS[path]}</th>
              {boxes.map(({ letter, played }) => (
                <td key={letter}>
                  <ExplainButton played={played} what={`path:${path}`} step={step}>
                    {signed(played.ledgers[step]?.[path] ?? 0)}
                  </ExplainButton>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
        <tfoot>
          <Total words="All that goes in" cells={total((ledger) => balance(ledger).inW)} boxes={boxes} />
          <Total words="less all that goes out" cells={total((ledger) => balance(ledger).outW)} boxes={boxes} />
          <Total words="less what the box stores" cells={total((ledger) => balance(ledger).storedW)} boxes={boxes} />
          <Total words="leaves" cells={total((ledger) => balance(ledger).leftW)} boxes={boxes} />
        </tfoot>
      </table>
    </ScrollRegion>
  );
}

function Total({ words, cells, boxes }: { words: string; cells: readonly string[]; boxes: readonly Curve[] }) {
  return (
    <tr>
      <th scope="row">{words}</th>
      {boxes.map(({ letter }, k) => (
        <td key={letter}>{cells[k]}</td>
      ))}
    </tr>
  );
}
