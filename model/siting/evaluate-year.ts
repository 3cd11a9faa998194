/** How a box fares on one wall through a year of weather. */
import { FACES, openFaces, type PerFace, perFace } from '../faces.ts';
import { KELVIN } from '../physical-constants.ts';
import { leafPattern } from '../shading/obstructions.ts';
import type { Site, Wall } from '../site.ts';
import { type SunPosition, sunPosition } from '../solar/sun-position.ts';
import { covers } from '../thermal/hood.ts';
import type { Network } from '../thermal/network.ts';
import {
  balanceDeepGround,
  type DayForcing,
  energyClosure,
  marchRound,
  meanSteadyState,
} from '../thermal/periodic-day.ts';
import { cell, type StepTable, stepTable } from '../thermal/step-table.ts';
import { arrheniusFactor, batteryAgeing } from './ageing.ts';
import { albedoBefore, dayForcing, wallNetwork } from './day-forcing.ts';
import { namedWall } from './named-wall.ts';
import type { WallShade } from './receivers.ts';
import { prepareShade } from './wall-shade.ts';
import { type WallSun, wallSun } from './wall-sun.ts';
import { type YearCalendar, type YearDay, type YearWeather, yearCalendar } from './year-weather.ts';

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

export interface YearOptions {
  /** Whether the box in full shade is marched, too, for `ageingFactor`; true where left out. */
  readonly shadeReference?: boolean;
}

/** Ageing is told against electronics at this temperature, degC. */
const AGEING_REFERENCE_C = 40;

/** Days marched before the first, so that nothing remembers the start. */
const RUN_IN_DAYS = 3;

/** The deep ground and the rooms behind the wall follow with this delay, days: below it a hot spell has not reached them. */
const SLOW_DAYS = 10;

const CLOSURE_EVERY_DAYS = 10;

/**
 * Marches one wall of a site through a year of weather.
 * @throws SiteError when the site has no wall of that name; RangeError for weather whose rows do not fill days
 */
export function evaluateYear(
  site: Site,
  wallName: string,
  weather: YearWeather,
  options: YearOptions = {},
): YearResult {
  const wall = namedWall(site, wallName);
  const calendar = yearCalendar(site, weather);
  const tally = marchYear(site, wall, calendar, false);
  const shaded = (options.shadeReference ?? true) ? marchYear(site, wall, calendar, true) : null;
  return resultOf(wall, calendar, tally, shaded?.ageing ?? null);
}

/** What adds up on the way through a year. */
interface Tally {
  over: number[][];
  degreeHours: number[];
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

/** A wall in one season of leaf, prepared. */
interface Prepared {
  readonly shade: WallShade;
  readonly network: Network;
}

function marchYear(site: Site, wall: Wall, calendar: YearCalendar, dark: boolean): Tally {
  const seasons = new Map<string, Prepared>();
  const preparedFor = (month: number): Prepared => {
    const season = { month, southern: site.place.latitudeDeg < 0 };
    const pattern = leafPattern(wall.obstructions, season);
    const known = seasons.get(pattern);
    if (known !== undefined) return known;
    const shade = prepareShade(site, wall, { season, suns: sunsOfYear(site) });
    const prepared = { shade, network: wallNetwork(site, wall, shade) };
    seasons.set(pattern, prepared);
    return prepared;
  };

  const tally = emptyTally(calendar);
  const first = calendar.dayAt(0);
  const start = dayOfYear(site, wall, first, preparedFor(first.month), dark);
  const { network: firstNetwork } = preparedFor(first.month);
  balanceDeepGround(firstNetwork, start.forcing, { surface: 'ground', deep: 'deepGround' });
  const n = firstNetwork.freeCount;
  const state = meanSteadyState(firstNetwork, start.forcing);
  const past = { earlier: state.slice(0, n), beforeEarlier: state.slice(0, n) };
  const slow = {
    deepK: state[firstNetwork.indexOf('deepGround')] as number,
    indoorsK: state[firstNetwork.indexOf('indoors')] as number,
  };
  const table = stepTable(calendar.steps, state.length);

  for (let day = -RUN_IN_DAYS; day < calendar.days; day++) {
    const yearDay = calendar.dayAt(Math.max(0, day));
    const prepared = preparedFor(yearDay.month);
    const { sun, forcing } = day <= 0 ? start : dayOfYear(site, wall, yearDay, prepared, dark);
    setSlowBoundaries(forcing, prepared.network, slow);
    const beforeK: [Float64Array, Float64Array] = [past.earlier.slice(), state.slice(0, n)];
    marchRound(prepared.network, forcing, { state, past, stride: 1, into: table });
    followSlowly(slow, forcing, prepared.network, table);
    if (day < 0) continue;
    addDay(tally, { site, yearDay, day, calendar, sun, table, network: prepared.network });
    if (day % CLOSURE_EVERY_DAYS === 0) {
      const marched = { temperaturesK: table, beforeK, rounds: 1, repeatsWithinK: 0 };
      const closure = energyClosure(prepared.network, forcing, marched);
      if (Math.abs(closure) > Math.abs(tally.closure)) tally.closure = closure;
    }
  }
  const steps = calendar.days * calendar.steps;
  tally.ageing /= steps;
  tally.batteryAgeing /= steps;
  return tally;
}

/** Sun and forcing of a day; in full shade no sun reaches the box, the wall or the ground before it. */
function dayOfYear(site: Site, wall: Wall, day: YearDay, { shade, network }: Prepared, dark: boolean) {
  const steps = dark
    ? day.steps.map((step) => ({ ...step, weather: { ...step.weather, ghi: 0, dni: 0, dhi: 0 }, sky: NO_LIGHT }))
    : day.steps;
  const reflectors = { albedo: albedoBefore(site, wall), wallAbsorptance: wall.solarAbsorptance };
  const sun = wallSun(shade, steps, reflectors);
  const forcing = dayForcing({ site, wall, day: { ...day, steps }, shade, sun, network });
  return { sun, forcing };
}

const NO_LIGHT = { isotropic: 0, circumsolarNormal: 0, horizon: 0 };

/** Suns of twelve days, every hour: enough to see how finely the shade on the faces is to be sampled. */
function sunsOfYear({ place }: Site): SunPosition[] {
  return Array.from({ length: 12 }, (_, month) => month).flatMap((month) =>
    Array.from({ length: 24 }, (_, hour) =>
      sunPosition(new Date(Date.UTC(2026, month, 21, hour)), place.latitudeDeg, place.longitudeDeg),
    ),
  );
}

/** Temperatures that only follow the weather over many days, K. */
interface Slow {
  deepK: number;
  indoorsK: number;
}

function setSlowBoundaries({ boundariesK, steps }: DayForcing, network: Network, { deepK, indoorsK }: Slow): void {
  const [deep, indoors] = ['deepGround', 'indoors'].map((name) => network.indexOf(name) - network.freeCount) as [
    number,
    number,
  ];
  for (let k = 0; k < steps; k++) {
    boundariesK.values[k * boundariesK.width + deep] = deepK;
    boundariesK.values[k * boundariesK.width + indoors] = indoorsK;
  }
}

/** The deep ground follows the surface above it, the rooms follow the outside air. */
function followSlowly(slow: Slow, { boundariesK, steps }: DayForcing, network: Network, table: StepTable): void {
  const ground = network.indexOf('ground');
  const air = network.indexOf('outsideAir') - network.freeCount;
  let groundK = 0;
  let airK = 0;
  for (let k = 0; k < steps; k++) {
    groundK += cell(table, k, ground) / steps;
    airK += cell(boundariesK, k, air) / steps;
  }
  slow.deepK += (groundK - slow.deepK) / SLOW_DAYS;
  slow.indoorsK += (airK - slow.indoorsK) / SLOW_DAYS;
}

function emptyTally({ days }: YearCalendar): Tally {
  const months = <Value>(value: () => Value): Value[] => Array.from({ length: 12 }, value);
  return {
    over: months(() => new Array<number>(24).fill(0)),
    degreeHours: months(() => 0),
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

function addDay(
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
      tally.degreeHours[month] = (tally.degreeHours[month] as number) + overK * stepH;
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

function resultOf(wall: Wall, calendar: YearCalendar, tally: Tally, shadedAgeing: number | null): YearResult {
  const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);
  return {
    wall: wall.name,
    hoursOverLimit: sum(tally.over.map(sum)),
    degreeHoursOverLimit: sum(tally.degreeHours),
    peakInsideAirC: tally.peakC,
    peakAtUtc: tally.peakAt,
    coldHours: tally.coldHours,
    lowestInsideAirC: tally.lowestC,
    faceInsolationKwhM2: Object.fromEntries(FACES.map((face) => [face, tally.insolation[face]])) as PerFace<number>,
    months: tally.over.map((hours, month) => ({
      hoursOverLimit: sum(hours),
      degreeHoursOverLimit: tally.degreeHours[month] as number,
      peakInsideAirC: tally.steps[month] === 0 ? null : (tally.peaks[month] as number),
      meanInsideAirC: tally.steps[month] === 0 ? null : (tally.sums[month] as number) / (tally.steps[month] as number),
    })),
    hoursOverByHour: tally.over,
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
      'Ageing after Arrhenius with 0.7 eV, one figure for all parts: common practice, no source. A battery halves its life for each 10 K: common practice, no source.',
      'Full shade: the same box in the same air, with no sun on it, on the wall and on the ground.',
    ],
  };
}
