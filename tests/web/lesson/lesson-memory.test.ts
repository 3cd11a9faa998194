import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { parsePlainLesson } from '../../../model/index.ts';
import {
  freshProgress,
  type Progress,
  rememberClimate,
  rememberedClimate,
  rememberedProgress,
  rememberedSource,
  rememberOpened,
  rememberProgress,
} from '../../../web/lesson/lesson-memory.ts';

const lesson = parsePlainLesson({
  title: 'Yard',
  climates: ['humid-coast'],
  questions: [
    { id: 'which', kind: 'hottestWall' },
    { id: 'when', kind: 'peakHour', wall: 'west' },
    { id: 'paint', kind: 'kelvinsSaved', wall: 'west', difference: { kind: 'finish', to: 'whitePaint' } },
  ],
});

const kept = new Map<string, string>();

beforeEach(() => {
  kept.clear();
  vi.stubGlobal('sessionStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => kept.set(key, value),
  });
});
afterEach(() => vi.unstubAllGlobals());

const PROGRESS: Progress = {
  part: { kind: 'question', index: 2 },
  tried: { which: { guess: 'west', units: 'metric' }, paint: { guess: 60, units: 'us' } },
  score: { which: 'right', paint: 'wrong' },
};

test('place, guesses and score come back for the lesson and the climate that they are of', () => {
  rememberProgress(lesson, 'humid-coast', PROGRESS);
  expect(rememberedProgress(lesson, 'humid-coast')).toEqual(PROGRESS);
  expect(rememberedProgress(lesson, '')).toEqual(freshProgress(lesson));
  expect(rememberedProgress({ ...lesson, title: 'Other' }, 'humid-coast')).toEqual(freshProgress(lesson));
  rememberClimate(lesson, 'humid-coast');
  expect(rememberedClimate(lesson)).toBe('humid-coast');
  expect(rememberedClimate({ ...lesson, climates: [] })).toBe('');
  for (const source of [{ kind: 'shipped', index: 1 }, { kind: 'file', text: '{}' }, { kind: 'free' }, null] as const) {
    rememberOpened(source);
    expect(rememberedSource()).toEqual(source);
  }
});

test('what does not fit the lesson stays out', () => {
  const made = {
    part: { kind: 'question', index: 3 },
    tried: {
      which: { guess: 'attic', units: 'metric' },
      when: { guess: 25, units: 'metric' },
      // 60 °F may be guessed, 60 K may not.
      paint: { guess: 60, units: 'metric' },
      other: { guess: null, units: 'us' },
    },
    score: { which: 'right', paint: 'splendid' },
  };
  rememberProgress(lesson, '', made as unknown as Progress);
  expect(rememberedProgress(lesson, '')).toEqual(freshProgress(lesson));
  for (const text of ['', '{', 'null', '[]', '{"tried":[],"score":7,"part":"end"}', '{"kind":"shipped","index":-1}']) {
    for (const key of kept.keys()) kept.set(key, text);
    kept.set('shadeside.lesson.opened', text);
    expect(rememberedProgress(lesson, '')).toEqual(freshProgress(lesson));
    expect(rememberedSource()).toBeNull();
  }
});

test('without storage nothing is kept and nothing fails', () => {
  vi.stubGlobal('sessionStorage', {
    getItem: () => {
      throw new Error('denied');
    },
    setItem: () => {
      throw new Error('denied');
    },
  });
  rememberProgress(lesson, '', PROGRESS);
  rememberOpened({ kind: 'free' });
  expect(rememberedProgress(lesson, '')).toEqual(freshProgress(lesson));
  expect(rememberedSource()).toBeNull();
});
