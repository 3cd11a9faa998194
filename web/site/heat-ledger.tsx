/** Where the heat comes from and where it goes at the hottest moment: bars, numbers and words. */
import { formatQuantity, LEDGER_PATHS, type Ledger, type UnitSystem } from '../../model/index.ts';
import { LEDGER_WORDS } from './words.ts';

interface HeatLedgerProps {
  readonly ledger: Ledger;
  readonly units: UnitSystem;
  /** Clock time of the peak. */
  readonly at: string;
}

/** Flows below this show as 0.0 W and would only lengthen the list. */
const LEAST_SHOWN_W = 0.05;

export function HeatLedger({ ledger, units, at }: HeatLedgerProps) {
  const flows = LEDGER_PATHS.map((path) => ({ path, watts: ledger[path] })).filter(
    ({ watts }) => Math.abs(watts) >= LEAST_SHOWN_W,
  );
  const ways = [
    { title: 'Into the box', flows: flows.filter(({ watts }) => watts > 0), side: 'in' },
    { title: 'Out of the box', flows: flows.filter(({ watts }) => watts < 0), side: 'out' },
  ] as const;
  const largest = Math.max(...flows.map(({ watts }) => Math.abs(watts)), LEAST_SHOWN_W);

  return (
    <section class="ledger" aria-labelledby="ledger-heading">
      <h3 id="ledger-heading">Where the heat comes from and goes at {at}</h3>
      {ways.map(({ title, flows: some, side }) => (
        <div key={side}>
          <h4>
            {title}: {formatQuantity('power', sum(some.map(({ watts }) => Math.abs(watts))), units)}
          </h4>
          <ul class={`flows flows-${side}`}>
            {[...some]
              .sort((a, b) => Math.abs(b.watts) - Math.abs(a.watts))
              .map(({ path, watts }) => (
                <li key={path}>
                  <span class="flow-words">{LEDGER_WORDS[path]}</span>
                  <span class="flow-watts">{formatQuantity('power', Math.abs(watts), units)}</span>
                  <span class="flow-track" aria-hidden="true">
                    <span class="flow-bar" style={{ width: `${(100 * Math.abs(watts)) / largest}%` }} />
                  </span>
                </li>
              ))}
          </ul>
        </div>
      ))}
    </section>
  );
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
