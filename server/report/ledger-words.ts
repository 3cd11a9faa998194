import { formatQuantity, LEDGER_PATHS, LEDGER_WORDS, type Ledger, type UnitSystem } from '../../model/index.ts';

/** Smaller flows round to nothing beside the rest. */
const SMALLEST_SHOWN_W = 0.05;

/** The heat balance of the box at one instant in two sentences, largest flows first. */
export function ledgerWords(ledger: Ledger, units: UnitSystem): string {
  const flows = (sign: 1 | -1) =>
    LEDGER_PATHS.filter((path) => ledger[path] * sign >= SMALLEST_SHOWN_W)
      .sort((a, b) => (ledger[b] - ledger[a]) * sign)
      .map(
        (path) =>
          `${formatQuantity('power', Math.abs(ledger[path]), units)} ${sign > 0 ? 'from' : 'to'} ${LEDGER_WORDS[path]}`,
      )
      .join(', ');
  return `Heat comes in: ${flows(1) || 'none'}. Heat goes out: ${flows(-1) || 'none'}.`;
}
