/** Stands alone so that the unit library behind it becomes a file of its own, fetched when somebody types a unit. */
export { parseLesson, parseSite } from '../../model/index.ts';
