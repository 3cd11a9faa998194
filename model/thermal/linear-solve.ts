/** Small dense systems of a heat balance. */

/**
 * Replaces a row-major n by n matrix by its inverse, in place (Gauss and Jordan). Without pivoting: each row of a heat
 * balance is dominated by its diagonal. The matrix of a march serves hundreds of steps, and a product with its inverse waits
 * less on itself than the two substitutions of triangular factors.
 */
export function invert(a: Float64Array, n: number): void {
  for (let k = 0; k < n; k++) {
    const pivot = 1 / (a[k * n + k] as number);
    a[k * n + k] = 1;
    for (let j = 0; j < n; j++) a[k * n + j] = (a[k * n + j] as number) * pivot;
    for (let i = 0; i < n; i++) {
      const factor = a[i * n + k] as number;
      if (i === k || factor === 0) continue;
      a[i * n + k] = 0;
      for (let j = 0; j < n; j++) a[i * n + j] = (a[i * n + j] as number) - factor * (a[k * n + j] as number);
    }
  }
}

/** Product of a row-major n by n matrix and a vector. Writes `into`. */
export function multiply(a: Float64Array, b: Float64Array, n: number, into: Float64Array): void {
  for (let i = 0, at = 0; i < n; i++) {
    // Two sums side by side: one alone would wait for each of its additions.
    let even = 0;
    let odd = 0;
    let j = 0;
    for (; j + 1 < n; j += 2, at += 2) {
      even += (a[at] as number) * (b[j] as number);
      odd += (a[at + 1] as number) * (b[j + 1] as number);
    }
    if (j < n) even += (a[at++] as number) * (b[j] as number);
    into[i] = even + odd;
  }
}
