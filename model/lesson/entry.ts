/** The doors by which a lesson comes in without the unit library; `entry-with-units.ts` holds the one with it. */
import { z } from 'zod';
import { parsePlainSite } from '../entry.ts';
import { readNumberText } from '../units.ts';
import { buildLessonSchema, type Lesson } from './lesson-file.ts';
import { lessonParser } from './parse-lesson.ts';

let parse: ((input: unknown) => Lesson) | undefined;

/**
 * Reads a lesson whose text fields hold plain numbers only; needs no unit library.
 * @throws SiteError listing every problem with its path
 */
export function parsePlainLesson(input: unknown): Lesson {
  parse ??= lessonParser(readNumberText, parsePlainSite);
  return parse(input);
}

/** JSON Schema (draft 2020-12) of what `parseLesson` takes; that of its `site` is `siteJsonSchema`. */
export function lessonJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(buildLessonSchema(readNumberText), { io: 'input' }) as Record<string, unknown>;
}
