/**
 * A thermal network: nodes that store heat, boundaries whose temperature is given, and links between them.
 *
 * This file owns mutable arrays, prepared once and reused at every step: a network serves one march at a time.
 * Temperatures stand in one array in kelvin, free nodes first, boundaries after them.
 */
import { SIGMA } from '../physical-constants.ts';

/** Convection coefficient of a surface, W/(m2 K). */
export type Coefficient = (surfaceK: number, airK: number, windMs: number) => number;

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
  /** Net heat into each free node without its storage, W: sources plus links. Writes `into` (length `freeCount`). */
  netHeatW(temperaturesK: Float64Array, sourcesW: Float64Array, windMs: number, into: Float64Array): void;
  /**
   * Moves the free nodes of `temperaturesK` one implicit step on, to the end of which boundaries, sources and wind belong.
   * With the temperatures of one step earlier the step is a backward difference of second order, without them of first
   * order (implicit Euler); either damps stiff nodes. The non-linearity is iterated until no node moves by more than
   * `TOLERANCE_K`. Source: Hairer and Wanner, Solving Ordinary Differential Equations II (1996), section V.1.
   * @throws Error when it does not settle
   */
  step(
    temperaturesK: Float64Array,
    sourcesW: Float64Array,
    windMs: number,
    stepS: number,
    earlierK?: Float64Array,
  ): void;
  /** Moves the free nodes to the steady state under the given boundaries, sources and wind. @throws Error as `step` */
  settle(temperaturesK: Float64Array, sourcesW: Float64Array, windMs: number): void;
}

/**
 * Largest move of a node in the last iteration of a step, K. Each iteration leaves about a seventh of the error before, so
 * what remains is below 0.001 K, and the energy closure, which is taken from the true flows, some 1e-5.
 */
const TOLERANCE_K = 5e-3;

/** A factorised matrix is used again as long as each move is at least this much smaller than the one before. */
const GOOD_CONTRACTION = 0.3;
const MAX_ITERATIONS = 60;

/** Largest move of a node in one iteration towards the steady state, K: far from it the fourth powers overshoot. */
const SETTLING_MOVE_K = 60;

/** Builds a network. @throws RangeError when a link names an unknown node */
export function createNetwork(design: NetworkDesign): Network {
  const free = Object.keys(design.capacitiesJK);
  const names = [...free, ...design.boundaries];
  const n = free.length;
  const capacitiesJK = Float64Array.from(Object.values(design.capacitiesJK));
  const indexOf = (name: string): number => {
    const index = names.indexOf(name);
    if (index < 0) throw new RangeError(`network: no node "${name}"`);
    return index;
  };
  const { links } = design;
  const count = links.length;
  const from = Int32Array.from(links, (link) => indexOf(link.from));
  const to = Int32Array.from(links, (link) => indexOf(link.to));
  const RADIATION = 1;
  const CONVECTION = 2;
  const kind = Uint8Array.from(links, ({ kind }) =>
    kind === 'conduction' ? 0 : kind === 'radiation' ? RADIATION : CONVECTION,
  );
  const size = Float64Array.from(links, (link) =>
    link.kind === 'conduction'
      ? link.conductanceWK
      : link.kind === 'radiation'
        ? link.exchangeAreaM2 * SIGMA
        : link.areaM2,
  );
  const coefficients = links.map((link): Coefficient => (link.kind === 'convection' ? link.coefficient : () => 0));

  const matrix = new Float64Array(n * n);
  const residual = new Float64Array(n);
  /** What storage compares a node with: a mean of its past temperatures, K. */
  const pastK = new Float64Array(n);

  function linkFlowW(link: number, t: Float64Array, windMs: number): number {
    const t1 = t[from[link] as number] as number;
    const t2 = t[to[link] as number] as number;
    const g = size[link] as number;
    if (kind[link] === RADIATION) return g * (t1 * t1 + t2 * t2) * (t1 + t2) * (t1 - t2);
    if (kind[link] === CONVECTION) return g * (coefficients[link] as Coefficient)(t1, t2, windMs) * (t1 - t2);
    return g * (t1 - t2);
  }

  function netHeatW(t: Float64Array, sourcesW: Float64Array, windMs: number, into: Float64Array): void {
    for (let i = 0; i < n; i++) into[i] = sourcesW[i] as number;
    for (let k = 0; k < count; k++) {
      const flow = linkFlowW(k, t, windMs);
      const i = from[k] as number;
      const j = to[k] as number;
      if (i < n) into[i] = (into[i] as number) - flow;
      if (j < n) into[j] = (into[j] as number) + flow;
    }
  }

  /** Fills residual (heat into each node) and matrix (minus its derivative, convection coefficients held). */
  function linearise(t: Float64Array, sourcesW: Float64Array, windMs: number): void {
    matrix.fill(0);
    for (let i = 0; i < n; i++) residual[i] = sourcesW[i] as number;
    for (let k = 0; k < count; k++) {
      const i = from[k] as number;
      const j = to[k] as number;
      const t1 = t[i] as number;
      const t2 = t[j] as number;
      let byFirst = size[k] as number;
      let bySecond = byFirst;
      let flow: number;
      if (kind[k] === RADIATION) {
        const t12 = t1 * t1;
        const t22 = t2 * t2;
        flow = byFirst * (t12 + t22) * (t1 + t2) * (t1 - t2);
        bySecond *= 4 * t22 * t2;
        byFirst *= 4 * t12 * t1;
      } else {
        if (kind[k] === CONVECTION) byFirst *= (coefficients[k] as Coefficient)(t1, t2, windMs);
        bySecond = byFirst;
        flow = byFirst * (t1 - t2);
      }
      if (i < n) {
        residual[i] = (residual[i] as number) - flow;
        matrix[i * n + i] = (matrix[i * n + i] as number) + byFirst;
        if (j < n) matrix[i * n + j] = (matrix[i * n + j] as number) - bySecond;
      }
      if (j < n) {
        residual[j] = (residual[j] as number) + flow;
        matrix[j * n + j] = (matrix[j * n + j] as number) + bySecond;
        if (i < n) matrix[j * n + i] = (matrix[j * n + i] as number) - byFirst;
      }
    }
  }

  /** Adds storage to the heat into each node: capacity times `rate` times the fall below `pastK`. */
  function addStorage(t: Float64Array, rate: number): void {
    for (let i = 0; i < n; i++) {
      const c = (capacitiesJK[i] as number) * rate;
      residual[i] = (residual[i] as number) - c * ((t[i] as number) - (pastK[i] as number));
    }
  }

  function iterate(t: Float64Array, sourcesW: Float64Array, windMs: number, rate: number, limitK: number): void {
    let factorised = false;
    let before = Number.POSITIVE_INFINITY;
    for (let round = 0; round < MAX_ITERATIONS; round++) {
      if (factorised) netHeatW(t, sourcesW, windMs, residual);
      else {
        linearise(t, sourcesW, windMs);
        for (let i = 0; i < n; i++) {
          matrix[i * n + i] = (matrix[i * n + i] as number) + (capacitiesJK[i] as number) * rate;
        }
        factorise(matrix, n);
      }
      addStorage(t, rate);
      solveFactorised(matrix, residual, n);
      let largest = 0;
      for (let i = 0; i < n; i++) {
        const change = Math.max(-limitK, Math.min(limitK, residual[i] as number));
        t[i] = (t[i] as number) + change;
        largest = Math.max(largest, Math.abs(change));
      }
      if (!Number.isFinite(largest)) throw new Error('network: the heat balance has no finite solution');
      if (largest < TOLERANCE_K) return;
      factorised = largest < GOOD_CONTRACTION * before;
      before = largest;
    }
    throw new Error(`network: the heat balance did not settle in ${MAX_ITERATIONS} iterations`);
  }

  return {
    names,
    freeCount: n,
    capacitiesJK,
    links,
    indexOf,
    linkFlowW,
    netHeatW,
    step(t, sourcesW, windMs, stepS, earlierK) {
      for (let i = 0; i < n; i++) {
        const now = t[i] as number;
        const earlier = earlierK === undefined ? now : (earlierK[i] as number);
        // (3 T - 4 now + earlier) / 2 = 1.5 (T - past); temperatures go on as they went: that saves an iteration.
        pastK[i] = earlierK === undefined ? now : (4 * now - earlier) / 3;
        t[i] = 2 * now - earlier;
      }
      iterate(t, sourcesW, windMs, (earlierK === undefined ? 1 : 1.5) / stepS, Number.POSITIVE_INFINITY);
    },
    settle(t, sourcesW, windMs) {
      iterate(t, sourcesW, windMs, 0, SETTLING_MOVE_K);
    },
  };
}

/**
 * Replaces a row-major n by n matrix by its triangular factors, the lower one with ones on its diagonal. Without
 * pivoting: each row of a heat balance is dominated by its diagonal.
 */
function factorise(a: Float64Array, n: number): void {
  for (let k = 0; k < n; k++) {
    const pivot = 1 / (a[k * n + k] as number);
    for (let i = k + 1; i < n; i++) {
      const factor = (a[i * n + k] as number) * pivot;
      a[i * n + k] = factor;
      if (factor === 0) continue;
      for (let j = k + 1; j < n; j++) a[i * n + j] = (a[i * n + j] as number) - factor * (a[k * n + j] as number);
    }
  }
}

/** Solves with the factors of `factorise`; the solution replaces b. */
function solveFactorised(a: Float64Array, b: Float64Array, n: number): void {
  for (let i = 1; i < n; i++) {
    let sum = b[i] as number;
    for (let j = 0; j < i; j++) sum -= (a[i * n + j] as number) * (b[j] as number);
    b[i] = sum;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i] as number;
    for (let j = i + 1; j < n; j++) sum -= (a[i * n + j] as number) * (b[j] as number);
    b[i] = sum / (a[i * n + i] as number);
  }
}
