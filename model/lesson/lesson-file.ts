/** The shape of a lesson file. */
import { z } from 'zod';
import { type KnownKeys, MAX_TEXT, schemaParts } from '../schema-parts.ts';
import type { Site } from '../site.ts';
import type { QuantityReader } from '../units.ts';
import { CLIMATE_NAMES, differenceSchema } from './difference.ts';
import { idSchema, longText, questionSchema } from './question.ts';

const MAX_COMPARISONS = 30;
const MAX_QUESTIONS = 60;

/** Builds the schema of a lesson file; `read` turns typed text into SI numbers. */
export function buildLessonSchema(read: QuantityReader, knownKeys: KnownKeys = new Map()) {
  const parts = schemaParts(read, knownKeys);
  const { object } = parts;
  const comparison = object('comparisons[]', {
    id: idSchema,
    title: z.string().trim().min(1).max(MAX_TEXT).optional(),
    text: longText.optional(),
    wall: z.string().trim().min(1).max(MAX_TEXT),
    difference: differenceSchema(parts, 'comparisons[].difference'),
    climate: z.enum(CLIMATE_NAMES).optional(),
  });
  return object('', {
    title: z.string().trim().min(1, { error: 'the title is empty' }).max(MAX_TEXT),
    text: longText.default(''),
    // Parts of a site file; what they make of the usual site is checked by the site's own schema.
    site: z
      .record(z.string(), z.unknown())
      .default({})
      .meta({ description: 'A site file, or the parts in which it differs from the usual site of lessons' }),
    climates: z
      .array(z.enum(CLIMATE_NAMES))
      .max(CLIMATE_NAMES.length)
      .default([])
      .meta({ description: 'Climates that the lesson may be shown in besides that of the site' }),
    comparisons: z.array(comparison).max(MAX_COMPARISONS).default([]),
    questions: z.array(questionSchema(parts, 'questions[]')).max(MAX_QUESTIONS).default([]),
  });
}

type Parsed = z.output<ReturnType<typeof buildLessonSchema>>;

export type LessonComparison = Parsed['comparisons'][number];

/** A lesson with everything filled in. */
export type Lesson = Omit<Parsed, 'site'> & { readonly site: Site };

/** What a trainer may hand in. */
export type LessonInput = z.input<ReturnType<typeof buildLessonSchema>>;
