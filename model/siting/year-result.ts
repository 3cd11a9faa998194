/** What a year on a wall comes to. */
import { FACES, type PerFace } from '../faces.ts';
import type { Wall } from '../site.ts';
import type { Tally } from './year-tally.ts';
import type { YearCalendar } from './year-weather.ts';

/** Hours of a month, or of the year. */
export interface YearHours {
  readonly hoursOverLimit: number;
  readonly degreeHoursOverLimit: number;
  /** Null for a month without weather. */
  readonly peakInsideAirC: number | null;
  readonly meanInsideAirC: number | null;
}

export interface YearResult {
  readonly wall: string;
  /** Hours in which what the limit refers to passes the upper limit. */
  readonly hoursOverLimit: number;
  /** Kelvins over the limit times hours. */
  readonly degreeHoursOverLimit: number;
  readonly peakInsideAirC: number;
  readonly peakAtUtc: Date;
  /** Hours below the lower limit. */
  readonly coldHours: number;
  readonly lowestInsideAirC: number;
  /** Sun on each face over the year, kWh/m2, shade taken into account; none on a back at the wall or under a hood. */
  readonly faceInsolationKwhM2: PerFace<number>;
  /** January to December by the local calendar. */
  readonly months: YearHours[];
  /** Hours over the limit by month and hour of the local day, twelve rows of 24. */
  readonly hoursOverByHour: number[][];
  /** Degree-hours over the limit in the same rows. */
  readonly degreeHoursOverByHour: number[][];
  /** Mean ageing of the electronics against 40 degC all year: Arrhenius, 0.7 eV. */
  readonly ageingAgainst40C: number;
  /** The same against this box in the same air without any sun: full shade. Null where that was not marched. */
  readonly ageingFactor: number | null;
  /** Life of the battery, or of one in the air inside, against one at 25 degC: halves for each 10 K. */
  readonly batteryLifeFactor: number;
  /** Air inside at the middle of each hour, degC. */
  readonly hourlyInsideAirC: Float64Array;
  /** What the limit refers to at the same instants, degC. */
  readonly hourlyLimitedC: Float64Array;
  /** Where the first of those hours begins. */
  readonly firstHourUtc: Date;
  /** The fixed zone in which months and hours of the day are told, hours east of Greenwich. */
  readonly zoneOffsetH: number;
  /** Largest relative residual of the energy balance among the days that were looked at, one in ten. */
  readonly energyClosure: number;
  readonly assumptions: string[];
}

/** What a marched year comes to. */
export function yearResult(wall: Wall, calendar: YearCalendar, tally: Tally, shadedAgeing: number | null): YearResult {
  const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);
  return {
    wall: wall.name,
    hoursOverLimit: sum(tally.over.map(sum)),
    degreeHoursOverLimit: sum(tally.degreeHours.map(sum)),
    peakInsideAirC: tally.peakC,
    peakAtUtc: tally.peakAt,
    coldHours: tally.coldHours,
    lowestInsideAirC: tally.lowestC,
    faceInsolationKwhM2: Object.fromEntries(FACES.map((face) => [face, tally.insolation[face]])) as PerFace<number>,
    months: tally.over.map((hours, month) => ({
      hoursOverLimit: sum(hours),
      degreeHoursOverLimit: sum(tally.degreeHours[month] as number[]),
      peakInsideAirC: tally.steps[month] === 0 ? null : (tally.peaks[month] as number),
      meanInsideAirC: tally.steps[month] === 0 ? null : (tally.sums[month] as number) / (tally.steps[month] as number),
    })),
    hoursOverByHour: tally.over,
    degreeHoursOverByHour: tally.degreeHours,
    ageingAgainst40C: tally.ageing,
    ageingFactor: shadedAgeing === null ? null : tally.ageing / shadedAgeing,
    batteryLifeFactor: 1 / tally.batteryAgeing,
    hourlyInsideAirC: tally.hourly,
    hourlyLimitedC: tally.hourlyLimited,
    firstHourUtc: new Date(calendar.startMs),
    zoneOffsetH: calendar.zoneOffsetH,
    energyClosure: tally.closure,
    assumptions: [
      `Weather runs straight between its rows; steps of ${Math.round(calendar.stepS / 60)} minutes.`,
      'Indoors and the deep ground follow outside air and ground surface over ten days.',
      'Ageing after Arrhenius with 0.7 eV, one figure for all parts: common practice, no source. A battery halves its life for each 10 K (18 °F) above 25 °C (77 °F) and gains none below: common practice, no source.',
      'Full shade: the same box in the same air, with no sun on it, on the wall and on the ground.',
    ],
  };
}
