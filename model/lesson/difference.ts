/** In what one thing two boxes of a lesson may differ: the schema of a difference as a lesson file holds it. */
import { z } from 'zod';
import { CLIMATE_SAMPLES, STANDARD_CYCLES } from '../climate/samples.ts';
import type { FieldPath } from '../fields.ts';
import { FINISH_NAMES, FINISH_STATES } from '../finishes.ts';
import { MAX_TEXT, type SchemaParts } from '../schema-parts.ts';
import { shown } from '../site-error.ts';

export const DIFFERENCE_KINDS = [
  'wall',
  'finish',
  'hood',
  'eave',
  'shade',
  'power',
  'wind',
  'climate',
  'altitude',
] as const;

export type DifferenceKind = (typeof DIFFERENCE_KINDS)[number];

/** Samples and standard cycles by name: the climates that a lesson may set a site in. */
export const CLIMATE_NAMES: readonly string[] = [...CLIMATE_SAMPLES, ...STANDARD_CYCLES].map(({ name }) => name);

/** The number fields of a site whose range and unit a number of a difference has. */
export const DIFFERENCE_FIELDS: Readonly<Record<string, FieldPath>> = {
  depthM: 'walls[].eave.depthM',
  heightAboveBoxM: 'walls[].eave.heightAboveBoxM',
  transmittance: 'walls[].obstructions[].transmittance',
  powerW: 'box.powerW',
  windMs: 'climate.designDay.windMs',
  altitudeM: 'place.altitudeM',
};

/** The schema of a difference. */
export function differenceSchema({ object, required }: SchemaParts, path: string) {
  return z.discriminatedUnion(
    'kind',
    [
      object(path, { kind: z.literal('wall'), to: z.string().trim().min(1).max(MAX_TEXT) }),
      object(path, {
        kind: z.literal('finish'),
        to: z.enum(FINISH_NAMES),
        state: z.enum(FINISH_STATES).default('weathered'),
      }),
      object(path, { kind: z.literal('hood'), to: z.enum(['none', ...FINISH_NAMES]) }),
      object(path, {
        kind: z.literal('eave'),
        depthM: required('walls[].eave.depthM'),
        heightAboveBoxM: required('walls[].eave.heightAboveBoxM').prefault(0.3),
      }),
      object(path, {
        kind: z.literal('shade'),
        transmittance: required('walls[].obstructions[].transmittance').prefault(0),
      }),
      object(path, { kind: z.literal('power'), powerW: required('box.powerW') }),
      object(path, { kind: z.literal('wind'), windMs: required('climate.designDay.windMs') }),
      object(path, { kind: z.literal('climate'), to: z.enum(CLIMATE_NAMES) }),
      object(path, { kind: z.literal('altitude'), altitudeM: required('place.altitudeM') }),
    ],
    {
      error: (issue) =>
        `${shown((issue.input as { kind?: unknown } | null)?.kind)} is no difference; allowed: ${DIFFERENCE_KINDS.join(', ')}`,
    },
  );
}

type DifferenceSchema = ReturnType<typeof differenceSchema>;

/** The one thing in which box B differs from box A, with everything filled in. */
export type Difference = z.output<DifferenceSchema>;

/** The same as it may be handed in. */
export type DifferenceInput = z.input<DifferenceSchema>;
