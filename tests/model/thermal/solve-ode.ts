/** The network under mathjs's own solver: an independent march through the same hours. */
import type { MathJsInstance } from 'mathjs';
import type { Network } from '../../../model/thermal/network.ts';
import type { DayForcing, PeriodicDay } from '../../../model/thermal/periodic-day.ts';
import { cell, type StepTable } from '../../../model/thermal/step-table.ts';

/** mathjs has this function since version 11; its type declarations do not. */
type SolveOde = (
  rate: (t: number, y: number[]) => number[],
  span: number[],
  start: number[],
  options: object,
) => { t: number[]; y: number[][] };

interface Span {
  readonly network: Network;
  readonly forcing: DayForcing;
  /** Gives the temperatures to start from. */
  readonly march: PeriodicDay;
  readonly fromStep: number;
  readonly hours: number;
}

/** Temperatures of the free nodes after the hours, K; the forcing runs straight between its steps. */
export function solveOde(math: MathJsInstance, { network, forcing, march, fromStep, hours }: Span): number[] {
  const n = network.freeCount;
  const t = new Float64Array(network.names.length);
  const sources = new Float64Array(n);
  const net = new Float64Array(n);
  const rate = (time: number, y: number[]): number[] => {
    const position = fromStep + time / forcing.stepS;
    const k = Math.min(Math.floor(position), forcing.steps - 2);
    const share = position - k;
    const row = (table: StepTable, i: number) => (1 - share) * cell(table, k, i) + share * cell(table, k + 1, i);
    for (let i = 0; i < n; i++) t[i] = y[i] as number;
    for (let i = n; i < t.length; i++) t[i] = row(forcing.boundariesK, i - n);
    for (let i = 0; i < n; i++) sources[i] = row(forcing.sourcesW, i);
    network.netHeatW(t, sources, forcing.windMs[k] as number, net);
    return Array.from(net, (watts, i) => watts / (network.capacitiesJK[i] as number));
  };
  const start = Array.from({ length: n }, (_, i) => cell(march.temperaturesK, fromStep, i));
  const { solveODE } = math as unknown as { solveODE: SolveOde };
  // A first step as long as the whole span overflows, and the solver finds no way back from there.
  const options = { tol: 1e-4, firstStep: 1, maxStep: 30, minStep: 0.01, maxIter: 1e5 };
  const { y } = solveODE(rate, [0, hours * 3600], start, options);
  return y[y.length - 1] as number[];
}
