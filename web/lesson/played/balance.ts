/** The heat balance of a moment, as a table that closes: what goes in, less what goes out, less what the box stores. */
import { LEDGER_PATHS, type Ledger, type LedgerPath } from '../../../model/index.ts';

export interface Balance {
  readonly inW: number;
  readonly outW: number;
  /** Heat that the box stores; negative while it gives off what it had stored. */
  readonly storedW: number;
  /** What is left over: the error of the reckoning. */
  readonly leftW: number;
}

export type BalancePath = Exclude<LedgerPath, 'storage'>;

const PATHS = LEDGER_PATHS.filter((path): path is BalancePath => path !== 'storage');

export function balance(ledger: Ledger): Balance {
  const sum = (sign: 1 | -1) => PATHS.reduce((total, path) => total + Math.max(0, sign * ledger[path]), 0);
  const [inW, outW, storedW] = [sum(1), sum(-1), -ledger.storage];
  return { inW, outW, storedW, leftW: inW - outW - storedW };
}

/** Flows below this show as 0.0 W and would only lengthen the table. */
const LEAST_W = 0.05;

/** Paths by which any of the boxes takes in or loses heat at that moment. */
export function busyPaths(ledgers: readonly Ledger[]): BalancePath[] {
  return PATHS.filter((path) => ledgers.some((ledger) => Math.abs(ledger[path]) >= LEAST_W));
}
