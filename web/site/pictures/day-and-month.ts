/** A date without its year, as the people of a place write it. */
import type { UnitSystem } from '../../../model/index.ts';

/** "5 July" or "Jul 5" of a civil date "2026-07-05". */
export function dayAndMonth(isoDate: string, units: UnitSystem, month: 'short' | 'long' = 'long'): string {
  const locale = units === 'us' ? 'en-US' : 'en-GB';
  return new Intl.DateTimeFormat(locale, { day: 'numeric', month, timeZone: 'UTC' }).format(
    new Date(`${isoDate}T12:00:00Z`),
  );
}
