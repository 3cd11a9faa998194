/** `shadeside lesson` as its own process, and its text. */
import { expect, test } from 'vitest';
import { CAUTIONS, LESSON_NAMES, lessonHandout, shippedLesson } from '../../model/index.ts';
import { handoutData, handoutText } from '../../server/report/lesson-text.ts';
import { runBuilt } from './run-built.ts';

const own = {
  title: 'One wall',
  comparisons: [{ id: 'paint', wall: 'west', difference: { kind: 'finish', to: 'whitePaint' } }],
  questions: [{ id: 'hour', kind: 'peakHour', wall: 'west' }],
};

test('without a name the lessons are listed', async () => {
  const { code, stdout } = await runBuilt(['lesson']);
  expect(code).toBe(0);
  for (const name of LESSON_NAMES) expect(stdout).toContain(name);
});

test('an own lesson from standard input, its solutions only where asked for', async () => {
  const { code, stdout } = await runBuilt(
    ['lesson', '-', '--questions', '--solutions', '--units', 'metric'],
    JSON.stringify(own),
  );
  expect(code).toBe(0);
  expect(stdout).toContain('At what time is the air inside the box on "west" hottest?');
  expect(stdout.replace(/\s+/g, ' ')).toMatch(/Solutions, computed just now -+ 1\. \d+\.\d °C at \d\d:\d\d/);
  const without = await runBuilt(['lesson', '-', '--questions'], JSON.stringify(own));
  expect(without.stdout).not.toContain('Solutions');
});

test.each([
  [['five-walls'], /there is no lesson "five-walls"; allowed: four-walls, paint-or-hood, coast-and-desert, or a file/],
  [['four-walls', '--questions', '--handout'], /--questions and --handout exclude each other/],
  [['no-such.json'], /no-such\.json: there is no such file/],
])('lesson %j is one clear error', async (args, message) => {
  const { code, stdout, stderr } = await runBuilt(['lesson', ...args]);
  expect(code).toBe(2);
  expect(stdout).toBe('');
  expect(stderr).toMatch(message);
});

test('a lesson with bad fields: a line for each of them', async () => {
  const bad = {
    ...own,
    title: '',
    questions: [
      { id: 'hour', kind: 'peakHour', wall: 'attic' },
      { id: 'x', kind: 'colour' },
    ],
  };
  const { code, stdout, stderr } = await runBuilt(['lesson', '-'], JSON.stringify(bad));
  expect(code).toBe(2);
  expect(stdout).toBe('');
  expect(stderr).toMatch(/title: the title is empty/);
  expect(stderr).toMatch(/questions\.1\.kind: "colour" is no question; allowed: hottestWall/);
});

const handout = lessonHandout(shippedLesson('paint-or-hood'), { units: 'metric' });
const ALL = { pages: true, equations: true, exercises: true, solutions: true };

test('the text holds every part, in lines that fit a terminal', () => {
  const text = handoutText(handout, ALL);
  const flowing = text.replace(/\s+/g, ' ');
  for (const { prompt } of handout.exercises) expect(flowing).toContain(prompt);
  for (const { title, source } of handout.equations) {
    expect(flowing).toContain(title);
    expect(flowing).toContain(source);
  }
  for (const caution of CAUTIONS) expect(flowing).toContain(caution);
  // A formula has no place to break it.
  const long = text
    .split('\n')
    .filter((line) => [...line].length > 80 && line.trim().includes(' ') && !/[·=]/.test(line));
  expect(long).toEqual([]);
});

test('as data it leaves out the days behind the curves, and what was not asked for', () => {
  const data = handoutData(handout, { ...ALL, solutions: false });
  expect(Object.keys(data)).not.toContain('solutions');
  expect(JSON.stringify(data).length).toBeLessThan(200_000);
  expect(JSON.parse(JSON.stringify(data)).pages[0].rows).toHaveLength(8);
});
