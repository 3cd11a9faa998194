/**
 * Reads text that carries a unit ("12 in", "115 degF", "40 %") with mathjs. Only its unit parser is called:
 * what a person typed is never evaluated as an expression.
 */
import { create, type FactoryFunctionMap, type Unit, unitDependencies } from 'mathjs';
import { MAX_QUANTITY_TEXT, QUANTITY_KINDS, type QuantityReader, readNumberText } from './units.ts';

let unitOf: ((text: string) => Unit) | undefined;

/** The unit parser is built when the first text with a unit comes, not when the module loads. */
function parseUnit(text: string): Unit {
  unitOf ??= create({ unitDependencies } as FactoryFunctionMap).unit as (text: string) => Unit;
  return unitOf(text);
}

/** Signs that people type, and how the unit parser spells them. */
function spelled(text: string): string {
  return text
    .replace(/°\s*C\b/i, ' degC')
    .replace(/°\s*F\b/i, ' degF')
    .replace(/°/, ' deg')
    .replace(/["″]\s*$/, ' in')
    .replace(/['′]\s*$/, ' ft')
    .replace(/\bmph\b/i, 'mi/h');
}

/** Reads a plain number or a number with a unit that fits `kind`; null for anything else. */
export const readQuantityText: QuantityReader = (text, kind) => {
  const plain = readNumberText(text, kind);
  if (plain !== null) return plain;
  // "in" alone is a unit, not a quantity.
  if (text.length > MAX_QUANTITY_TEXT || !/^\s*[-+.]?\d/.test(text)) return null;
  if (kind === 'ratio') {
    const percent = /^\s*(.+?)\s*%\s*$/.exec(text)?.[1];
    const value = percent === undefined ? null : readNumberText(percent, kind);
    return value === null ? null : value / 100;
  }
  const si = QUANTITY_KINDS[kind].si;
  try {
    const quantity = parseUnit(spelled(text));
    const value = quantity.toNumber(si);
    // A difference of 25 degF is 25 steps of the scale, not a point on it.
    const zero = kind === 'temperatureDifference' ? parseUnit(`0 ${quantity.formatUnits()}`).toNumber(si) : 0;
    // Twelve digits are more than anybody measures; beyond them stands the noise of binary factors.
    const si12 = Number((value - zero).toPrecision(12));
    return Number.isFinite(si12) ? si12 : null;
  } catch {
    // mathjs throws on text that is no unit and on a unit of another dimension: both mean "not such a quantity".
    return null;
  }
};
