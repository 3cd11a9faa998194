/** The questions that a lesson may ask: their schema, as a lesson file holds them. */
import { z } from 'zod';
import { MAX_TEXT, type SchemaParts } from '../schema-parts.ts';
import { shown } from '../site-error.ts';
import { CLIMATE_NAMES, differenceSchema } from './difference.ts';

export const QUESTION_KINDS = [
  'hottestWall',
  'coolestWall',
  'peakHour',
  'kelvinsSaved',
  'kelvinsAdded',
  'overLimit',
  'hoursOverLimit',
  'betterRemedy',
  'sunniestFace',
  'sunniestWall',
  'sunOnWall',
  'dailySwing',
  'hotterBox',
  'greaterSwing',
  'batteryYears',
  'ageingFactor',
] as const;

export type QuestionKind = (typeof QUESTION_KINDS)[number];

const LONGEST_TEXT = 2000;

/** An identifier within a lesson. */
export const idSchema = z.string().regex(/^[A-Za-z][A-Za-z0-9-]{0,39}$/, {
  error: 'is no identifier; allowed: a letter, then up to 39 letters, digits and hyphens',
});

/** Texts of some length, that of a lesson. */
export const longText = z
  .string()
  .trim()
  .max(LONGEST_TEXT, { error: `is too long; allowed: up to ${LONGEST_TEXT} characters` });

/** The schema of a question. */
export function questionSchema(parts: SchemaParts, path: string) {
  const { object } = parts;
  const common = {
    id: idSchema,
    text: longText.optional().meta({ description: 'Asked instead of the usual words' }),
    climate: z.enum(CLIMATE_NAMES).optional().meta({ description: "Climate to ask it in; the site's where left out" }),
  };
  const wall = z.string().trim().min(1).max(MAX_TEXT);
  const difference = differenceSchema(parts, `${path}.difference`);
  const hour = z
    .number({ error: (issue) => `${shown(issue.input)} is no hour; allowed: 0 to 23.99` })
    .min(0, { error: 'an hour is at least 0; allowed: 0 to 23.99' })
    .lt(24, { error: 'an hour is below 24; allowed: 0 to 23.99' });
  const kind = <Kind extends QuestionKind, Shape extends z.core.$ZodLooseShape>(name: Kind, shape: Shape) =>
    object(path, { kind: z.literal(name), ...common, ...shape });
  return z.discriminatedUnion(
    'kind',
    [
      kind('hottestWall', {}),
      kind('coolestWall', {}),
      kind('peakHour', { wall }),
      kind('kelvinsSaved', { wall, difference }),
      kind('kelvinsAdded', { wall, difference }),
      kind('overLimit', { wall, difference: difference.optional() }),
      kind('hoursOverLimit', { wall, difference: difference.optional() }),
      kind('betterRemedy', { wall, first: difference, second: difference }),
      kind('sunniestFace', { wall, hour }),
      kind('sunniestWall', { hour }),
      kind('sunOnWall', { wall }),
      kind('dailySwing', { wall }),
      kind('hotterBox', { wall, difference }),
      kind('greaterSwing', { wall, difference }),
      kind('batteryYears', { wall, difference: difference.optional() }),
      kind('ageingFactor', { wall, difference }),
    ],
    {
      error: (issue) =>
        `${shown((issue.input as { kind?: unknown } | null)?.kind)} is no question; allowed: ${QUESTION_KINDS.join(', ')}`,
    },
  );
}

/** A question with everything filled in. */
export type LessonQuestion = z.output<ReturnType<typeof questionSchema>>;
