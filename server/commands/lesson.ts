import { LESSON_NAMES, type Lesson, lessonHandout, shippedLesson, usualUnits } from '../../model/index.ts';
import { BadInput } from '../bad-input.ts';
import { type Command, printText, readArgs, readUnits, seeHelp } from '../command.ts';
import { handoutData, handoutText, lessonListText } from '../report/lesson-text.ts';
import { readLesson, tellingFile } from '../site-file.ts';

/** `shadeside lesson`: what a trainer shows, asks and hands out. */
export const lesson: Command = {
  summary: 'shows a lesson: two boxes side by side, questions, a handout',
  help: `shadeside lesson [FILE.json|NAME] [--questions|--handout] [--solutions]
                 [--json] [--units metric|us]

Shows a lesson for trainees: boxes that differ in one thing, questions to guess
at, and a handout. Every figure is computed at the call.

  NAME         a lesson that comes with the program: ${LESSON_NAMES.join(', ')}.
               Without a name they are listed.
  FILE.json    a lesson of your own; "-" reads it from standard input
  --questions  the questions only
  --handout    comparisons, equation sheet and exercises
  --solutions  the computed solutions, too, at the end
  --json       the same as JSON, all of it
  --units      units of the text, metric or us; the usual ones of the place
               when left out`,
  run: async (args) => {
    const { values, positionals } = readArgs(
      'lesson',
      args,
      {
        questions: { type: 'boolean' },
        handout: { type: 'boolean' },
        solutions: { type: 'boolean' },
        json: { type: 'boolean' },
        units: { type: 'string' },
      },
      1,
    );
    if (values.questions && values.handout) {
      throw new BadInput([`lesson: --questions and --handout exclude each other; ${seeHelp('lesson')}`]);
    }
    const chosenUnits = readUnits('lesson', values.units);
    const [which] = positionals;
    if (which === undefined) {
      if (values.json) process.stdout.write(`${JSON.stringify(LESSON_NAMES)}\n`);
      else printText(lessonListText(LESSON_NAMES.map((name) => ({ name, lesson: shippedLesson(name) }))));
      return 0;
    }
    const { name, lesson: read } = await findLesson(which);
    const units = chosenUnits ?? usualUnits(read.site.place.timeZone);
    const handout = tellingFile(name, () => lessonHandout(read, { units }));
    const parts = {
      pages: !values.questions,
      equations: values.handout === true,
      exercises: values.questions === true || values.handout === true,
      solutions: values.solutions === true,
    };
    if (values.json) process.stdout.write(`${JSON.stringify(handoutData(handout, parts), null, 2)}\n`);
    else printText(handoutText(handout, parts));
    return 0;
  },
};

async function findLesson(which: string): Promise<{ name: string; lesson: Lesson }> {
  if (LESSON_NAMES.includes(which)) return { name: which, lesson: shippedLesson(which) };
  if (/^[\w-]+$/.test(which) && which !== '-') {
    throw new BadInput([`lesson: there is no lesson "${which}"; allowed: ${LESSON_NAMES.join(', ')}, or a file`]);
  }
  return readLesson(which);
}
