/** Computes what a lesson shows, beside the page. Holds no physics: it calls the model. */
import {
  answerQuestion,
  compareBoxes,
  DIFFERENCE_KINDS,
  DIFFERENCE_LABELS,
  differenceChoices,
  doneWords,
  LESSON_NAMES,
  type Lesson,
  type LessonComparison,
  lessonHandout,
  placedSite,
  SiteError,
  shadeMemory,
  shippedLesson,
} from '../../model/index.ts';
import type { LessonReply, LessonRequest, LessonTask, LessonTasks } from './lesson.ts';
import { readSite, unitReader } from './read-site.ts';

/** Boxes of a lesson hang on the same walls again and again. */
const shades = shadeMemory();

type Doing = { [Task in LessonTask]: (input: LessonTasks[Task]['input']) => unknown };

const DOING: Doing = {
  shipped: () => LESSON_NAMES.map(shippedLesson),
  open: async (text) => {
    const { parseLesson } = await unitReader();
    return parseLesson(JSON.parse(text));
  },
  site: readSite,
  choices: ({ site, wallName, units }) =>
    DIFFERENCE_KINDS.map((kind) => ({
      kind,
      label: DIFFERENCE_LABELS[kind],
      choices: differenceChoices(site, wallName, kind).map((difference) => ({
        difference,
        words: doneWords(difference, { site, wallName }, units),
      })),
    })).filter(({ choices }) => choices.length > 0),
  answer: ({ lesson, question }) => answerQuestion(lesson, question, { shades }),
  compareLesson: ({ lesson, comparison }) => compareIn(lesson, comparison),
  compareSite: ({ site, wallName, difference }) => compareBoxes({ site, wallName, difference, options: { shades } }),
  handout: ({ lesson, units }) => lessonHandout(lesson, { units, shades }),
};

function compareIn(lesson: Lesson, comparison: LessonComparison) {
  const { wall: wallName, difference } = comparison;
  return compareBoxes({ site: placedSite(lesson, comparison), wallName, difference, options: { shades } });
}

self.addEventListener('message', async ({ data }: MessageEvent<LessonRequest>) => {
  self.postMessage(await reply(data));
});

async function reply({ id, task, input }: LessonRequest): Promise<LessonReply> {
  try {
    return { id, kind: 'result', result: await DOING[task](input as never) };
  } catch (error) {
    if (error instanceof SiteError) return { id, kind: 'problems', problems: error.problems };
    return { id, kind: 'failed', message: error instanceof Error ? error.message : String(error) };
  }
}
