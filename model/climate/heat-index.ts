/**
 * The heat index: how warm air of a humidity feels to a person who rests in the shade in a light wind.
 *
 * Source: L. P. Rothfusz, NWS technical attachment SR 90-23 (1990), a regression on R. G. Steadman's table (1979), with the
 * adjustments of the Weather Prediction Center, www.wpc.ncep.noaa.gov/html/heatindex_equation.shtml.
 */
import { fromDisplay, toDisplay } from '../units.ts';

const fahrenheit = (celsius: number): number => toDisplay('temperature', celsius, 'us');
const celsius = (degF: number): number => fromDisplay('temperature', degF, 'us');

/** Where the published chart has figures: air 80 to 110 degF, relative humidity 40 to 100 %. */
export const HEAT_INDEX_CHART = {
  leastAirC: celsius(80),
  mostAirC: celsius(110),
  leastHumidityPercent: 40,
} as const;

/** From here on the regression holds; below it a straight line in its place, degF. */
const REGRESSION_FROM_F = 80;

/** Full sun adds up to so much to the heat index, K (National Weather Service: up to 15 degF). */
export const FULL_SUN_K = 15 / 1.8;

export interface MoistAir {
  readonly airC: number;
  readonly relativeHumidityPercent: number;
}

/**
 * Heat index of air in the shade, degC. Within `HEAT_INDEX_CHART` it is within 0.7 K of Steadman's table; outside it is an
 * extrapolation.
 */
export function heatIndex({ airC, relativeHumidityPercent: rh }: MoistAir): number {
  const t = fahrenheit(airC);
  const simple = 0.5 * (t + 61 + (t - 68) * 1.2 + rh * 0.094);
  if ((simple + t) / 2 < REGRESSION_FROM_F) return celsius(simple);
  return celsius(rothfusz(t, rh) + adjustment(t, rh));
}

function rothfusz(t: number, rh: number): number {
  return (
    -42.379 +
    2.04901523 * t +
    10.14333127 * rh -
    0.22475541 * t * rh -
    0.00683783 * t * t -
    0.05481717 * rh * rh +
    0.00122874 * t * t * rh +
    0.00085282 * t * rh * rh -
    0.00000199 * t * t * rh * rh
  );
}

/** Dry air feels cooler than the regression says, nearly saturated air warmer, degF. */
function adjustment(t: number, rh: number): number {
  if (rh < 13 && t >= 80 && t <= 112) return -((13 - rh) / 4) * Math.sqrt((17 - Math.abs(t - 95)) / 17);
  if (rh > 85 && t >= 80 && t <= 87) return ((rh - 85) / 10) * ((87 - t) / 5);
  return 0;
}

/** Whether the published chart covers a state of the air, or would if it began lower: cool air needs no chart. */
export function withinHeatIndexChart({ airC, relativeHumidityPercent }: MoistAir): boolean {
  const { leastAirC, mostAirC, leastHumidityPercent } = HEAT_INDEX_CHART;
  if (airC < leastAirC) return true;
  return airC <= mostAirC && relativeHumidityPercent >= leastHumidityPercent;
}

/** Classes of the National Weather Service, mildest first. */
export const HEAT_CLASSES = ['caution', 'extreme caution', 'danger', 'extreme danger'] as const;

export type HeatClass = (typeof HEAT_CLASSES)[number];

/** Heat index from which each class holds, degC: 80, 90, 103 and 125 degF (National Weather Service). */
export const HEAT_CLASS_FROM_C: Readonly<Record<HeatClass, number>> = {
  caution: celsius(80),
  'extreme caution': celsius(90),
  danger: celsius(103),
  'extreme danger': celsius(125),
};

/** The class of a heat index; null below all of them. */
export function heatClass(indexC: number): HeatClass | null {
  return HEAT_CLASSES.findLast((name) => indexC >= HEAT_CLASS_FROM_C[name]) ?? null;
}
