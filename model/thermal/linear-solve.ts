/** Small dense systems of a heat balance, solved in place. */

/**
 * Replaces a row-major n by n matrix by its triangular factors, the lower one with ones on its diagonal. Without
 * pivoting: each row of a heat balance is dominated by its diagonal.
 */
export function factorise(a: Float64Array, n: number): void {
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
export function solveFactorised(a: Float64Array, b: Float64Array, n: number): void {
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
