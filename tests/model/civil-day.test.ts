import { describe, expect, test } from 'vitest';
import { civilDay, clockTime } from '../../model/civil-day.ts';

describe('a civil day begins at local midnight and has the length that its clocks give it', () => {
  test.each([
    ['2026-07-05', 'America/Phoenix', '2026-07-05T07:00:00.000Z', 24],
    ['2026-03-29', 'Europe/Berlin', '2026-03-28T23:00:00.000Z', 23],
    ['2026-10-25', 'Europe/Berlin', '2026-10-24T22:00:00.000Z', 25],
    ['2026-03-08', 'America/New_York', '2026-03-08T05:00:00.000Z', 23],
    ['2026-11-01', 'America/New_York', '2026-11-01T04:00:00.000Z', 25],
    // Half an hour of daylight saving.
    ['2026-10-04', 'Australia/Lord_Howe', '2026-10-03T13:30:00.000Z', 23.5],
    // The clock jumps over midnight: the day begins at 01:00.
    ['2018-11-04', 'America/Sao_Paulo', '2018-11-04T03:00:00.000Z', 23],
    ['2026-01-01', 'Pacific/Kiritimati', '2025-12-31T10:00:00.000Z', 24],
    ['2026-01-01', 'Asia/Kathmandu', '2025-12-31T18:15:00.000Z', 24],
    ['2024-02-29', 'UTC', '2024-02-29T00:00:00.000Z', 24],
  ])('%s in %s', (date, timeZone, startUtc, hours) => {
    const day = civilDay(date, timeZone);
    expect(day.startUtc.toISOString()).toBe(startUtc);
    expect(day.hours).toBe(hours);
  });

  test('a date that a zone skipped does not exist', () => {
    // Samoa went from one side of the date line to the other.
    expect(() => civilDay('2011-12-30', 'Pacific/Apia')).toThrow(RangeError);
  });
});

test("clock time is the place's, not the machine's", () => {
  const utc = new Date('2026-07-05T22:05:00Z');
  expect(clockTime(utc, 'America/Phoenix')).toBe('15:05');
  expect(clockTime(utc, 'Asia/Tokyo')).toBe('07:05');
  expect(civilDay('2026-07-05', 'Europe/Berlin').clockTime(utc)).toBe('00:05');
});
