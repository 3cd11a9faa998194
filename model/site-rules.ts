/**
 * Rules between the fields of a site. They read the raw input, so that they speak up together with whatever else is
 * wrong; a field that is itself wrong is left to its own problem.
 */
import { civilDay } from './civil-day.ts';
import { FIELDS, fieldAt } from './fields.ts';
import { isTimeZone } from './site.ts';
import { type Problem, problem, shown } from './site-error.ts';
import type { QuantityReader } from './units.ts';

/** More heat than this from each square metre of its outside no closed box gives off without charring, W/m2. */
const MOST_HEAT_WM2 = 2000;

/** Reads raw fields by their path. */
interface RawSite {
  /** What stands at a path; undefined where nothing does. */
  at(path: string): unknown;
  /** The number at a path in SI; undefined where none is entered or it is itself wrong. */
  number(path: string): number | undefined;
}

/** The problems between fields of a raw site. */
export function ruleProblems(input: unknown, read: QuantityReader): Problem[] {
  const raw = rawSite(input, read);
  return [
    ...climateChoice(raw),
    ...designDay(raw),
    ...order(raw, 'limits.minC', 'limits.maxC', 'the lower limit is not below the upper one'),
    ...heights(raw),
    ...boxOnItself(raw),
    ...walls(raw),
  ];
}

/** What stands at a path of a raw input. */
export function rawAt(input: unknown, path: string): unknown {
  return path.split('.').reduce<unknown>((at, key) => {
    return typeof at === 'object' && at !== null && Object.hasOwn(at, key)
      ? (at as Record<string, unknown>)[key]
      : undefined;
  }, input);
}

function rawSite(input: unknown, read: QuantityReader): RawSite {
  const at = (path: string) => rawAt(input, path);
  return {
    at,
    number(path) {
      const entered = at(path);
      const field = fieldAt(path);
      if (field === undefined) return undefined;
      const value = typeof entered === 'string' ? read(entered, field.kind) : entered;
      return typeof value === 'number' && value >= field.min && value <= field.max ? value : undefined;
    },
  };
}

const CLIMATES = ['sample', 'designDay', 'cycle'] as const;

function climateChoice(raw: RawSite): Problem[] {
  const climate = raw.at('climate');
  if (typeof climate !== 'object' || climate === null || Array.isArray(climate)) return [];
  const given = CLIMATES.filter((key) => raw.at(`climate.${key}`) !== undefined);
  if (given.length !== 1) {
    const found = given.join(' and ') || 'none';
    const wrong = `exactly one of sample, designDay and cycle is needed, found ${found}`;
    return [problem('climate', found, wrong, CLIMATES.join(', '))];
  }
  const owners = { month: 'sample', date: 'cycle', windMs: 'cycle' } as const;
  return Object.entries(owners).flatMap(([key, owner]) => {
    if (raw.at(`climate.${key}`) === undefined || given[0] === owner) return [];
    return [problem(`climate.${key}`, shown(raw.at(`climate.${key}`)), `goes with ${owner} only`, '')];
  });
}

function designDay(raw: RawSite): Problem[] {
  const dewPointC = raw.number('climate.designDay.dewPointC');
  const maxC = raw.number('climate.designDay.maxC');
  const dew =
    dewPointC !== undefined && maxC !== undefined && dewPointC > maxC
      ? [
          problem(
            'climate.designDay.dewPointC',
            shown(dewPointC),
            'the dew point lies above the highest air temperature',
            '',
          ),
        ]
      : [];
  return [...dew, ...['climate.designDay.date', 'climate.date'].flatMap((path) => skippedDate(raw, path))];
}

/** A zone that crossed the date line skipped a day. */
function skippedDate(raw: RawSite, path: string): Problem[] {
  const [date, zone] = [raw.at(path), raw.at('place.timeZone')];
  if (typeof date !== 'string' || typeof zone !== 'string' || !isTimeZone(zone)) return [];
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || Number.isNaN(Date.parse(`${date}T00:00:00Z`))) return [];
  try {
    civilDay(date, zone);
    return [];
  } catch (error) {
    return error instanceof RangeError ? [problem(path, shown(date), error.message, 'a date that the place has')] : [];
  }
}

function order(raw: RawSite, low: string, high: string, wrong: string): Problem[] {
  const [lowest, highest] = [low, high].map((path) => raw.number(path) ?? fieldAt(path)?.default?.value);
  if (lowest === undefined || highest === undefined || lowest < highest) return [];
  const at = raw.at(low) === undefined ? high : low;
  return [problem(at, shown(raw.at(at)), wrong, '')];
}

function heights(raw: RawSite): Problem[] {
  const path = 'constraints.mountHeightM';
  const [low, high] = [raw.number(`${path}.0`), raw.number(`${path}.1`)];
  if (low === undefined || high === undefined || low <= high) return [];
  return [problem(path, shown(raw.at(path)), 'the lowest height is above the highest', '')];
}

function boxOnItself(raw: RawSite): Problem[] {
  const problems: Problem[] = [];
  const [w, h, d] = ['widthM', 'heightM', 'depthM'].map((key) => raw.number(`box.${key}`));
  const mount = raw.number('box.mountHeightM') ?? FIELDS['box.mountHeightM'].default.value;
  if (h !== undefined && mount < h / 2) {
    const at = raw.at('box.mountHeightM') === undefined ? 'box.heightM' : 'box.mountHeightM';
    const wrong = 'the box would reach into the ground: its middle lies lower than half its height';
    problems.push(problem(at, shown(raw.at(at)), wrong, ''));
  }
  const powerW = raw.number('box.powerW');
  if (powerW !== undefined && w !== undefined && h !== undefined && d !== undefined) {
    const most = Math.round(MOST_HEAT_WM2 * 2 * (w * h + w * d + h * d));
    if (powerW > most) {
      const wrong = 'more heat than a closed box of this size gives off';
      problems.push(problem('box.powerW', shown(powerW), wrong, `up to ${most} W for this size`));
    }
  }
  return problems;
}

function walls(raw: RawSite): Problem[] {
  const list = raw.at('walls');
  if (!Array.isArray(list)) return [];
  const seen = new Map<string, number>();
  return list.flatMap((_, index): Problem[] => {
    const path = `walls.${index}`;
    return [...nameTaken(raw.at(`${path}.name`), index, seen), ...wallHeight(raw, path), ...obstructions(raw, path)];
  });
}

function nameTaken(name: unknown, index: number, seen: Map<string, number>): Problem[] {
  if (typeof name !== 'string') return [];
  const first = seen.get(name.trim());
  seen.set(name.trim(), first ?? index);
  if (first === undefined) return [];
  const wrong = `the name ${shown(name)} is taken by walls.${first}`;
  return [problem(`walls.${index}.name`, shown(name), wrong, 'names that differ')];
}

function wallHeight(raw: RawSite, path: string): Problem[] {
  const heightM = raw.number(`${path}.heightM`);
  const needed = neededWallHeightM(raw, path);
  if (heightM === undefined || needed === undefined || heightM >= needed) return [];
  const wrong = `the wall is lower than the box on it and the eave above: they need ${needed.toFixed(2)} m`;
  return [problem(`${path}.heightM`, shown(heightM), wrong, '')];
}

/** What stands where the box hangs, or grows upside down, is a slip of the pen. */
function obstructions(raw: RawSite, wallPath: string): Problem[] {
  const list = raw.at(`${wallPath}.obstructions`);
  const [w, d] = ['widthM', 'depthM'].map((key) => raw.number(`box.${key}`));
  if (!Array.isArray(list) || w === undefined || d === undefined) return [];
  const frontM = d + (raw.number('box.standOffM') ?? FIELDS['box.standOffM'].default.value);
  return list.flatMap((_, index): Problem[] => {
    const path = `${wallPath}.obstructions.${index}`;
    const number = (key: string): number => raw.number(`${path}.${key}`) ?? Number.NaN;
    const kind = raw.at(`${path}.kind`);
    const problems: Problem[] = [];
    const through = (key: string, beyondM: number) =>
      problems.push(
        problem(
          `${path}.${key}`,
          shown(raw.at(`${path}.${key}`)),
          'cuts through the box',
          `from ${beyondM.toFixed(2)} m`,
        ),
      );
    if (kind === 'sideWall' && number('distanceM') < w / 2) through('distanceM', w / 2);
    if (kind === 'front' && number('distanceM') < frontM) through('distanceM', frontM);
    const beside = (halfM: number) => Math.abs(number('rightM')) < w / 2 + halfM;
    if (kind === 'block' && beside(number('widthM') / 2) && number('outM') < frontM) through('outM', frontM);
    const crownM = number('crownDiameterM') / 2;
    if (kind === 'tree' && beside(crownM) && number('outM') - crownM < frontM) through('outM', frontM + crownM);
    const crownBase = raw.number(`${path}.crownBaseM`) ?? FIELDS['walls[].obstructions[].crownBaseM'].default.value;
    if (kind === 'tree' && number('heightM') <= crownBase) {
      problems.push(problem(`${path}.heightM`, shown(raw.at(`${path}.heightM`)), 'the tree ends below its crown', ''));
    }
    return problems;
  });
}

/** Height that the top of the box, and an eave above it, ask of a wall; undefined while a size is missing. */
function neededWallHeightM(raw: Pick<RawSite, 'number'>, path: string): number | undefined {
  const boxHeightM = raw.number('box.heightM');
  if (boxHeightM === undefined) return undefined;
  const mount = raw.number('box.mountHeightM') ?? FIELDS['box.mountHeightM'].default.value;
  return mount + boxHeightM / 2 + (raw.number(`${path}.eave.heightAboveBoxM`) ?? 0);
}
