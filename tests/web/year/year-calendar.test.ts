import { describe, expect, test } from 'vitest';
import { hottestByMonthAndHour, hottestDays, yearDays } from '../../../web/site/year/year-calendar.ts';
import { countingYear, inventedYear } from './years.ts';

describe('the days of a year', () => {
  test.each([
    ['sums before the label, west of Greenwich', '2026-01-01T07:30:00Z', -7],
    ['rows in UTC, told in a zone to the west: they begin on the last evening', '2026-01-01T00:10:34Z', -7],
    ['rows in UTC, told in a zone to the east: they end on the next New Year', '2026-01-01T00:10:34Z', 5.5],
    ['the eve of the year in UTC', '2025-12-31T15:00:00Z', 9],
  ])('each hour stands at its place: %s', (_name, first, zone) => {
    const days = yearDays(countingYear(first, zone));
    expect(days).toHaveLength(365);
    expect(days.map(({ date }) => date.slice(5))).toEqual([...new Set(days.map(({ date }) => date.slice(5)))].sort());
    expect([days[0]?.date.slice(5), days[364]?.date.slice(5)]).toEqual(['01-01', '12-31']);
    for (const [day, { limitedC }] of days.entries()) {
      expect(limitedC).toEqual(Array.from({ length: 24 }, (_, hour) => day * 24 + hour));
    }
    expect(days.filter(({ month }) => month === 2)).toHaveLength(28);
  });

  test('a few days begin with their own first one', () => {
    const hourlyLimitedC = Float64Array.from({ length: 48 }, (_, hour) => hour);
    const days = yearDays({ hourlyLimitedC, firstHourUtc: new Date('2026-07-05T07:00:00Z'), zoneOffsetH: -7 });
    expect(days.map(({ date, month }) => [date, month])).toEqual([
      ['2026-07-05', 7],
      ['2026-07-06', 7],
    ]);
    expect(days[1]?.limitedC[3]).toBe(27);
  });
});

test('the hottest days come hottest first, each once, at its hottest hour', () => {
  const year = inventedYear();
  // 06:00 and 08:00 of 2 January, 00:00 of 4 January; the first value stands at 01:00.
  for (const [hour, celsius] of [
    [24 + 6, 70],
    [24 + 8, 71],
    [72, 69],
  ] as const) {
    year.hourlyLimitedC[hour - 1] = celsius;
  }
  const hottest = hottestDays(yearDays(year), 2);
  expect(hottest.map(({ day, hour, limitedC }) => [day.date, hour, limitedC])).toEqual([
    ['2026-01-02', 8, 71],
    ['2026-01-04', 0, 69],
  ]);
});

test('by month and hour: the hottest of the days of the month, nothing for a month without days', () => {
  const table = hottestByMonthAndHour(yearDays(countingYear('2026-01-01T00:00:00Z', 0)));
  expect(table[0]?.[0]).toBe(30 * 24);
  expect(table[11]?.[23]).toBe(8759);
  const oneDay = {
    hourlyLimitedC: new Float64Array(24),
    firstHourUtc: new Date('2026-03-01T00:00:00Z'),
    zoneOffsetH: 0,
  };
  const short = hottestByMonthAndHour(yearDays(oneDay));
  expect(short[2]?.[5]).toBe(0);
  expect(short[3]?.[5]).toBeNull();
});
