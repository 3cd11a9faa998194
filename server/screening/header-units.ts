/** Units that the names of columns tell, such as "Limit (°F)" or "altitude_ft": numbers of the column are in them. */
import { FIELDS, type NumberField, type QuantityKind, readQuantityText } from '../../model/index.ts';

/** A unit as a column names it; one of another quantity cannot be applied. */
export interface HeaderUnit {
  /** As it is written behind a number; empty where numbers stand in the unit of the model already. */
  readonly unit: string;
  readonly fits: boolean;
}

/** How people write units in headers, without case, spaces and dots, and how the reader of numbers with units spells them. */
const SPELLINGS: Readonly<Record<string, string>> = {
  ...{ f: 'degF', '°f': 'degF', degf: 'degF', fahrenheit: 'degF', degfahrenheit: 'degF' },
  ...{ c: 'degC', '°c': 'degC', degc: 'degC', celsius: 'degC', degcelsius: 'degC', k: 'K', kelvin: 'K' },
  ...{ ft: 'ft', feet: 'ft', foot: 'ft', "'": 'ft', in: 'in', inch: 'in', inches: 'in', '"': 'in', yd: 'yd' },
  ...{ m: 'm', metre: 'm', metres: 'm', meter: 'm', meters: 'm', mm: 'mm', cm: 'cm', km: 'km' },
  ...{ w: 'W', watt: 'W', watts: 'W', kw: 'kW', mw: 'mW' },
  ...{ 'm/s': 'm/s', ms: 'm/s', mph: 'mi/h', 'mi/h': 'mi/h', 'km/h': 'km/h', kmh: 'km/h', kph: 'km/h' },
  ...{ '%': '%', percent: '%', pct: '%' },
};

/** A longer word behind a name is none of these. */
const LONGEST_UNIT = 24;

/** Longer names of columns are known to nobody, and patterns take long over names without end. */
export const LONGEST_NAME = 200;

const BRACKETS = /[([]([^()[\]]*)[)\]]\s*$/;
/** A last word: after a space, a stroke or a dot, or where small letters end, "limitF". */
const LAST_WORD = /^(.*?)(?:[\s_.-]+|(?<=[a-z])(?=[A-Z]))([^\s_.-]+)$/;

/** The kind of number at a path of a site file; undefined for text, and for coordinates, whose brackets say other things. */
function quantityAt(path: string): QuantityKind | undefined {
  if (path === 'place.latitudeDeg' || path === 'place.longitudeDeg') return undefined;
  return (FIELDS as Readonly<Record<string, NumberField>>)[path.replace(/^walls\./, 'walls[].')]?.kind;
}

function unitFor(text: string, kind: QuantityKind): HeaderUnit | undefined {
  if (text.length > LONGEST_UNIT) return undefined;
  const key = text
    .toLowerCase()
    .replace(/º/g, '°')
    .replace(/degrees?/, 'deg')
    .replace(/[\s.]/g, '');
  const spelling = SPELLINGS[key];
  if (spelling === undefined) return undefined;
  const [zero, one] = [0, 1].map((number) => readQuantityText(`${number} ${spelling}`, kind));
  if (one === null) return { unit: spelling, fits: false };
  return { unit: zero === 0 && one === 1 ? '' : spelling, fits: true };
}

/** The unit in the name of a column for what stands at `path`; undefined where it tells none. What else is in brackets is a remark. */
export function headerUnit(name: string, path: string): HeaderUnit | undefined {
  const kind = quantityAt(path);
  if (kind === undefined || name.length > LONGEST_NAME) return undefined;
  const inBrackets = BRACKETS.exec(name)?.[1];
  if (inBrackets !== undefined) return unitFor(inBrackets, kind);
  const last = LAST_WORD.exec(name)?.[2];
  const unit = last === undefined ? undefined : unitFor(last, kind);
  return unit?.fits ? unit : undefined;
}

/** A name without the unit that it ends in, where that is one for what stands at `path`: "limit F" is "limit". */
export function withoutUnit(name: string, path: string): string {
  if (headerUnit(name, path) === undefined || BRACKETS.test(name)) return name;
  const [, rest = name] = LAST_WORD.exec(name) ?? [];
  return rest.replace(/[\s_.-]+(deg|degrees?|°)$/i, '');
}
