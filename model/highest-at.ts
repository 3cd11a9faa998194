/** Position of the largest number, the first of equals. */
export function highestAt(values: readonly number[]): number {
  return values.reduce((best, value, k) => (value > (values[best] as number) ? k : best), 0);
}
