/** The lessons that come with the program, one file each in lessons/. A new file is added here. */
import { parsePlainLesson } from './entry.ts';
import type { Lesson } from './lesson-file.ts';
import coastAndDesert from './lessons/coast-and-desert.json';
import fourWalls from './lessons/four-walls.json';
import paintOrHood from './lessons/paint-or-hood.json';

/** Lesson files by name. */
export const LESSON_FILES: Readonly<Record<string, unknown>> = {
  'four-walls': fourWalls,
  'paint-or-hood': paintOrHood,
  'coast-and-desert': coastAndDesert,
};

export const LESSON_NAMES: readonly string[] = Object.keys(LESSON_FILES);

/**
 * A lesson that comes with the program.
 * @throws RangeError for a name that there is none of
 */
export function shippedLesson(name: string): Lesson {
  if (!Object.hasOwn(LESSON_FILES, name)) {
    throw new RangeError(`there is no lesson "${name.slice(0, 40)}"; allowed: ${LESSON_NAMES.join(', ')}`);
  }
  return parsePlainLesson(LESSON_FILES[name]);
}
