/**
 * How many rounds a property gets, and from which seed. The tests take the same road each time; `SHADESIDE_FUZZ=20 npm test -- tests/fuzz`
 * goes twenty times as far on roads of its own, and prints the seed of what it finds. What it finds becomes a case in once-failed.test.ts.
 */
const further = Number(process.env['SHADESIDE_FUZZ'] ?? 0);

/** Parameters for fast-check; `rounds` are those of an ordinary run. */
export function rounds(count: number): { numRuns: number; seed?: number } {
  return further > 0 ? { numRuns: count * further } : { numRuns: count, seed: 20_260 };
}

/** How long a property may take, ms. */
export const PATIENCE_MS = 60_000 * Math.max(1, further);
