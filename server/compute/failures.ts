/** Why a task was not worked on to its end. */

/** Every place to work and to wait is taken. */
export class Overloaded extends Error {
  override readonly name = 'Overloaded';
  /** When it may be worth to ask again, in whole seconds. */
  readonly retryAfterS: number;

  constructor(retryAfterS: number) {
    super('too many requests are waiting');
    this.retryAfterS = retryAfterS;
  }
}

/** A task took longer than one may, and was ended. */
export class TimeLimitPassed extends Error {
  override readonly name = 'TimeLimitPassed';
  readonly limitS: number;

  constructor(limitS: number) {
    super(`ended after ${limitS} s`);
    this.limitS = limitS;
  }
}

/** Nobody waits for the answer any more. */
export class Abandoned extends Error {
  override readonly name = 'Abandoned';
}
