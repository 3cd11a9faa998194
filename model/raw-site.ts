/** A site as it was handed in, read field by field before anything about it is trusted. */
import { fieldAt } from './fields.ts';
import type { QuantityReader } from './units.ts';

/** Reads raw fields by their path. */
export interface RawSite {
  /** What stands at a path; undefined where nothing does. */
  at(path: string): unknown;
  /** The number at a path in SI; undefined where none is entered or it is itself wrong. */
  number(path: string): number | undefined;
  /** The same, or the usual value of the field where nothing is entered. */
  numberOrUsual(path: string): number | undefined;
}

/** What stands at a path of a raw input. */
export function rawAt(input: unknown, path: string): unknown {
  return path.split('.').reduce<unknown>((at, key) => {
    return typeof at === 'object' && at !== null && Object.hasOwn(at, key)
      ? (at as Record<string, unknown>)[key]
      : undefined;
  }, input);
}

/** Reads a raw input by paths. */
export function rawSite(input: unknown, read: QuantityReader): RawSite {
  const at = (path: string) => rawAt(input, path);
  const number = (path: string): number | undefined => {
    const entered = at(path);
    const field = fieldAt(path);
    if (field === undefined) return undefined;
    const value = typeof entered === 'string' ? read(entered, field.kind) : entered;
    return typeof value === 'number' && value >= field.min && value <= field.max ? value : undefined;
  };
  return {
    at,
    number,
    numberOrUsual: (path) => (at(path) === undefined ? fieldAt(path)?.default?.value : number(path)),
  };
}
