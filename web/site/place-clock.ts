/** Clock time at the place: its own time zone, never that of the device. */
import type { UnitSystem } from '../../model/index.ts';

export interface PlaceClock {
  /** "16:05" */
  time(instant: Date): string;
  /** The time with the zone's offset, to tell the two passes of a repeated hour apart: "01:00 (UTC+2)". */
  timeWithOffset(instant: Date): string;
  /** Minutes since midnight as the clock shows them. */
  minutes(instant: Date): number;
}

export function placeClock(timeZone: string): PlaceClock {
  const clock = new Intl.DateTimeFormat('en', { timeZone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
  const offset = new Intl.DateTimeFormat('en', { timeZone, timeZoneName: 'shortOffset' });
  return {
    time: (instant) => clock.format(instant),
    timeWithOffset(instant) {
      const name = offset.formatToParts(instant).find(({ type }) => type === 'timeZoneName')?.value ?? '';
      return `${clock.format(instant)} (${name.replace('GMT', 'UTC')})`;
    },
    minutes(instant) {
      const [hour, minute] = clock.format(instant).split(':').map(Number);
      return (hour ?? 0) * 60 + (minute ?? 0);
    },
  };
}

/** "5 July 2026" of a civil date "2026-07-05". */
export function dateText(isoDate: string, units: UnitSystem): string {
  const locale = units === 'us' ? 'en-US' : 'en-GB';
  return new Intl.DateTimeFormat(locale, { dateStyle: 'long', timeZone: 'UTC' }).format(
    new Date(`${isoDate}T12:00:00Z`),
  );
}
