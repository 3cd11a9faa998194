/** Marches a network round one day until the day repeats itself. */
import type { Network } from './network.ts';
import { cell, columnMeans, readRow, type StepTable, stepTable, writeRow } from './step-table.ts';

/** What drives a network through a day, one row a step. */
export interface DayForcing {
  readonly steps: number;
  readonly stepS: number;
  /** Boundary temperatures, K, in the order of the network's boundaries. */
  readonly boundariesK: StepTable;
  /** Heat put into the free nodes, W, in their order. */
  readonly sourcesW: StepTable;
  readonly windMs: Float64Array;
}

export interface PeriodicDay {
  /** Temperatures of all nodes, K. */
  readonly temperaturesK: StepTable;
  /** Temperatures of the free nodes in the two steps before the last round, K: the earlier one first. */
  readonly beforeK: readonly [Float64Array, Float64Array];
  /** Rounds that were marched. */
  readonly rounds: number;
  /** Largest difference of a node between the end of the day and the end of the day before, K. */
  readonly repeatsWithinK: number;
}

/** A day counts as periodic when no node ends it further from where it began, K. */
const PERIODIC_WITHIN_K = 0.02;

const MAX_ROUNDS = 60;

/** Longest steps of the rounds that come first, s: they bring slow nodes near their course at little cost. */
const COARSE_STEPS_S = [3600, 900];

/** Last move of an iteration in those rounds, K: what they leave is that of their long steps, not of the iteration. */
const COARSE_TOLERANCE_K = 0.2;

/** Rounds of the longest steps end when no node ends one further from where it began, K; the rest is left to the others. */
const COARSE_WITHIN_K = 0.05;

/**
 * Marches until the day is periodic. The start is the steady state under the day's means, so that slow nodes begin near
 * their own mean; rounds of long steps bring them nearer, and rounds of the true steps finish.
 * @throws Error when it does not become periodic
 */
export function marchPeriodicDay(network: Network, forcing: DayForcing): PeriodicDay {
  const { steps } = forcing;
  const n = network.freeCount;
  const state = meanSteadyState(network, forcing);
  const past: Past = { earlier: state.slice(0, n), beforeEarlier: state.slice(0, n) };
  const strides = [...new Set(COARSE_STEPS_S.map((longestS) => coarseStride(forcing, longestS)))];
  for (const [stage, stride] of strides.entries()) {
    // The first rounds go on until slow nodes have found their course, those after them only refine it.
    for (let round = 1; round <= (stage === 0 ? MAX_ROUNDS : 1); round++) {
      if (marchRound(network, forcing, { state, past, stride, into: null }) < COARSE_WITHIN_K) break;
    }
    shortenPast(past, state, (strides[stage + 1] ?? 1) / stride);
  }
  const temperaturesK = stepTable(steps, state.length);
  for (let round = 1; round <= MAX_ROUNDS; round++) {
    const beforeK: [Float64Array, Float64Array] = [past.earlier.slice(), state.slice(0, n)];
    const repeatsWithinK = marchRound(network, forcing, { state, past, stride: 1, into: temperaturesK });
    if (repeatsWithinK < PERIODIC_WITHIN_K) return { temperaturesK, beforeK, rounds: round, repeatsWithinK };
  }
  throw new Error(`the day did not become periodic in ${MAX_ROUNDS} rounds`);
}

/** Value so many long steps ago, on the parabola through the last three of them. */
function onParabola([now, earlier, beforeEarlier]: readonly [number, number, number], ago: number): number {
  return (now * (1 - ago) * (2 - ago)) / 2 + earlier * ago * (2 - ago) + (beforeEarlier * ago * (ago - 1)) / 2;
}

/** Temperatures of the free nodes one and two steps before the state, K. */
export interface Past {
  readonly earlier: Float64Array;
  readonly beforeEarlier: Float64Array;
}

/** How many of the day's steps a long one takes together: a divisor of their number. */
function coarseStride({ steps, stepS }: DayForcing, longestS: number): number {
  for (let stride = Math.floor(longestS / stepS); stride > 1; stride--) if (steps % stride === 0) return stride;
  return 1;
}

/** From the past of long steps to that of shorter ones, `share` of their length: on the parabola through the last three. */
function shortenPast({ earlier, beforeEarlier }: Past, state: Float64Array, share: number): void {
  for (let i = 0; i < earlier.length; i++) {
    const course = [state[i] as number, earlier[i] as number, beforeEarlier[i] as number] as const;
    earlier[i] = onParabola(course, share);
    beforeEarlier[i] = onParabola(course, 2 * share);
  }
}

/**
 * Marches once through a day, `stride` steps at a time; `state` and `past` move on, and `into` takes the temperatures.
 * Returns the largest difference of a node between the end and the beginning of the round, K.
 */
export function marchRound(
  network: Network,
  { steps, stepS, boundariesK, sourcesW, windMs }: DayForcing,
  { state, past, stride, into }: { state: Float64Array; past: Past; stride: number; into: StepTable | null },
): number {
  const toleranceK = stride === 1 ? undefined : COARSE_TOLERANCE_K;
  const n = network.freeCount;
  const { earlier, beforeEarlier } = past;
  const began = state.slice(0, n);
  const now = new Float64Array(n);
  const sources = new Float64Array(n);
  for (let k = stride - 1; k < steps; k += stride) {
    for (let i = 0; i < n; i++) now[i] = state[i] as number;
    readRow(boundariesK, k, state, n);
    readRow(sourcesW, k, sources);
    network.step(state, sources, windMs[k] as number, stepS * stride, earlier, beforeEarlier, toleranceK);
    for (let i = 0; i < n; i++) {
      beforeEarlier[i] = earlier[i] as number;
      earlier[i] = now[i] as number;
    }
    if (into !== null) writeRow(into, k, state);
  }
  let apartK = 0;
  for (let i = 0; i < n; i++) apartK = Math.max(apartK, Math.abs((state[i] as number) - (began[i] as number)));
  return apartK;
}

/** Temperature of free node `i` at a step, K; -1 and -2 are the steps before the last round. */
function temperatureAt(day: PeriodicDay, step: number, i: number): number {
  return step < 0 ? (day.beforeK[step + 2]?.[i] as number) : cell(day.temperaturesK, step, i);
}

/** Heat that node `i` stores at a step of the marched day, W: the backward difference that the march takes. */
export function storageW(network: Network, forcing: DayForcing, day: PeriodicDay, step: number, i: number): number {
  const at = (k: number) => temperatureAt(day, k, i);
  const rise = (3 * at(step) - 4 * at(step - 1) + at(step - 2)) / 2;
  return ((network.capacitiesJK[i] as number) * rise) / forcing.stepS;
}

/** All nodes at the steady state under the mean boundaries, sources and wind of the day, K. */
export function meanSteadyState(network: Network, forcing: DayForcing): Float64Array {
  const n = network.freeCount;
  const { boundariesK, sourcesW, windMs } = meansOf(forcing);
  const state = new Float64Array(network.names.length);
  state.set(boundariesK, n);
  state.fill(boundariesK[0] as number, 0, n);
  network.settle(state, sourcesW, windMs);
  return state;
}

/** Mean boundaries, sources and wind of the day. */
function meansOf({ steps, boundariesK, sourcesW, windMs }: DayForcing) {
  return {
    boundariesK: columnMeans(boundariesK, steps),
    sourcesW: columnMeans(sourcesW, steps),
    windMs: windMs.reduce((sum, w) => sum + w, 0) / steps,
  };
}

/**
 * Sets a ground's deep temperature, in place, so that no heat crosses into the depth over the day: on a day that repeats
 * itself the depth is as warm as its surface on average.
 * @throws Error when it does not settle
 */
export function balanceDeepGround(
  network: Network,
  forcing: DayForcing,
  nodes: { readonly surface: string; readonly deep: string },
): void {
  const surface = network.indexOf(nodes.surface);
  const deep = network.indexOf(nodes.deep);
  const { sourcesW, windMs } = meansOf(forcing);
  const state = meanSteadyState(network, forcing);
  for (let round = 0; round < MAX_ROUNDS; round++) {
    const surfaceK = state[surface] as number;
    const movedK = Math.abs(surfaceK - (state[deep] as number));
    if (movedK < PERIODIC_WITHIN_K) {
      const { width, values } = forcing.boundariesK;
      for (let k = 0; k < forcing.steps; k++) values[k * width + deep - network.freeCount] = surfaceK;
      return;
    }
    state[deep] = surfaceK;
    network.settle(state, sourcesW, windMs);
  }
  throw new Error(`the deep ground did not settle in ${MAX_ROUNDS} rounds`);
}

/** Where less than this goes in on average the quotient of two noises would say nothing, W. */
const LEAST_MEAN_W = 1;

/**
 * Energy that went in minus what went out minus what is stored, relative to what went in, over the last round. In and
 * out are the sources and what the links bring from and to each boundary, each by its sign at each step.
 */
export function energyClosure(network: Network, forcing: DayForcing, day: PeriodicDay): number {
  const { steps, stepS, sourcesW, windMs } = forcing;
  const n = network.freeCount;
  const t = new Float64Array(network.names.length);
  const boundaryW = new Float64Array(t.length - n);
  let inW = 0;
  let outW = 0;
  for (let k = 0; k < steps; k++) {
    readRow(day.temperaturesK, k, t);
    network.boundaryHeatW(t, windMs[k] as number, boundaryW);
    for (let i = 0, at = k * sourcesW.width; i < n; i++, at++) {
      const watts = sourcesW.values[at] as number;
      if (watts > 0) inW += watts;
      else outW -= watts;
    }
    for (let i = 0; i < boundaryW.length; i++) {
      const watts = boundaryW[i] as number;
      if (watts < 0) inW -= watts;
      else outW += watts;
    }
  }
  const inJ = inW * stepS;
  const outJ = outW * stepS;
  // The backward differences of the steps add up to those of the ends.
  const at = (k: number, i: number) => temperatureAt(day, k, i);
  let storedJ = 0;
  for (let i = 0; i < n; i++) {
    const rise = 1.5 * (at(steps - 1, i) - at(-1, i)) - 0.5 * (at(steps - 2, i) - at(-2, i));
    storedJ += (network.capacitiesJK[i] as number) * rise;
  }
  return (inJ - outJ - storedJ) / Math.max(inJ, LEAST_MEAN_W * steps * stepS);
}
