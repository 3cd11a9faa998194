/** What adds up on the way of a box through a year. */
import { openFaces, type PerFace, perFace } from '../faces.ts';
import { KELVIN } from '../physical-constants.ts';
import type { Site } from '../site.ts';
import { covers } from '../thermal/hood.ts';
import type { Network } from '../thermal/network.ts';
import { cell, type StepTable } from '../thermal/step-table.ts';
import { arrheniusFactor, batteryAgeing } from './ageing.ts';
import type { WallSun } from './wall-sun.ts';
import type { YearCalendar, YearDay } from './year-weather.ts';

/** Ageing is told against electronics at this temperature, degC. */
const AGEING_REFERENCE_C = 40;

/** What adds up on the way through a year. */
export interface Tally {
  over: number[][];
  degreeHours: number[][];
  peaks: number[];
  sums: number[];
  steps: number[];
  peakC: number;
  peakAt: Date;
  lowestC: number;
  coldHours: number;
  insolation: PerFace<number>;
  ageing: number;
  batteryAgeing: number;
  hourly: Float64Array;
  hourlyLimited: Float64Array;
  closure: number;
}

export function emptyTally({ days }: YearCalendar): Tally {
  const months = <Value>(value: () => Value): Value[] => Array.from({ length: 12 }, value);
  return {
    over: months(() => new Array<number>(24).fill(0)),
    degreeHours: months(() => new Array<number>(24).fill(0)),
    peaks: months(() => Number.NEGATIVE_INFINITY),
    sums: months(() => 0),
    steps: months(() => 0),
    peakC: Number.NEGATIVE_INFINITY,
    peakAt: new Date(0),
    lowestC: Number.POSITIVE_INFINITY,
    coldHours: 0,
    insolation: perFace(() => 0),
    ageing: 0,
    batteryAgeing: 0,
    hourly: new Float64Array(days * 24),
    hourlyLimited: new Float64Array(days * 24),
    closure: 0,
  };
}

/** Adds a marched day. */
export function addDay(
  tally: Tally,
  input: {
    site: Site;
    yearDay: YearDay;
    day: number;
    calendar: YearCalendar;
    sun: WallSun;
    table: StepTable;
    network: Network;
  },
): void {
  const { site, yearDay, day, calendar, sun, table, network } = input;
  const { limits, box } = site;
  const stepH = calendar.stepS / 3600;
  const perHour = calendar.steps / 24;
  const inside = network.indexOf('insideAir');
  const electronics = network.indexOf('electronics');
  const battery = box.battery === null ? inside : network.indexOf('battery');
  const air = network.indexOf('outsideAir');
  const limited = { insideAir: inside, outsideAir: air, componentCase: electronics }[limits.refersTo];
  const month = yearDay.month - 1;
  for (let k = 0; k < calendar.steps; k++) {
    const insideC = cell(table, k, inside) - KELVIN;
    const overK = cell(table, k, limited) - KELVIN - limits.maxC;
    const hour = Math.floor(yearDay.firstHour + k * stepH) % 24;
    if (overK > 0) {
      const row = tally.over[month] as number[];
      row[hour] = (row[hour] as number) + stepH;
      const kelvinHours = tally.degreeHours[month] as number[];
      kelvinHours[hour] = (kelvinHours[hour] as number) + overK * stepH;
    }
    if (cell(table, k, limited) - KELVIN < limits.minC) tally.coldHours += stepH;
    if (insideC > tally.peakC) {
      tally.peakC = insideC;
      tally.peakAt = yearDay.steps[k]?.utc ?? tally.peakAt;
    }
    tally.lowestC = Math.min(tally.lowestC, insideC);
    tally.peaks[month] = Math.max(tally.peaks[month] as number, insideC);
    tally.sums[month] = (tally.sums[month] as number) + insideC;
    tally.steps[month] = (tally.steps[month] as number) + 1;
    tally.ageing += arrheniusFactor(cell(table, k, electronics) - KELVIN, AGEING_REFERENCE_C);
    tally.batteryAgeing += batteryAgeing(cell(table, k, battery) - KELVIN);
    if (k % perHour === perHour >> 1) {
      const at = day * 24 + Math.floor(k / perHour);
      tally.hourly[at] = insideC;
      tally.hourlyLimited[at] = overK + limits.maxC;
    }
  }
  for (const face of openFaces(box.mount)) {
    if (covers(box.hood, face)) continue;
    tally.insolation[face] += sun.faces[face].total.reduce((sum, wm2) => sum + wm2, 0) * (stepH / 1000);
  }
}
