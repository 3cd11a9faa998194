/**
 * Quantities a person reads and enters: what kind of quantity a number is, how it is shown in metric
 * and US customary units, and how text such as "12 in" or "115 degF" becomes SI.
 *
 * Inside the model every number is SI (degrees for angles, degC for temperatures); conversion happens
 * here, at the edge, once. Reading text with a unit needs mathjs, which `unit-text.ts` holds, so that a
 * page on which nobody typed a unit does not load it.
 */
import { compassPointDeg } from './compass.ts';
import { gaugeAreaMm2 } from './wire-gauge.ts';

export type UnitSystem = 'metric' | 'us';

/** How one kind of quantity is written in one unit system: shown = si * factor + offset. */
interface Display {
  readonly symbol: string;
  readonly factor: number;
  readonly offset: number;
  readonly digits: number;
}

interface QuantityKindInfo {
  /** The unit that the model computes in, as the unit library spells it; empty for a pure number. */
  readonly si: string;
  readonly display: Readonly<Record<UnitSystem, Display>>;
  /** Examples of accepted text, for messages. */
  readonly example: string;
}

const same = (symbol: string, digits: number): Record<UnitSystem, Display> => {
  const display = { symbol, factor: 1, offset: 0, digits };
  return { metric: display, us: display };
};

/** NIST SP 811 (2008) appendix B.8: exact factors. */
const FOOT_M = 0.3048;
const INCH_M = 0.0254;
const MILE_PER_HOUR_MS = 0.44704;
const POUND_KG = 0.45359237;

export const QUANTITY_KINDS = {
  angle: { si: 'deg', display: same('°', 1), example: '8 or "8 deg"' },
  bearing: { si: 'deg', display: same('°', 0), example: '225, "225 deg" or "SW"' },
  length: {
    si: 'm',
    display: {
      metric: { symbol: 'm', factor: 1, offset: 0, digits: 2 },
      us: { symbol: 'ft', factor: 1 / FOOT_M, offset: 0, digits: 1 },
    },
    example: '1.4, "140 cm" or "4.5 ft"',
  },
  smallLength: {
    si: 'm',
    display: {
      metric: { symbol: 'mm', factor: 1000, offset: 0, digits: 0 },
      us: { symbol: 'in', factor: 1 / INCH_M, offset: 0, digits: 1 },
    },
    example: '0.3, "300 mm" or "12 in"',
  },
  smallArea: {
    si: 'm^2',
    display: {
      metric: { symbol: 'cm²', factor: 10_000, offset: 0, digits: 0 },
      us: { symbol: 'in²', factor: 1 / INCH_M ** 2, offset: 0, digits: 1 },
    },
    example: '0.004, "40 cm^2" or "6 in^2"',
  },
  conductorArea: { si: 'mm^2', display: same('mm²', 1), example: '16 or "6 AWG"' },
  temperature: {
    si: 'degC',
    display: {
      metric: { symbol: '°C', factor: 1, offset: 0, digits: 1 },
      us: { symbol: '°F', factor: 1.8, offset: 32, digits: 0 },
    },
    example: '46, "46 degC" or "115 degF"',
  },
  temperatureDifference: {
    si: 'K',
    display: {
      metric: { symbol: 'K', factor: 1, offset: 0, digits: 1 },
      us: { symbol: '°F', factor: 1.8, offset: 0, digits: 0 },
    },
    example: '14, "14 K" or "25 degF"',
  },
  speed: {
    si: 'm/s',
    display: {
      metric: { symbol: 'm/s', factor: 1, offset: 0, digits: 1 },
      us: { symbol: 'mph', factor: 1 / MILE_PER_HOUR_MS, offset: 0, digits: 1 },
    },
    example: '1, "1 m/s" or "2 mi/h"',
  },
  power: { si: 'W', display: same('W', 1), example: '15, "15 W" or "0.015 kW"' },
  irradiance: { si: 'W/m^2', display: same('W/m²', 0), example: '900 or "900 W/m^2"' },
  mass: {
    si: 'kg',
    display: {
      metric: { symbol: 'kg', factor: 1, offset: 0, digits: 1 },
      us: { symbol: 'lb', factor: 1 / POUND_KG, offset: 0, digits: 1 },
    },
    example: '3, "3 kg" or "7 lb"',
  },
  ratio: { si: '', display: same('', 2), example: '0.4 or "40 %"' },
} as const satisfies Record<string, QuantityKindInfo>;

export type QuantityKind = keyof typeof QUANTITY_KINDS;

/** Converts an SI value to the number shown in `system`; the inverse of `fromDisplay`. */
export function toDisplay(kind: QuantityKind, si: number, system: UnitSystem): number {
  const { factor, offset } = QUANTITY_KINDS[kind].display[system];
  return si * factor + offset;
}

/** Converts a number shown in `system` to SI; the inverse of `toDisplay`. */
export function fromDisplay(kind: QuantityKind, shown: number, system: UnitSystem): number {
  const { factor, offset } = QUANTITY_KINDS[kind].display[system];
  return (shown - offset) / factor;
}

/** The symbol shown after a number of this kind in `system`; empty for a pure number. */
export function unitSymbol(kind: QuantityKind, system: UnitSystem): string {
  return QUANTITY_KINDS[kind].display[system].symbol;
}

/** Writes an SI value for a person: "46.0 °C", "115 °F", "1.40 m". Angles carry no space before the degree sign. */
export function formatQuantity(kind: QuantityKind, si: number, system: UnitSystem, digits?: number): string {
  const { symbol, digits: usual } = QUANTITY_KINDS[kind].display[system];
  const rounded = toDisplay(kind, si, system).toFixed(digits ?? usual);
  // "-0.0" reads as an error.
  const text = Number(rounded) === 0 ? rounded.replace('-', '') : rounded;
  if (symbol === '') return text;
  return symbol === '°' ? `${text}°` : `${text} ${symbol}`;
}

/** Zones of the United States and its customary-unit neighbours in the IANA database's `America` and `Pacific` areas. */
const US_ZONES =
  /^(US\/|America\/(Adak|Anchorage|Boise|Chicago|Denver|Detroit|Indiana\/|Juneau|Kentucky\/|Los_Angeles|Menominee|Metlakatla|New_York|Nome|North_Dakota\/|Phoenix|Puerto_Rico|Sitka|Yakutat)|Pacific\/(Honolulu|Guam|Pago_Pago|Saipan))/;

/** The units that people at a place read: US customary where the IANA zone is one of the United States. */
export function usualUnits(timeZone: string): UnitSystem {
  return US_ZONES.test(timeZone) ? 'us' : 'metric';
}

/** Turns typed text into the SI number of `kind`, or null where the text is not such a quantity. */
export type QuantityReader = (text: string, kind: QuantityKind) => number | null;

const NUMBER = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i;

/** Longest text taken for a quantity; anything longer is not one, and is not handed to a parser. */
export const MAX_QUANTITY_TEXT = 40;

/** Reads text without a unit: a plain number, a compass point for a bearing, a wire gauge for a conductor. */
export const readNumberText: QuantityReader = (text, kind) => {
  const trimmed = text.trim();
  if (trimmed.length > MAX_QUANTITY_TEXT) return null;
  if (NUMBER.test(trimmed)) return Number.isFinite(Number(trimmed)) ? Number(trimmed) : null;
  if (kind === 'conductorArea') return gaugeAreaMm2(trimmed);
  return kind === 'bearing' ? compassPointDeg(trimmed) : null;
};
