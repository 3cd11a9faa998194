/** Numbers of a day, one row a step, in one array: an array for each row would cost more to make than to fill. */
export interface StepTable {
  readonly width: number;
  readonly values: Float64Array;
}

/** A table of zeros. */
export function stepTable(steps: number, width: number): StepTable {
  return { width, values: new Float64Array(steps * width) };
}

/** Copies the row of a step to `into`, from position `at` on. */
export function readRow({ width, values }: StepTable, step: number, into: Float64Array, at = 0): void {
  for (let i = 0, from = step * width; i < width; i++, from++) into[at + i] = values[from] as number;
}

/** Copies the first numbers of `from` into the row of a step. */
export function writeRow({ width, values }: StepTable, step: number, from: ArrayLike<number>): void {
  for (let i = 0, to = step * width; i < width; i++, to++) values[to] = from[i] as number;
}

/** One number of a table. */
export function cell({ width, values }: StepTable, step: number, column: number): number {
  return values[step * width + column] as number;
}

/** Mean of each column over `steps` rows. */
export function columnMeans(table: StepTable, steps: number): Float64Array {
  const { width, values } = table;
  const means = new Float64Array(width);
  for (let at = 0; at < steps * width; ) {
    for (let i = 0; i < width; i++, at++) means[i] = (means[i] as number) + (values[at] as number);
  }
  return means.map((sum) => sum / steps);
}
