/** How fast electronics and a battery would age if every day were like one design day. */
import { arrheniusFactor, BATTERY_HALVES_PER_K, batteryAgeing } from '../siting/ageing.ts';
import type { DayResult } from '../siting/results.ts';
import { formatQuantity, type UnitSystem } from '../units.ts';

/** The electronics' wear is told against this, degC. */
export const AGEING_AGAINST_C = 40;

/** Life of a sealed lead-acid battery at 25 degC, years: between the 3 to 5 of common and the 10 of long-life ones. */
export const BATTERY_RATED_YEARS = 5;

/** Where the years of a battery come from, in the units of the reader. */
export function batteryYearsText(units: UnitSystem): string {
  const at = formatQuantity('temperature', 25, units, 0);
  return (
    `A battery that lasts ${BATTERY_RATED_YEARS} years at ${at} halves its life for each ${batteryHalvingText(units)} above and gains none below (common practice, no source); ` +
    'computed as if every day were this one, so it shows how days differ and forecasts no date.'
  );
}

/** "10 K" or "18 °F". */
export const batteryHalvingText = (units: UnitSystem): string =>
  formatQuantity('temperatureDifference', BATTERY_HALVES_PER_K, units, 0);

export interface DayAgeing {
  /** Mean wear of the electronics against 40 degC all day (Arrhenius, 0.7 eV: common practice, no source). */
  readonly electronicsAgainst40C: number;
  /** Life of the battery, or of one in the air inside, against one at 25 degC. */
  readonly batteryLifeFactor: number;
  /** The same in years. */
  readonly batteryYears: number;
}

/** Means over the steps of a day: what ages fast in the hot hours counts as much as it ages. */
export function dayAgeing(day: Pick<DayResult, 'electronicsC' | 'insideAirC' | 'batteryC'>): DayAgeing {
  const mean = (values: readonly number[], of: (celsius: number) => number): number =>
    values.reduce((sum, celsius) => sum + of(celsius), 0) / values.length;
  const batteryC = day.batteryC ?? day.insideAirC;
  const batteryLifeFactor = 1 / mean(batteryC, batteryAgeing);
  return {
    electronicsAgainst40C: mean(day.electronicsC, (celsius) => arrheniusFactor(celsius, AGEING_AGAINST_C)),
    batteryLifeFactor,
    batteryYears: BATTERY_RATED_YEARS * batteryLifeFactor,
  };
}
