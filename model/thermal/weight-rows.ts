/** Constant weights of sums over a few of many numbers, row by row: what is not zero, one after the other. */
export interface WeightRows {
  /** Where each row starts, and where the last one ends. */
  readonly starts: Int32Array;
  readonly columns: Int32Array;
  readonly weights: Float64Array;
}

/** Takes the weights that are not zero out of a row-major square matrix with rows of `width`. */
export function weightRows(square: Float64Array, width: number): WeightRows {
  const starts = new Int32Array(width + 1);
  const columns: number[] = [];
  const weights: number[] = [];
  for (let i = 0; i < width; i++) {
    for (let j = 0; j < width; j++) {
      const weight = square[i * width + j] as number;
      if (weight === 0) continue;
      columns.push(j);
      weights.push(weight);
    }
    starts[i + 1] = columns.length;
  }
  return { starts, columns: Int32Array.from(columns), weights: Float64Array.from(weights) };
}

/** Weighted sum of the values in a row. */
export function weighted({ starts, columns, weights }: WeightRows, row: number, values: Float64Array): number {
  const end = starts[row + 1] as number;
  // Two sums side by side: one alone would wait for each of its additions.
  let even = 0;
  let odd = 0;
  let at = starts[row] as number;
  for (; at + 1 < end; at += 2) {
    even += (weights[at] as number) * (values[columns[at] as number] as number);
    odd += (weights[at + 1] as number) * (values[columns[at + 1] as number] as number);
  }
  if (at < end) even += (weights[at] as number) * (values[columns[at] as number] as number);
  return even + odd;
}

/** Visits the weights of a row with their columns. */
export function eachWeight(
  { starts, columns, weights }: WeightRows,
  row: number,
  visit: (column: number, weight: number) => void,
): void {
  for (let at = starts[row] as number; at < (starts[row + 1] as number); at++) {
    visit(columns[at] as number, weights[at] as number);
  }
}
