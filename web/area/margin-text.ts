/** A margin in words, "7.2 K over the limit", and in a cell, "−7.2 K". */
import { compassPoint, formatQuantity, type UnitSystem } from '../../model/index.ts';

export function marginWords(marginK: number | null, units: UnitSystem): string {
  if (marginK === null) return 'no wall is permitted';
  const size = formatQuantity('temperatureDifference', Math.abs(marginK), units);
  return `${size} ${marginK < 0 ? 'over' : 'below'} the limit`;
}

export function marginCell(marginK: number | null, units: UnitSystem): string {
  if (marginK === null) return '–';
  return formatQuantity('temperatureDifference', marginK, units).replace(/^-/, '−');
}

export function peakCell(celsius: number | null, units: UnitSystem): string {
  return celsius === null ? '–' : formatQuantity('temperature', celsius, units).replace(/^-/, '−');
}

/** A wall that a row named by its bearing alone, "188", with its compass point: "S, 188°". */
export function wallText(name: string): string {
  return /^\d+(\.\d+)?$/.test(name) ? `${compassPoint(Number(name))}, ${name}°` : name;
}

/** The name of an address, or the number of its row. */
export const nameOfRow = ({ id, row }: { readonly id: string; readonly row: number }): string =>
  id === '' ? `row ${row}` : id;
