/** What makes the temperatures of a day: the air inside, the air outside, the margin and the hours over the limit. */
import { airTemperature } from '../../climate/daily-range.ts';
import { resolvedClearDay } from '../../climate/design-climate.ts';
import { KELVIN } from '../../physical-constants.ts';
import type { HeatWay, PlayedDay } from '../../siting/played-day.ts';
import { type Explanation, explanation, type Given } from './explanation.ts';
import { difference, product, quotient, sum } from './formula.ts';
import { nodeName, nodeSymbol } from './node-names.ts';

const conductanceWK = (way: HeatWay, step: number): number =>
  way.coefficientWm2K === null ? way.size : (way.coefficientWm2K[step] as number) * way.size;

/** The air inside: the mean of what it touches, each by what it carries. */
export function explainInsideAir(played: PlayedDay, step: number): Explanation {
  const given: Record<string, Given> = {};
  const ways = played.airWays.map((way) => {
    const at = nodeSymbol(way.outer);
    const [k, t] = [`K_${at}`, `T_${at}`];
    given[k] = [
      `heat carried for each kelvin between the air inside and ${nodeName(way.outer)}`,
      conductanceWK(way, step),
      'W/K',
    ];
    given[t] = [`temperature of ${nodeName(way.outer)}`, played.nodesC[way.outer]?.[step] as number, '°C'];
    return { k, t };
  });
  given['S_air'] = ['heat that the air inside itself stores', played.airStorageW[step] as number, 'W'];
  return explanation({
    what: 'insideAir',
    title: 'Temperature of the air inside',
    symbol: 'T_in',
    formula: quotient(
      difference(sum(...ways.map(({ k, t }) => product(k, t))), 'S_air'),
      sum(...ways.map(({ k }) => k)),
    ),
    given,
    value: played.result.insideAirC[step] as number,
    unit: '°C',
    quantity: 'temperature',
    source:
      'Heat balance of the air inside (first law); K is coefficient times area: Churchill and Chu 1975 on upright walls, McAdams 1954 on level ones, Holman 2010 on electronics and battery',
    note: 'Air inside is warmed by convection alone; the walls round it trade radiation with each other.',
    atUtc: played.result.stepsUtc[step] as Date,
    // The march leaves some hundredths of a kelvin to the iteration.
    within: 0.1,
  });
}

/** Room to the upper limit. */
export function explainMargin({ site, result }: PlayedDay): Explanation {
  const { refersTo, maxC } = site.limits;
  const of = { insideAir: 'air inside', outsideAir: 'outside air', componentCase: 'electronics' }[refersTo];
  return explanation({
    what: 'margin',
    title: 'Margin to the upper limit',
    symbol: 'M',
    formula: difference('T_max', 'T_peak'),
    given: {
      T_max: [`upper limit, of the ${of}`, maxC, '°C'],
      T_peak: [
        `highest temperature of the ${of} on this day`,
        maxC - result.marginK,
        '°C',
        refersTo === 'insideAir' ? 'insideAir' : undefined,
      ],
    },
    value: result.marginK,
    unit: 'K',
    quantity: 'temperatureDifference',
    source: 'Definition: limit minus highest temperature of the kind that the limit refers to',
  });
}

/** Hours over the limit: steps counted. */
export function explainHoursOver({ result, stepS }: PlayedDay): Explanation {
  const hours = stepS / 3600;
  return explanation({
    what: 'hoursOverLimit',
    title: 'Hours over the limit',
    symbol: 'H',
    formula: product('N', 'Δt'),
    given: {
      N: ['steps of the day above the limit', Math.round(result.hoursOverLimit / hours), ''],
      Δt: ['length of a step', hours, 'h'],
    },
    value: result.hoursOverLimit,
    unit: 'h',
    source: 'Definition: counted over the steps of the day',
  });
}

/** Outside air of a clear design day; null on a tabulated one. */
export function explainOutsideAir(played: PlayedDay, step: number): Explanation | null {
  const day = resolvedClearDay(played.site);
  if (day === null) return null;
  return explanation({
    what: 'outsideAir',
    title: 'Temperature of the outside air',
    symbol: 'T_out',
    formula: difference('T_max', product('f', 'ΔT_day')),
    given: {
      T_max: ['highest air temperature of the day', day.maxC, '°C'],
      f: [
        "share of the range below it, by the sun's hour",
        -airTemperature(played.solarHours[step] as number, 0, 1),
        '',
      ],
      ΔT_day: ['range of the air temperature over the day', day.dailyRangeK, 'K'],
    },
    value: played.result.outsideAirC[step] as number,
    unit: '°C',
    quantity: 'temperature',
    source: 'ASHRAE Handbook of Fundamentals 2021, chapter 14, table 6',
    atUtc: played.result.stepsUtc[step] as Date,
  });
}

export const kelvinOf = (played: PlayedDay, node: string, step: number): number =>
  (played.nodesC[node]?.[step] as number) + KELVIN;
