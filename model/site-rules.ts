/**
 * Rules between the fields of a site. They read the raw input, so that they speak up together with whatever else is
 * wrong; a field that is itself wrong is left to its own problem.
 */

import { buildingProblems } from './building-rules.ts';
import { civilDay } from './civil-day.ts';
import { DUTIES, type DutyName } from './duty.ts';
import { fieldAt } from './fields.ts';
import { obstructionProblems } from './obstruction-rules.ts';
import { type RawSite, rawSite } from './raw-site.ts';
import { isTimeZone } from './site.ts';
import { type Problem, problem, shown } from './site-error.ts';
import type { QuantityReader } from './units.ts';

/** More heat than this from each square metre of its outside no closed box gives off without charring, W/m2. */
const MOST_HEAT_WM2 = 2000;

/** Density that batteries are reckoned with, kg/m3 (thermal/battery.ts). */
const MOST_BATTERY_KGM3 = 2400;

/** The problems between fields of a raw site. */
export function ruleProblems(input: unknown, read: QuantityReader): Problem[] {
  const raw = rawSite(input, read);
  return [
    ...climateChoice(raw),
    ...designDay(raw),
    ...order(raw, 'limits.minC', 'limits.maxC', 'the lower limit is not below the upper one'),
    ...heights(raw),
    ...boxOnItself(raw),
    ...hoodAtWall(raw),
    ...insideBox(raw),
    ...walls(raw),
    ...buildingProblems(raw),
  ];
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
  const nightC = raw.number('climate.coldNight.minC');
  const nightDewC = raw.number('climate.coldNight.dewPointC');
  if (nightC !== undefined && nightDewC !== undefined && nightDewC > nightC) {
    const wrong = 'the dew point lies above the air temperature';
    dew.push(problem('climate.coldNight.dewPointC', shown(nightDewC), wrong, ''));
  }
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
  const mount = raw.numberOrUsual('box.mountHeightM');
  if (h !== undefined && mount !== undefined && mount < h / 2) {
    const at = raw.at('box.mountHeightM') === undefined ? 'box.heightM' : 'box.mountHeightM';
    const wrong = 'the box would reach into the ground: its middle lies lower than half its height';
    problems.push(problem(at, shown(raw.at(at)), wrong, ''));
  }
  const powerW = mostHeatW(raw);
  if (powerW !== undefined && w !== undefined && h !== undefined && d !== undefined) {
    const most = Math.round(MOST_HEAT_WM2 * 2 * (w * h + w * d + h * d));
    if (powerW > most) {
      const wrong = 'more heat than a closed box of this size gives off';
      problems.push(problem('box.powerW', shown(raw.at('box.powerW')), wrong, `up to ${most} W for this size`));
    }
  }
  return problems;
}

/** The back of a box on a wall has no room for a sheet. */
function hoodAtWall(raw: RawSite): Problem[] {
  const faces = raw.at('box.hood.faces');
  if (raw.at('box.mount') === 'post' || !Array.isArray(faces)) return [];
  const index = faces.indexOf('back');
  if (index < 0) return [];
  return [problem(`box.hood.faces.${index}`, shown('back'), 'a hood covers the back of a box on a post only', '')];
}

/** What is inside must fit inside, and heat in one room is part of the whole. */
function insideBox(raw: RawSite): Problem[] {
  const problems: Problem[] = [];
  const [heightM, widthM, depthM] = ['heightM', 'widthM', 'depthM'].map((key) => raw.number(`box.${key}`));
  const span = raw.number('box.vents.heightM');
  const lowerShare =
    (raw.at('box.compartments') ?? null) === null ? 0 : raw.numberOrUsual('box.compartments.lowerShare');
  if (span !== undefined && heightM !== undefined && lowerShare !== undefined && span > heightM * (1 - lowerShare)) {
    const wrong = 'the openings lie further apart than the room that they open into is high';
    const allowed = `up to ${Number((heightM * (1 - lowerShare)).toFixed(3))} m`;
    problems.push(problem('box.vents.heightM', shown(raw.at('box.vents.heightM')), wrong, allowed));
  }
  const lower = raw.number('box.compartments.lowerPowerW');
  const powerW = raw.number('box.powerW');
  if (lower !== undefined && powerW !== undefined && lower > powerW) {
    const wrong = 'more than the whole heat given off inside';
    problems.push(problem('box.compartments.lowerPowerW', shown(lower), wrong, `up to ${powerW} W`));
  }
  const massKg = raw.number('box.battery.massKg');
  if (massKg !== undefined && heightM !== undefined && widthM !== undefined && depthM !== undefined) {
    const most = heightM * widthM * depthM * MOST_BATTERY_KGM3;
    if (massKg > most) {
      const wrong = 'a battery of this mass does not fit into the box';
      problems.push(problem('box.battery.massKg', shown(massKg), wrong, `up to ${most.toFixed(1)} kg`));
    }
  }
  return problems;
}

/** The most that is given off inside at any hour, battery included, W. */
function mostHeatW(raw: RawSite): number | undefined {
  const powerW = raw.number('box.powerW');
  const named = String(raw.at('box.duty'));
  const duty = Object.hasOwn(DUTIES, named) ? DUTIES[named as DutyName] : DUTIES.constant;
  return powerW === undefined ? undefined : powerW * Math.max(...duty.hourly) + (raw.number('box.battery.powerW') ?? 0);
}

function walls(raw: RawSite): Problem[] {
  const list = raw.at('walls');
  if (!Array.isArray(list)) return [];
  const seen = new Map<string, number>();
  return list.flatMap((_, index): Problem[] => {
    const path = `walls.${index}`;
    return [
      ...nameTaken(raw.at(`${path}.name`), index, seen),
      ...wallHeight(raw, path),
      ...obstructionProblems(raw, path),
    ];
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

/**
 * Height that the top of the box, and an eave above it, ask of a wall; undefined while a size is missing, and for a box on
 * a post, which asks nothing of it.
 */
function neededWallHeightM(raw: RawSite, path: string): number | undefined {
  const boxHeightM = raw.number('box.heightM');
  const mountM = raw.numberOrUsual('box.mountHeightM');
  const eaveM = raw.number(`${path}.eave.heightAboveBoxM`);
  if (boxHeightM === undefined || mountM === undefined) return undefined;
  if (raw.at('box.mount') === 'post' && eaveM === undefined) return undefined;
  return mountM + boxHeightM / 2 + (eaveM ?? 0);
}
