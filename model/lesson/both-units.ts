/** Text for people of either unit system, as plain data. */
import { formatQuantity, type UnitSystem } from '../units.ts';

export type BothUnits = Readonly<Record<UnitSystem, string>>;

/** Writes a text once for each system. */
export function bothUnits(write: (units: UnitSystem) => string): BothUnits {
  return { metric: write('metric'), us: write('us') };
}

/** Figures that stand beside their difference have tenths in either system: two whole degrees may miss it by one. */
const BESIDE_DIGITS = 1;

/** "74.2 °C", "165.6 °F": a temperature beside another one and their difference. */
export const temperatureBeside = (celsius: number, units: UnitSystem): string =>
  formatQuantity('temperature', celsius, units, BESIDE_DIGITS);

/** The difference of two such. */
export const kelvinsBeside = (k: number, units: UnitSystem): string =>
  formatQuantity('temperatureDifference', k, units, BESIDE_DIGITS);

/** Kelvins without a sign, "3.2 K" or "6 °F". */
export const kelvins = (k: number, units: UnitSystem): string =>
  formatQuantity('temperatureDifference', Math.abs(k), units);

/** "5.1 K hotter", "5.1 K cooler"; "just as warm" where the figure reads as none, so that nothing is 0 °F hotter. */
export function hotterBy(k: number, units: UnitSystem, written = kelvins): string {
  const size = written(Math.abs(k), units);
  return size === written(0, units) ? 'just as warm' : `${size} ${k < 0 ? 'cooler' : 'hotter'}`;
}

/** "1.5 h". */
export const hoursText = (hours: number): string => `${hours.toFixed(1)} h`;
