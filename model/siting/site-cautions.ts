/** The cautions of the work at one wall on the design day: what always holds, and what this day and this wall add to it. */

import { BATTERY_CAUTION, WORK_CAUTIONS, type WorkCaution } from '../cautions.ts';
import { clockReader } from '../civil-day.ts';
import { FULL_SUN_K, HEAT_CLASS_FROM_C, HEAT_INDEX_CHART, type HeatClass } from '../climate/heat-index.ts';
import type { Site } from '../site.ts';
import { formatQuantity, type UnitSystem } from '../units.ts';
import { type SiteDay, siteDay } from './design-day.ts';
import { namedWall } from './named-wall.ts';
import type { WallDay } from './results.ts';
import { spansText } from './time-spans.ts';
import { touchText } from './wording.ts';
import { type HumidityOrigin, type WorkerHeat, workerHeatOn } from './worker-heat.ts';

/** A caution with what it means here; `here` is empty where the site adds nothing. */
export interface SiteCaution extends WorkCaution {
  readonly here: string;
  /** Where the figures of `here` come from; empty without figures. */
  readonly origin: string;
}

export interface SiteCautions {
  readonly wall: string;
  readonly cautions: readonly SiteCaution[];
  readonly heat: WorkerHeat;
}

/** What of a day is asked for. */
type DayThere = Pick<WallDay, 'wall' | 'timeZone' | 'touch'>;

/** A box whose top is above this is not worked on from the ground, m (common practice, no source). */
const REACH_M = 2;

/**
 * The cautions of a wall.
 * @param day the day of that wall on the same site
 * @param onDay the site's design day, where it was worked out before
 * @throws SiteError when the site has no wall of that name
 */
export function cautionsAt(site: Site, day: DayThere, units: UnitSystem, onDay: SiteDay = siteDay(site)): SiteCautions {
  const heat = workerHeatOn(site, namedWall(site, day.wall), onDay);
  const time = clockReader(day.timeZone);
  const here: Partial<Record<WorkCaution['part'], Pick<SiteCaution, 'here' | 'origin'>>> = {
    ladder: ladderHere(site, units),
    ...(site.box.battery !== null && { electricity: { here: BATTERY_CAUTION, origin: 'common practice, no source' } }),
    hotSurfaces: {
      here: hotHere(day, units, time),
      origin: 'short contact of bare skin; thin paint on metal counts as metal',
    },
    heat: { here: heatHere(heat, units, time), origin: heatOrigin(heat, units) },
  };
  return {
    wall: day.wall,
    heat,
    cautions: WORK_CAUTIONS.map((caution) => ({ ...caution, here: '', origin: '', ...here[caution.part] })),
  };
}

function ladderHere({ box }: Site, units: UnitSystem): Pick<SiteCaution, 'here' | 'origin'> {
  const topM = box.mountHeightM + box.heightM / 2;
  if (topM <= REACH_M) return { here: '', origin: '' };
  const here = `The top of the box is ${formatQuantity('length', topM, units)} above ground: plan for a ladder or a platform.`;
  return { here, origin: 'common practice, no source' };
}

function hotHere({ touch, wall }: DayThere, units: UnitSystem, time: (utc: Date) => string): string {
  const text = touchText(touch, units);
  if (text === '') return '';
  const within = ([1, 10, 60] as const)
    .filter((seconds) => touch.burns[seconds].length > 0)
    .map((seconds) => `${seconds === 60 ? 'a minute' : `${seconds} s`}: ${spansText(touch.burns[seconds], time)}`);
  return `${text} At wall "${wall}" on the design day a touch may burn within ${within.join('; within ')}.`;
}

function heatHere(heat: WorkerHeat, units: UnitSystem, time: (utc: Date) => string): string {
  const degrees = (c: number) => formatQuantity('temperature', c, units, 0);
  const shade = heat.peakShadeIsAir
    ? `air of up to ${degrees(heat.peakShadeC)} in the shade, which is warmer than its heat index and judged in its place`
    : `heat index up to ${degrees(heat.peakShadeC)} in the shade`;
  const added = formatQuantity('temperatureDifference', FULL_SUN_K, units, 0);
  const parts = [
    `At wall "${heat.wall}" on the design day: ${shade}`,
    heat.sunSpans.length === 0
      ? `; no sun where you stand before the box.`
      : `; sun where you stand before the box ${spansText(heat.sunSpans, time)}, which adds up to ${added}: ${degrees(heat.peakJudgedC)} at the most.`,
  ];
  const classes = heat.classes.map(({ heatClass, spans }) => `${heatClass} ${spansText(spans, time)}`);
  if (classes.length === 0) parts.push(' No hour reaches the lowest class of the heat index; heavy work warms, too.');
  else parts.push(` With that: ${classes.join('; ')}.`);
  if (heat.avoid.length > 0) parts.push(` Do not work at this wall ${spansText(heat.avoid, time)}.`);
  return parts.join('');
}

const HUMIDITY: Readonly<Record<HumidityOrigin, string>> = {
  entered: 'as entered',
  assumed: 'assumed, nobody entered one',
  sample: 'of the climate sample',
  cycle: 'of the tabulated cycle',
};

function heatOrigin({ dewPointC, humidityOrigin, hoursOutsideChart }: WorkerHeat, units: UnitSystem): string {
  const degrees = (c: number) => formatQuantity('temperature', c, units, 0);
  const { least, most } = dewPointC;
  const dew = degrees(least) === degrees(most) ? degrees(most) : `${degrees(least)} to ${degrees(most)}`;
  const from = (name: HeatClass) => degrees(HEAT_CLASS_FROM_C[name]);
  const outside =
    hoursOutsideChart === 0
      ? ''
      : `; in ${Number(hoursOutsideChart.toFixed(1))} h the air is drier or hotter than the published chart (${degrees(HEAT_INDEX_CHART.leastAirC)} to ${degrees(HEAT_INDEX_CHART.mostAirC)}, 40 % humidity and more): there the warmer of index and air counts`;
  return (
    `heat index of Rothfusz (NWS SR 90-23, 1990), classes of the US National Weather Service: caution from ${from('caution')}, ` +
    `extreme caution ${from('extreme caution')}, danger ${from('danger')}, extreme danger ${from('extreme danger')}; ` +
    `dew point ${dew}, ${HUMIDITY[humidityOrigin]}${outside}`
  );
}

/** What the day adds, in sentences, for a list of plain cautions. */
export function cautionsOfTheDay({ cautions }: SiteCautions): string[] {
  return cautions.filter(({ here }) => here !== '').map(({ here, origin }) => `${here} (${origin})`);
}
