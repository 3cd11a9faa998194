import { expect, test } from 'vitest';
import { formatQuantity } from '../../../model/index.ts';
import { dayStory } from '../../../web/lesson/played/story.ts';
import { SOUTH, stepAt, WEST } from './played-days.ts';

const BOXES = [
  { letter: 'A', played: SOUTH },
  { letter: 'B', played: WEST },
];
const plain = (text: string | undefined) => (text ?? '').replaceAll('\u00a0', ' ');

test('tells four quarters, each with both boxes and the figures of the day', () => {
  const quarters = dayStory(BOXES, 'metric');
  expect(quarters.map(({ title }) => title)).toEqual([
    '00:00 to 06:00',
    '06:00 to 12:00',
    '12:00 to 18:00',
    '18:00 to 24:00',
  ]);
  for (const { text } of quarters) expect(plain(text)).toMatch(/outside air.*In box A.*In box B.*In the end B is/);
  const afternoon = plain(quarters[2]?.text);
  expect(afternoon).toContain(`at most ${formatQuantity('temperature', WEST.result.peakInsideAirC, 'metric')}`);
  expect(afternoon).toMatch(/the front takes in the most sun, \d+\.\d W at 16:\d\d/);
});

test('hours over the limit add up to those of the day', () => {
  const told = dayStory([{ letter: 'B', played: WEST }], 'metric')
    .flatMap(({ text }) => [...plain(text).matchAll(/over the limit for ([\d.]+) (h|min)/g)])
    .reduce((sum, [, size, unit]) => sum + Number(size) / (unit === 'min' ? 60 : 1), 0);
  expect(told).toBeGreaterThan(1);
  expect(Math.abs(told - WEST.result.hoursOverLimit)).toBeLessThan(0.11);
});

test('says that the sun is down where it is, and speaks the units that are read', () => {
  const night = { ...WEST, suns: WEST.suns.map((sun) => ({ ...sun, elevationDeg: -10 })) };
  expect(plain(dayStory([{ letter: 'A', played: night }], 'metric')[1]?.text)).toContain('The sun is down.');
  const us = plain(dayStory(BOXES, 'us')[2]?.text);
  expect(us).toContain('°F');
  expect(us).not.toMatch(/\d °C|\d K\b/);
});

test('who is hotter at the end of a quarter is read off the curves', () => {
  const apart =
    (WEST.result.insideAirC[stepAt(WEST, 18) - 1] ?? 0) - (SOUTH.result.insideAirC[stepAt(WEST, 18) - 1] ?? 0);
  const size = formatQuantity('temperatureDifference', Math.abs(apart), 'metric');
  expect(plain(dayStory(BOXES, 'metric')[2]?.text)).toContain(`B is ${size} ${apart < 0 ? 'cooler' : 'hotter'} than A`);
});

test('a difference that reads as none has no direction', () => {
  const nudged = (k: number) => ({
    ...SOUTH,
    result: { ...SOUTH.result, insideAirC: SOUTH.result.insideAirC.map((celsius) => celsius + k) },
  });
  for (const [k, units] of [
    [0.2, 'us'],
    [-0.2, 'us'],
    [0.04, 'metric'],
    [0, 'metric'],
  ] as const) {
    const told = dayStory([BOXES[0] as (typeof BOXES)[0], { letter: 'B', played: nudged(k) }], units);
    for (const { text } of told) expect(plain(text)).toContain('In the end A and B are as warm as each other.');
  }
});
