/** What the design day does to the person who works at a wall: heat index by the hour, and when not to work there. */
import {
  FULL_SUN_K,
  HEAT_CLASSES,
  type HeatClass,
  heatClass,
  heatIndex,
  withinHeatIndexChart,
} from '../climate/heat-index.ts';
import { relativeHumidity } from '../climate/humidity.ts';
import { highestAt } from '../highest-at.ts';
import type { WallPoint } from '../shading/bodies.ts';
import { sunVector } from '../shading/sunlit-fraction.ts';
import { backOutM } from '../shading/wall-frame.ts';
import type { Site, Wall } from '../site.ts';
import { type DayStep, type SiteDay, siteDay } from './design-day.ts';
import { namedWall } from './named-wall.ts';
import { SUNSHINE_WM2 } from './sunshine.ts';
import { hoursOf, spansWhere, type TimeSpan } from './time-spans.ts';
import { seasonOf, wallScene } from './wall-views.ts';

/** Where head and shoulders of the worker are: before the box, and above ground, m (common practice, no source). */
const BEFORE_BOX_M = 0.5;
const SHOULDERS_M = 1.5;

/** Where the humidity of the day comes from. */
export type HumidityOrigin = 'entered' | 'assumed' | 'sample' | 'cycle';

export interface ClassHours {
  readonly heatClass: HeatClass;
  readonly spans: readonly TimeSpan[];
  readonly hours: number;
}

export interface WorkerHeat {
  readonly wall: string;
  readonly date: string;
  readonly timeZone: string;
  readonly stepsUtc: readonly Date[];
  /** In the shade, degC. */
  readonly heatIndexC: readonly number[];
  /** Whether direct sun reaches who stands before the box. */
  readonly inSun: readonly boolean[];
  /** What is judged in the shade: the heat index, outside its chart the air where that is warmer, degC. */
  readonly shadeC: readonly number[];
  /** What is judged: that, and in the sun the most that full sun adds to it, degC. */
  readonly judgedC: readonly number[];
  readonly peakShadeC: number;
  /** Whether that peak is the air itself, warmer than its heat index. */
  readonly peakShadeIsAir: boolean;
  readonly peakJudgedC: number;
  readonly peakAtUtc: Date;
  /** The worst class of the day; null where none is reached. */
  readonly worst: HeatClass | null;
  /** Every class that the day has hours of, mildest first. */
  readonly classes: readonly ClassHours[];
  readonly sunSpans: readonly TimeSpan[];
  /** Hours of danger and extreme danger: not to be spent at this wall. */
  readonly avoid: readonly TimeSpan[];
  /** Hours whose air lies outside the published chart of the index. */
  readonly hoursOutsideChart: number;
  readonly dewPointC: { readonly least: number; readonly most: number };
  readonly humidityOrigin: HumidityOrigin;
}

/**
 * The heat that somebody meets at a wall on the site's design day. Outside the published chart of the index, in very hot or
 * very dry air, the air itself is judged where it is warmer than what the regression gives.
 * @throws SiteError when the site has no wall of that name
 */
export function workerHeat(site: Site, wallName: string): WorkerHeat {
  const day = siteDay(site);
  return workerHeatOn(site, namedWall(site, wallName), day);
}

/** The same on a day that was worked out before. */
export function workerHeatOn(site: Site, wall: Wall, day: SiteDay): WorkerHeat {
  const air = day.steps.map(({ weather: { airC, dewPointC } }) => ({
    airC,
    relativeHumidityPercent: relativeHumidity(airC, dewPointC),
  }));
  const heatIndexC = air.map(heatIndex);
  const inSun = sunOnWorker(site, wall, day);
  const shadeC = air.map((one, k) => {
    const index = heatIndexC[k] as number;
    return withinHeatIndexChart(one) ? index : Math.max(index, one.airC);
  });
  const judgedC = shadeC.map((celsius, k) => celsius + (inSun[k] ? FULL_SUN_K : 0));
  const stepsUtc = day.steps.map(({ utc }) => utc);
  const spans = (holds: (k: number) => boolean): TimeSpan[] => spansWhere(stepsUtc, day.stepS * 1000, holds);
  const found = judgedC.map(heatClass);
  const classes = HEAT_CLASSES.map((name): ClassHours => {
    const held = spans((k) => found[k] === name);
    return { heatClass: name, spans: held, hours: hoursOf(held) };
  }).filter(({ hours }) => hours > 0);
  const peakStep = highestAt(judgedC);
  const shadePeakStep = highestAt(shadeC);
  const dewPoints = day.steps.map(({ weather }) => weather.dewPointC);
  return {
    wall: wall.name,
    date: day.civil.date,
    timeZone: day.civil.timeZone,
    stepsUtc,
    heatIndexC,
    inSun,
    shadeC,
    judgedC,
    peakShadeC: shadeC[shadePeakStep] as number,
    peakShadeIsAir: (shadeC[shadePeakStep] as number) > (heatIndexC[shadePeakStep] as number),
    peakJudgedC: judgedC[peakStep] as number,
    peakAtUtc: stepsUtc[peakStep] ?? day.civil.startUtc,
    worst: classes.at(-1)?.heatClass ?? null,
    classes,
    sunSpans: spans((k) => inSun[k] as boolean),
    avoid: spans((k) => found[k] === 'danger' || found[k] === 'extreme danger'),
    hoursOutsideChart: hoursOf(spans((k) => !withinHeatIndexChart(air[k] as (typeof air)[number]))),
    dewPointC: { least: Math.min(...dewPoints), most: Math.max(...dewPoints) },
    humidityOrigin: originOf(site),
  };
}

/** Whether sun reaches the place before the box, past the building, its eave and what stands around. */
function sunOnWorker(site: Site, wall: Wall, day: SiteDay): boolean[] {
  const scene = wallScene(site, wall, seasonOf(site, day.civil.date));
  const { box } = site;
  const place: WallPoint = [0, backOutM(box) + box.depthM + BEFORE_BOX_M, SHOULDERS_M];
  return day.steps.map(({ sun, weather }: DayStep) => {
    if (sun.elevationDeg <= 0 || weather.dni < SUNSHINE_WM2) return false;
    return weather.dni * scene.sunRays(sunVector(sun))(place) >= SUNSHINE_WM2;
  });
}

function originOf({ climate, assumed }: Site): HumidityOrigin {
  if (climate.designDay !== undefined) return assumed.includes('climate.designDay.dewPointC') ? 'assumed' : 'entered';
  return climate.cycle !== undefined ? 'cycle' : 'sample';
}
