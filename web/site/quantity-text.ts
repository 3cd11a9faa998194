/** Between what a person types and what the draft holds: SI numbers, or the text itself where it carries a unit. */
import {
  fromDisplay,
  type NumberField,
  readNumberText,
  toDisplay,
  type UnitSystem,
  unitSymbol,
} from '../../model/index.ts';

type Kind = NumberField['kind'];

/** Decimal keypads of many phones offer only the comma. With three digits after it, it may part thousands instead. */
const DECIMAL_COMMA = /^[-+]?\d*,(\d{1,2}|\d{4,})$/;

/**
 * The draft value of typed text: undefined for nothing, an SI number for a number in the displayed unit, and any other
 * text unchanged, for the model to read or to reject.
 */
export function typedValue(text: string, kind: Kind, units: UnitSystem): number | string | undefined {
  const trimmed = text.trim();
  if (trimmed === '') return undefined;
  const number = DECIMAL_COMMA.test(trimmed) ? trimmed.replace(',', '.') : trimmed;
  // Beyond twelve digits stands the noise of the conversion.
  const shown = readNumberText(number, 'ratio');
  return shown === null ? trimmed : Number(fromDisplay(kind, shown, units).toPrecision(12));
}

/** The text of a draft value in the displayed unit. */
export function shownText(value: unknown, kind: Kind, units: UnitSystem): string {
  if (typeof value === 'number' && Number.isFinite(value)) return numberText(toDisplay(kind, value, units));
  return typeof value === 'string' ? value : '';
}

/** An SI value with its unit symbol, as short as it is exact: "12 in", "1083 ft", "−113.4°". */
export function shortQuantity(value: number, kind: Kind, units: UnitSystem): string {
  const symbol = unitSymbol(kind, units);
  const text = shownText(value, kind, units);
  if (symbol === '') return text;
  // The space does not break: a unit alone on the next line reads badly.
  return symbol === '°' ? `${text}°` : `${text}\u00a0${symbol}`;
}

/** "20 to 3000 mm" */
export function rangeText({ kind, min, max }: NumberField, units: UnitSystem): string {
  return `${shownText(min, kind, units)} to ${shortQuantity(max, kind, units)}`;
}

/** A number that was entered in this unit is short and stays as entered; one that comes from the other unit is rounded. */
function numberText(value: number): string {
  const mostDecimals = 6 - Math.max(0, Math.floor(Math.log10(Math.abs(value) || 1)));
  for (let decimals = 0; decimals <= mostDecimals; decimals += 1) {
    const rounded = Number(value.toFixed(decimals));
    if (Math.abs(rounded - value) <= 2e-11 * Math.abs(value)) return String(rounded);
  }
  return String(Math.abs(value) < 1000 ? Number(value.toPrecision(4)) : Math.round(value));
}
