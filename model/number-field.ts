/** What a number that a person can enter is described by. */
import type { QuantityKind } from './units.ts';

export interface FieldDefault {
  readonly value: number;
  /** Where the value comes from; shown to the user beside the value. */
  readonly origin: string;
}

export interface NumberField {
  readonly kind: QuantityKind;
  readonly min: number;
  readonly max: number;
  readonly label: string;
  readonly default?: FieldDefault;
}

/** Origin of a figure of the trade that nobody has a source for. */
export const COMMON_PRACTICE = 'common practice, no source';
