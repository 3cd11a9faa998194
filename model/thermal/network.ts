/**
 * A thermal network: nodes that store heat, boundaries whose temperature is given, and links between them.
 *
 * This file owns mutable arrays, prepared once and reused at every step: a network serves one march at a time.
 * Temperatures stand in one array in kelvin, free nodes first, boundaries after them.
 */
import { SIGMA } from '../physical-constants.ts';
import { type BankedLink, type ConvectionBank, convectionBank } from './convection-bank.ts';
import type { Coefficient } from './convection-law.ts';
import { invert, multiply } from './linear-solve.ts';
import { eachWeight, type WeightRows, weighted, weightRows } from './weight-rows.ts';

/** A path along which heat flows from `from` to `to`; both are node names. */
export type Link = { readonly from: string; readonly to: string; readonly label?: string } & (
  | { readonly kind: 'conduction'; readonly conductanceWK: number }
  /** Exchange area: area times emittance times view factor; flow = area sigma (T1^4 - T2^4). */
  | { readonly kind: 'radiation'; readonly exchangeAreaM2: number }
  /** `from` is the surface, `to` the air. */
  | { readonly kind: 'convection'; readonly areaM2: number; readonly coefficient: Coefficient }
);

export interface NetworkDesign {
  /** Free nodes with their heat capacity, J/K. */
  readonly capacitiesJK: Readonly<Record<string, number>>;
  /** Names of the nodes whose temperature is given. */
  readonly boundaries: readonly string[];
  readonly links: readonly Link[];
}

export interface Network {
  readonly names: readonly string[];
  readonly freeCount: number;
  readonly capacitiesJK: Float64Array;
  readonly links: readonly Link[];
  /** Position of a node in the temperature array. @throws RangeError for an unknown name */
  indexOf(name: string): number;
  /** Heat that flows along link number `link` from its first node to its second, W. */
  linkFlowW(link: number, temperaturesK: Float64Array, windMs: number): number;
  /** Heat that the links bring into each boundary, W. Writes `into`, one number for each boundary. */
  boundaryHeatW(temperaturesK: Float64Array, windMs: number, into: Float64Array): void;
  /** Net heat into each free node without its storage, W: sources plus links. Writes `into` (length `freeCount`). */
  netHeatW(temperaturesK: Float64Array, sourcesW: Float64Array, windMs: number, into: Float64Array): void;
  /**
   * Moves the free nodes of `temperaturesK` one implicit step on, to the end of which boundaries, sources and wind belong.
   * With the temperatures of one step earlier the step is a backward difference of second order, without them of first
   * order (implicit Euler); either damps stiff nodes. The non-linearity is iterated until no node moves by more than
   * `toleranceK`, `TOLERANCE_K` where left out, from where the course of the steps before leads: the more of them are given, the nearer. Source: Hairer and Wanner, Solving Ordinary Differential Equations II (1996), section V.1.
   * @throws Error when it does not settle
   */
  step(
    temperaturesK: Float64Array,
    sourcesW: Float64Array,
    windMs: number,
    stepS: number,
    earlierK?: Float64Array,
    beforeEarlierK?: Float64Array,
    toleranceK?: number,
  ): void;
  /** Moves the free nodes to the steady state under the given boundaries, sources and wind. @throws Error as `step` */
  settle(temperaturesK: Float64Array, sourcesW: Float64Array, windMs: number): void;
}

/**
 * Largest move of a node in the last iteration of a step, K. Each iteration leaves about a tenth of the error before, so
 * what remains is some 0.003 K at the steps of the fastest change and far less at the others, and the energy closure, which is
 * taken from the true flows, some 1e-6.
 */
const TOLERANCE_K = 3e-2;

/** An inverted matrix is used again, in later steps too, as long as each move is this much smaller than the one before. */
const GOOD_CONTRACTION = 0.3;
const MAX_ITERATIONS = 60;

/** Largest move of a node in one iteration, K: far from the solution the fourth powers overshoot. */
const LARGEST_MOVE_K = 60;

/**
 * The numbers of a network. Conduction and radiation are sums over other nodes with constant weights: of temperatures, and
 * of their fourth powers; what leaves a node stands as a weight of its own.
 */
interface Workings {
  /** Free nodes, and all of them. */
  readonly n: number;
  readonly m: number;
  readonly capacitiesJK: Float64Array;
  readonly conduction: WeightRows;
  readonly radiation: WeightRows;
  readonly convection: readonly BankedLink[];
  readonly bank: ConvectionBank;
  /** Of the convection links that meet a boundary. */
  readonly boundaryBank: ConvectionBank;
  /** Conductances of a bank as it last found them, W/K. */
  readonly convectionWK: Float64Array;
  readonly fourthPower: Float64Array;
  /** What storage compares a node with: a mean of its past temperatures, K. */
  readonly pastK: Float64Array;
  readonly residual: Float64Array;
  readonly move: Float64Array;
  readonly inverse: Float64Array;
  /** The storage rate, 1/s, that `inverse` belongs to; NaN while it is not worth using. */
  invertedFor: number;
}

/** Builds a network. @throws RangeError when a link names an unknown node */
export function createNetwork(design: NetworkDesign): Network {
  const names = [...Object.keys(design.capacitiesJK), ...design.boundaries];
  const indexOf = (name: string): number => {
    const index = names.indexOf(name);
    if (index < 0) throw new RangeError(`network: no node "${name}"`);
    return index;
  };
  const ends = design.links.map((link) => ({ link, i: indexOf(link.from), j: indexOf(link.to) }));
  const workings = prepare(names.length, Float64Array.from(Object.values(design.capacitiesJK)), ends);
  const { n, pastK } = workings;

  return {
    names,
    freeCount: n,
    capacitiesJK: workings.capacitiesJK,
    links: design.links,
    indexOf,
    linkFlowW(k, t, windMs) {
      const end = ends[k];
      if (end === undefined) throw new RangeError(`network: no link ${k}`);
      return flowW(end.link, t[end.i] as number, t[end.j] as number, windMs);
    },
    boundaryHeatW: (t, windMs, into) => boundaryHeat(workings, t, windMs, into),
    netHeatW: (t, sourcesW, windMs, into) => netHeat(workings, t, sourcesW, windMs, into),
    step(t, sourcesW, windMs, stepS, earlierK, beforeEarlierK, toleranceK = TOLERANCE_K) {
      for (let i = 0; i < n; i++) {
        const now = t[i] as number;
        const earlier = earlierK === undefined ? now : (earlierK[i] as number);
        // (3 T - 4 now + earlier) / 2 = 1.5 (T - past)
        pastK[i] = earlierK === undefined ? now : (4 * now - earlier) / 3;
        // Straight on from two points, or on the parabola through three.
        t[i] = 2 * now - earlier;
        if (beforeEarlierK !== undefined) t[i] = 3 * (now - earlier) + (beforeEarlierK[i] as number);
      }
      const rate = (earlierK === undefined ? 1 : 1.5) / stepS;
      iterate(workings, t, sourcesW, windMs, rate, toleranceK);
    },
    settle: (t, sourcesW, windMs) => iterate(workings, t, sourcesW, windMs, 0, TOLERANCE_K),
  };
}

function flowW(link: Link, t1: number, t2: number, windMs: number): number {
  if (link.kind === 'conduction') return link.conductanceWK * (t1 - t2);
  if (link.kind === 'radiation') return link.exchangeAreaM2 * SIGMA * (t1 ** 4 - t2 ** 4);
  return link.areaM2 * link.coefficient(t1, t2, windMs) * (t1 - t2);
}

function prepare(
  m: number,
  capacitiesJK: Float64Array,
  ends: readonly { readonly link: Link; readonly i: number; readonly j: number }[],
): Workings {
  const n = capacitiesJK.length;
  const conduction = new Float64Array(m * m);
  const radiation = new Float64Array(m * m);
  const join = (rows: Float64Array, a: number, b: number, weight: number): void => {
    rows[a * m + b] = (rows[a * m + b] as number) + weight;
    rows[a * m + a] = (rows[a * m + a] as number) - weight;
  };
  const convection: BankedLink[] = [];
  for (const { link, i, j } of ends) {
    if (link.kind === 'convection') {
      convection.push({ i, j, areaM2: link.areaM2, coefficient: link.coefficient });
      continue;
    }
    const [rows, weight] =
      link.kind === 'conduction' ? [conduction, link.conductanceWK] : [radiation, link.exchangeAreaM2 * SIGMA];
    join(rows, i, j, weight);
    join(rows, j, i, weight);
  }
  return {
    n,
    m,
    capacitiesJK,
    conduction: weightRows(conduction, m),
    radiation: weightRows(radiation, m),
    convection,
    bank: convectionBank(convection),
    boundaryBank: convectionBank(convection.filter(({ i, j }) => i >= n || j >= n)),
    convectionWK: new Float64Array(convection.length),
    fourthPower: new Float64Array(m),
    pastK: new Float64Array(n),
    residual: new Float64Array(n),
    move: new Float64Array(n),
    inverse: new Float64Array(n * n),
    invertedFor: Number.NaN,
  };
}

function raiseToFourthPower({ m, fourthPower }: Workings, t: Float64Array): void {
  for (let j = 0; j < m; j++) {
    const square = (t[j] as number) * (t[j] as number);
    fourthPower[j] = square * square;
  }
}

/** Heat that conduction and radiation bring into a node, W; `fourthPower` must belong to `t`. */
function constantLinks({ conduction, radiation, fourthPower }: Workings, i: number, t: Float64Array): number {
  return weighted(conduction, i, t) + weighted(radiation, i, fourthPower);
}

function netHeat(w: Workings, t: Float64Array, sourcesW: Float64Array, windMs: number, into: Float64Array): void {
  const { n, bank, convectionWK } = w;
  raiseToFourthPower(w, t);
  for (let i = 0; i < n; i++) into[i] = (sourcesW[i] as number) + constantLinks(w, i, t);
  bank.conductancesWK(t, windMs, convectionWK);
  for (let k = 0; k < bank.count; k++) {
    const i = bank.surface[k] as number;
    const j = bank.air[k] as number;
    const flow = (convectionWK[k] as number) * ((t[i] as number) - (t[j] as number));
    if (i < n) into[i] = (into[i] as number) - flow;
    if (j < n) into[j] = (into[j] as number) + flow;
  }
}

function boundaryHeat(w: Workings, t: Float64Array, windMs: number, into: Float64Array): void {
  const { n, m, boundaryBank, convectionWK } = w;
  raiseToFourthPower(w, t);
  for (let i = n; i < m; i++) into[i - n] = constantLinks(w, i, t);
  boundaryBank.conductancesWK(t, windMs, convectionWK);
  for (let k = 0; k < boundaryBank.count; k++) {
    const i = boundaryBank.surface[k] as number;
    const j = boundaryBank.air[k] as number;
    const flow = (convectionWK[k] as number) * ((t[i] as number) - (t[j] as number));
    if (i >= n) into[i - n] = (into[i - n] as number) - flow;
    if (j >= n) into[j - n] = (into[j - n] as number) + flow;
  }
}

/** A coefficient's slope is taken over this much of the surface's temperature, K. */
const SLOPE_OVER_K = 0.05;

/** What a convection link carries for one more kelvin of its surface, W/K: more than its conductance, which grows too. */
function convectionSlopeWK({ areaM2, coefficient }: BankedLink, t1: number, t2: number, windMs: number): number {
  const above = t1 + (t1 < t2 ? -SLOPE_OVER_K : SLOPE_OVER_K);
  const flow = (surfaceK: number) => areaM2 * coefficient(surfaceK, t2, windMs) * (surfaceK - t2);
  return (flow(above) - flow(t1)) / (above - t1);
}

/** Fills the matrix that is to be inverted: minus the derivative of the heat into each node at `t`. */
function linearise(
  { n, inverse: matrix, conduction, radiation, convection }: Workings,
  t: Float64Array,
  windMs: number,
): void {
  matrix.fill(0);
  for (let i = 0; i < n; i++) {
    eachWeight(conduction, i, (j, weight) => {
      if (j < n) matrix[i * n + j] = (matrix[i * n + j] as number) - weight;
    });
    eachWeight(radiation, i, (j, weight) => {
      if (j < n) matrix[i * n + j] = (matrix[i * n + j] as number) - 4 * weight * (t[j] as number) ** 3;
    });
  }
  for (let k = 0; k < convection.length; k++) {
    const link = convection[k] as BankedLink;
    const { i, j } = link;
    const conductance = convectionSlopeWK(link, t[i] as number, t[j] as number, windMs);
    if (i < n) matrix[i * n + i] = (matrix[i * n + i] as number) + conductance;
    if (j < n) matrix[j * n + j] = (matrix[j * n + j] as number) + conductance;
    if (i < n && j < n) {
      matrix[i * n + j] = (matrix[i * n + j] as number) - conductance;
      matrix[j * n + i] = (matrix[j * n + i] as number) - conductance;
    }
  }
}

/** Newton's iteration; storage is capacity times `rate` times the rise over `pastK`, none for the steady state. */
function iterate(
  w: Workings,
  t: Float64Array,
  sourcesW: Float64Array,
  windMs: number,
  rate: number,
  toleranceK: number,
): void {
  const { n, capacitiesJK, pastK, residual, move, inverse } = w;
  let before = Number.POSITIVE_INFINITY;
  for (let round = 0; round < MAX_ITERATIONS; round++) {
    netHeat(w, t, sourcesW, windMs, residual);
    if (w.invertedFor !== rate) {
      linearise(w, t, windMs);
      for (let i = 0; i < n; i++) {
        inverse[i * n + i] = (inverse[i * n + i] as number) + (capacitiesJK[i] as number) * rate;
      }
      invert(inverse, n);
      w.invertedFor = rate;
    }
    for (let i = 0; i < n; i++) {
      const stored = (capacitiesJK[i] as number) * rate * ((t[i] as number) - (pastK[i] as number));
      residual[i] = (residual[i] as number) - stored;
    }
    multiply(inverse, residual, n, move);
    let largest = 0;
    for (let i = 0; i < n; i++) {
      const change = Math.max(-LARGEST_MOVE_K, Math.min(LARGEST_MOVE_K, move[i] as number));
      t[i] = (t[i] as number) + change;
      largest = Math.max(largest, Math.abs(change));
    }
    if (largest < toleranceK) return;
    if (!Number.isFinite(largest)) break;
    if (largest > GOOD_CONTRACTION * before) w.invertedFor = Number.NaN;
    before = largest;
  }
  w.invertedFor = Number.NaN;
  throw new Error(`network: the heat balance has no solution that ${MAX_ITERATIONS} iterations find`);
}
