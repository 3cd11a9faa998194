/** Invented years for the tests of what the page makes of them. */
import { perFace } from '../../../model/faces.ts';
import type { YearHours, YearResult } from '../../../model/index.ts';

const HOUR_MS = 3_600_000;

/** A year of 40 degC with a limit of nobody, changed where a test wants it so. */
export function inventedYear(changes: Partial<YearResult> = {}): YearResult {
  const months = Array.from(
    { length: 12 },
    (): YearHours => ({ hoursOverLimit: 0, degreeHoursOverLimit: 0, peakInsideAirC: 40, meanInsideAirC: 40 }),
  );
  return {
    wall: 'west',
    hoursOverLimit: 0,
    degreeHoursOverLimit: 0,
    peakInsideAirC: 40,
    peakAtUtc: new Date('2026-07-05T23:15:00Z'),
    coldHours: 0,
    lowestInsideAirC: 40,
    faceInsolationKwhM2: perFace(() => 1000),
    months,
    hoursOverByHour: months.map(() => new Array<number>(24).fill(0)),
    degreeHoursOverByHour: months.map(() => new Array<number>(24).fill(0)),
    ageingAgainst40C: 1,
    ageingFactor: 2,
    batteryLifeFactor: 0.5,
    hourlyInsideAirC: new Float64Array(8760).fill(40),
    hourlyLimitedC: new Float64Array(8760).fill(40),
    firstHourUtc: new Date('2026-01-01T07:30:00Z'),
    zoneOffsetH: -7,
    energyClosure: 0,
    assumptions: [],
    ...changes,
  };
}

/** A year whose values are the hours of its own fixed clock since New Year, from any start. */
export function countingYear(firstHourUtc: string, zoneOffsetH: number): YearResult {
  const first = new Date(firstHourUtc);
  const newYear = Date.UTC(2026, 0, 1);
  const hourlyLimitedC = Float64Array.from({ length: 8760 }, (_, i) => {
    const local = first.getTime() + (i + 0.5 + zoneOffsetH) * HOUR_MS;
    return (Math.floor((local - newYear) / HOUR_MS) + 8760) % 8760;
  });
  return inventedYear({ firstHourUtc: first, zoneOffsetH, hourlyLimitedC });
}
