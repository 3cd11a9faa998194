import { describe, expect, test } from 'vitest';
import {
  cellWords,
  clockWords,
  dayAndTime,
  dayPeakWords,
  degreeHours,
  overWords,
  spansOf,
  yearHours,
  zoneName,
} from '../../../web/site/year/year-words.ts';
import { siteWith } from '../../model/sites.ts';
import { inventedYear } from './years.ts';

const site = siteWith({ limits: { maxC: 65 } });

test.each([
  [-7, 'UTC−7'],
  [0, 'UTC'],
  [5.5, 'UTC+5:30'],
  [-3.5, 'UTC−3:30'],
])('a zone of %d h is %s', (hours, name) => expect(zoneName(hours)).toBe(name));

test('hours and degree-hours', () => {
  expect([0, 0.4, 1, 213.6].map(yearHours)).toEqual(['0 h', 'under 1 h', '1 h', '214 h']);
  expect([0, 0.3, 310].map((each) => degreeHours(each, 'metric'))).toEqual(['0 K·h', '0.3 K·h', '310 K·h']);
  expect(degreeHours(310, 'us')).toBe('558 °F·h');
});

test('an instant by the fixed clock of the year', () => {
  const instant = new Date('2026-07-06T02:15:00Z');
  expect(dayAndTime(instant, -7, 'metric')).toBe('5 July, 19:15');
  expect(dayAndTime(instant, 5.5, 'us')).toBe('July 6, 07:45');
});

describe('which clock the hours are of', () => {
  test.each([
    ['America/Phoenix', -7, /stays at UTC−7 all year.*So do the clocks of the place\.$/],
    ['Europe/Madrid', 0, /1 h more in January and 2 h more in July\.$/],
    ['America/Denver', -7, /the same in January and 1 h more in July\.$/],
    ['Australia/Sydney', 10, /1 h more in January and the same in July\.$/],
    ['Asia/Kolkata', 5, /Clocks of the place show 0\.5 h more\.$/],
    ['Asia/Kathmandu', 6, /Clocks of the place show 0\.25 h less\.$/],
  ])('%s against UTC%d', (zone, offset, words) => expect(clockWords(offset, zone)).toMatch(words));
});

test.each([
  [[false, true, true, false], [[1, 2]]],
  [[true, false, false, true], [[3, 0]]],
  [
    [true, false, true, false],
    [
      [0, 0],
      [2, 2],
    ],
  ],
  [[false, false], []],
  [[true, true], 'all'],
])('stretches of %j round the ring are %j', (flags, spans) => expect(spansOf(flags)).toEqual(spans));

describe('how long a year is over the limit', () => {
  test('never', () => {
    expect(overWords(inventedYear(), site, 'metric')).toBe('The air inside the box never passes the limit of 65.0 °C.');
  });

  test('over the turn of the year in the south, in the afternoon', () => {
    const year = inventedYear({ hoursOverLimit: 120, degreeHoursOverLimit: 300 });
    for (const month of [11, 0, 1]) for (const hour of [14, 15]) (year.hoursOverByHour[month] as number[])[hour] = 20;
    expect(overWords(year, site, 'us')).toBe(
      'The air inside the box is over the limit of 149 °F for 120 h, 540 °F·h in all: from December to February, between 14:00 and 16:00.',
    );
  });

  test('in one month, up to midnight; in every month at every hour', () => {
    const once = inventedYear({ hoursOverLimit: 0.5, degreeHoursOverLimit: 0.1 });
    (once.hoursOverByHour[6] as number[])[23] = 0.5;
    expect(overWords(once, site, 'metric')).toContain(
      'for under 1 h, 0.1 K·h in all: in July, between 23:00 and 00:00.',
    );
    const always = inventedYear({ hoursOverLimit: 8760, degreeHoursOverLimit: 1e5 });
    for (const month of always.hoursOverByHour) month.fill(30);
    expect(overWords(always, site, 'metric')).toContain(': in every month, at every hour.');
  });
});

test('a day and a cell in words, with what they are over or below', () => {
  const day = { date: '2026-07-05', month: 7, limitedC: new Array<number>(24).fill(60) };
  expect(dayPeakWords({ day, hour: 16, limitedC: 72.1 }, site, 'metric')).toBe(
    '5 July at 16:00: 72.1 °C, 7.1 K over the limit',
  );
  expect(cellWords({ day, hour: 23 }, site, 'us')).toBe('July 5, 23:00 to 00:00: 140 °F, 9 °F below the limit');
});
