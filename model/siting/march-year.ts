/** One wall through a year of weather, day after day, each from where the one before left off. */
import { leafPattern } from '../shading/obstructions.ts';
import type { Site, Wall } from '../site.ts';
import { type SunPosition, sunPosition } from '../solar/sun-position.ts';
import type { Network } from '../thermal/network.ts';
import {
  balanceDeepGround,
  type DayForcing,
  energyClosure,
  marchRound,
  meanSteadyState,
} from '../thermal/periodic-day.ts';
import { cell, type StepTable, stepTable } from '../thermal/step-table.ts';
import { albedoBefore, dayForcing, wallNetwork } from './day-forcing.ts';
import type { WallShade } from './receivers.ts';
import { prepareShade } from './wall-shade.ts';
import { wallSun } from './wall-sun.ts';
import { addDay, emptyTally, type Tally } from './year-tally.ts';
import type { YearCalendar, YearDay } from './year-weather.ts';

/** Days marched before the first, so that nothing remembers the start. */
const RUN_IN_DAYS = 3;

/** The deep ground and the rooms behind the wall follow with this delay, days: below it a hot spell has not reached them. */
const SLOW_DAYS = 10;

const CLOSURE_EVERY_DAYS = 10;

/** A wall in one season of leaf, prepared. */
interface Prepared {
  readonly shade: WallShade;
  readonly network: Network;
}

/** Marches a wall through a year; `dark` is the same box in the same air without any sun. */
export function marchYear(site: Site, wall: Wall, calendar: YearCalendar, dark: boolean): Tally {
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
