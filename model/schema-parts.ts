/** What the schemas of a site file are put together from. */
import { z } from 'zod';
import { allowedText, FIELDS, type FieldPath, type NumberField } from './fields.ts';
import { shown } from './site-error.ts';
import { QUANTITY_KINDS, type QuantityReader } from './units.ts';

export const MAX_TEXT = 200;

/** Names that an object of the schema knows, by its general path; used to point out typos. */
export type KnownKeys = Map<string, readonly string[]>;

/** Objects, numbers, texts and months of a schema whose typed text is read by `read`. */
export function schemaParts(read: QuantityReader, knownKeys: KnownKeys) {
  function object<Shape extends z.core.$ZodLooseShape>(path: string, shape: Shape) {
    // Variants of one object know the keys of all.
    knownKeys.set(path, [...new Set([...(knownKeys.get(path) ?? []), ...Object.keys(shape)])]);
    return z.strictObject(shape);
  }

  /** A number in SI, or text with a unit, within the range that `fields.ts` states. */
  function required(path: FieldPath) {
    const field: NumberField = FIELDS[path];
    return z
      .union([z.number(), z.string()])
      .meta({
        description: field.label,
        unit: QUANTITY_KINDS[field.kind].si,
        minimum: field.min,
        maximum: field.max,
        examples: [QUANTITY_KINDS[field.kind].example],
      })
      .transform((entered, context) => {
        const value = typeof entered === 'string' ? read(entered, field.kind) : entered;
        const wrong = value === null ? `${shown(entered)} is not understood` : outOfRange(value, field);
        if (value === null || wrong !== null) {
          context.issues.push({
            code: 'custom',
            input: entered,
            message: wrong ?? '',
            params: { allowed: allowedText(field) },
          });
          return z.NEVER;
        }
        return value;
      });
  }

  function defaulted(
    path: { [P in FieldPath]: (typeof FIELDS)[P] extends { default: unknown } ? P : never }[FieldPath],
  ) {
    return required(path).prefault(FIELDS[path].default.value);
  }

  const text = z.string().trim().max(MAX_TEXT);

  const month = z
    .int({ error: (issue) => `${shown(issue.input)} is no month; allowed: 1 to 12` })
    .min(1, { error: 'a month is at least 1; allowed: 1 to 12' })
    .max(12, { error: 'a month is at most 12; allowed: 1 to 12' });

  return { object, required, defaulted, text, month };
}

export type SchemaParts = ReturnType<typeof schemaParts>;

function outOfRange(value: number, field: NumberField): string | null {
  if (!Number.isFinite(value)) return `${shown(value)} is not a number`;
  if (value < field.min) return `${shown(value)} is below ${field.min}`;
  if (value > field.max) return `${shown(value)} is above ${field.max}`;
  return null;
}
