/** The door by which a lesson comes in with units in its texts; a file of its own, so that only who needs it loads the unit library. */
import { parseSite } from '../entry-with-units.ts';
import { readQuantityText } from '../unit-text.ts';
import type { Lesson } from './lesson-file.ts';
import { lessonParser } from './parse-lesson.ts';

let parse: ((input: unknown) => Lesson) | undefined;

/**
 * Reads a lesson file.
 * @throws SiteError listing every problem with its path
 */
export function parseLesson(input: unknown): Lesson {
  parse ??= lessonParser(readQuantityText, parseSite);
  return parse(input);
}
