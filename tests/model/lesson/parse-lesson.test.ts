/** An own lesson: read with what is left out filled in, or refused with every bad field. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  DIFFERENCE_KINDS,
  LESSON_FILES,
  LESSON_NAMES,
  lessonJsonSchema,
  parseLesson,
  parsePlainLesson,
  QUESTION_KINDS,
  SiteError,
} from '../../../model/index.ts';

const problemsOf = (input: unknown): string[] => {
  try {
    parseLesson(input);
    return [];
  } catch (error) {
    if (error instanceof SiteError) return error.problems.map(({ message }) => message);
    throw error;
  }
};

describe('what is read', () => {
  test('a title alone: the usual site, nothing to show and nothing to ask', () => {
    const lesson = parsePlainLesson({ title: 'Empty' });
    expect(lesson.site.walls.map(({ name }) => name)).toEqual(['north', 'east', 'south', 'west']);
    expect(lesson).toMatchObject({ text: '', climates: [], comparisons: [], questions: [] });
  });

  test('parts of a site, with units, on the usual one', () => {
    const { site, comparisons } = parseLesson({
      title: 'Own place',
      site: {
        place: { latitudeDeg: 52, longitudeDeg: 5 },
        climate: { sample: 'temperate-maritime' },
        box: { powerW: 30 },
      },
      comparisons: [{ id: 'eave', wall: 'west', difference: { kind: 'eave', depthM: '2 ft' } }],
    });
    expect(site.place.timeZone).toBe('Europe/Amsterdam');
    expect(site.box).toMatchObject({ powerW: 30, widthM: 0.28 });
    expect(comparisons[0]?.difference).toMatchObject({ kind: 'eave', depthM: 0.6096, heightAboveBoxM: 0.3 });
  });

  test.each(LESSON_NAMES)('the file of %s, with either door alike', (name) => {
    expect(parseLesson(LESSON_FILES[name])).toEqual(parsePlainLesson(LESSON_FILES[name]));
  });
});

test('the lesson file of the README', () => {
  const readme = readFileSync(new URL('../../../README.md', import.meta.url), 'utf8');
  const from = readme.indexOf('{ "title": "Our yard"');
  const file = JSON.parse(readme.slice(from, readme.indexOf('\n\n', from)));
  expect(parsePlainLesson(file).questions.map(({ id }) => id)).toEqual(['when', 'paint']);
  for (const kind of [...DIFFERENCE_KINDS, ...QUESTION_KINDS]) expect(readme).toContain(`\`${kind}\``);
});

describe('what is refused', () => {
  test('all at once, each with its path and what is allowed', () => {
    const problems = problemsOf({
      title: '',
      colour: 'red',
      site: { box: { powerW: -3 }, walls: [] },
      climates: ['moon'],
      comparisons: [{ id: '1', wall: 'west', difference: { kind: 'wind', windMs: 900 } }],
      questions: [
        { id: 'a', kind: 'peakHour' },
        { id: 'b', kind: 'guess' },
        { id: 'c', kind: 'sunniestWall', hour: 24 },
      ],
    });
    for (const said of [
      /^title: the title is empty/,
      /^colour: unknown field; allowed: title, text, site/,
      /^site\.box\.powerW: -3 is below 0; allowed: 0 to 2000 W/,
      /^site\.walls: at least one wall is needed/,
      /^climates\.0: "moon" is not known; allowed: dry-basin/,
      /^comparisons\.0\.id: is no identifier; allowed: a letter/,
      /^comparisons\.0\.difference\.windMs: 900 is above 40; allowed: 0 to 40 m\/s/,
      /^questions\.0\.wall: is missing/,
      /^questions\.1\.kind: "guess" is no question; allowed: hottestWall, coolestWall/,
      /^questions\.2\.hour: an hour is below 24; allowed: 0 to 23\.99/,
    ]) {
      expect(problems).toContainEqual(expect.stringMatching(said));
    }
    expect(problems).toHaveLength(10);
  });

  test('more than fits, with how much does', () => {
    const comparisons = Array.from({ length: 31 }, (_, k) => {
      return { id: `c${k}`, wall: 'west', difference: { kind: 'power', powerW: 1 } };
    });
    expect(problemsOf({ title: 'Long', comparisons })).toEqual([
      expect.stringMatching(/^comparisons: has 31 entries, .*; allowed: up to 30 entries$/),
    ]);
  });

  test('what does not go together', () => {
    const problems = problemsOf({
      title: 'Names',
      comparisons: [
        { id: 'a', wall: 'attic', difference: { kind: 'power', powerW: 1 } },
        { id: 'a', wall: 'west', difference: { kind: 'wall', to: 'west' } },
        { id: 'b', wall: 'west', difference: { kind: 'power', powerW: 14 } },
      ],
      questions: [
        {
          id: 'q',
          kind: 'betterRemedy',
          wall: 'west',
          first: { kind: 'shade' },
          second: { kind: 'wall', to: 'cellar' },
        },
      ],
    });
    expect(problems).toEqual([
      'comparisons.1.id: "a" stands twice; allowed: a name of its own',
      'comparisons.0.wall: there is no wall "attic"; allowed: north, east, south, west',
      'comparisons.1.difference.to: box A hangs on that wall; allowed: north, east, south',
      'comparisons.2.difference: box B is as box A already; allowed: something that differs from the site',
      'questions.0.second.to: there is no wall "cellar"; allowed: north, east, south',
    ]);
  });

  test.each([[null], [[]], ['four walls'], [7], [{ title: 'x', site: 3 }], [{ title: 'x', site: [] }]])(
    '%j',
    (input) => {
      expect(problemsOf(input).length).toBeGreaterThan(0);
    },
  );

  test('the door without units names what it cannot read', () => {
    const input = {
      title: 'x',
      comparisons: [{ id: 'a', wall: 'west', difference: { kind: 'eave', depthM: '2 ft' } }],
    };
    expect(() => parsePlainLesson(input)).toThrow('comparisons.0.difference.depthM: "2 ft" is not understood');
  });
});

test('the JSON Schema names every kind', () => {
  const text = JSON.stringify(lessonJsonSchema());
  for (const word of ['hottestWall', 'ageingFactor', 'altitude', 'windMs', 'comparisons']) expect(text).toContain(word);
});
