/** The result of a computation that yields the share done, for a caller who waits for all of it. */
export function finished<Result>(steps: Generator<number, Result>): Result {
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
}
