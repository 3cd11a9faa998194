/**
 * How the heat given off inside follows the clock, as shares of the entered power. Common practice, no source: measure the
 * unit's own draw where it matters.
 */
export interface Duty {
  readonly label: string;
  readonly origin: string;
  /** Share of the entered power from each full hour of the local day to the next, 24 of them. */
  readonly hourly: readonly number[];
}

const hours = (shareAt: (hour: number) => number): number[] => Array.from({ length: 24 }, (_, hour) => shareAt(hour));

export const DUTIES = {
  constant: { label: 'the same all day', origin: 'common practice, no source', hourly: hours(() => 1) },
  dayAndNight: {
    label: 'full from 7 to 23 h, four fifths at night',
    origin: 'common practice, no source: traffic falls at night, most of the draw does not',
    hourly: hours((hour) => (hour >= 7 && hour < 23 ? 1 : 0.8)),
  },
  chargingAfterOutage: {
    label: 'battery charged from 12 to 18 h after an outage in the morning: half as much again',
    origin: 'common practice, no source: losses of the charger and of the battery while it takes charge',
    hourly: hours((hour) => (hour >= 12 && hour < 18 ? 1.5 : 1)),
  },
} as const satisfies Record<string, Duty>;

export type DutyName = keyof typeof DUTIES;

export const DUTY_NAMES = Object.keys(DUTIES) as [DutyName, ...DutyName[]];
