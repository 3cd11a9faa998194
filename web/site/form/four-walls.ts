/** One bearing makes the four walls of a rectangular building, and turns them with it. */
import { bearingTenths, type UnitSystem, wrapDegrees } from '../../../model/index.ts';
import { type Draft, listAt, textAt, valueAt, withValue } from '../draft.ts';
import { enteredOutline, OUTLINE, rectangleCorners, rectangleOf } from './outline.ts';

const WORDS = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];

/** Walls closer than this to a right angle are taken as the walls of one rectangle, degrees. */
const RIGHT_WITHIN_DEG = 1;

/** The name of a wall by the way it faces: one of eight. */
export function wallWord(azimuthDeg: number): string {
  return WORDS[Math.round(wrapDegrees(azimuthDeg) / 45) % 8] as string;
}

/** Whether the walls of a draft are four at right angles. */
export function hasFourWalls(draft: Draft): boolean {
  const bearings = bearingsOf(draft);
  if (bearings === null || bearings.length !== 4) return false;
  const sorted = [...bearings].sort((a, b) => a - b);
  return sorted.every((bearing, k) => {
    const step = wrapDegrees((sorted[(k + 1) % 4] as number) - bearing);
    return Math.abs(step - 90) <= RIGHT_WITHIN_DEG;
  });
}

/**
 * A draft whose four walls face a bearing and 90, 180 and 270 degrees on. Walls that are four already are turned the
 * shorter way and keep what is known of them; others are replaced. A rectangular outline turns along.
 */
export function withFourWalls(draft: Draft, bearingDeg: number, units: UnitSystem): Draft {
  if (!hasFourWalls(draft)) return withOutline(withNewWalls(draft, bearingDeg), bearingDeg, units);
  const bearings = bearingsOf(draft) as number[];
  const turned = bearings.map((before) => nearestQuarter(before, bearingDeg));
  // Four walls half-way between would all turn the same way, or two would fall together.
  const apart = new Set(turned).size === 4 ? turned : bearings.map((_, k) => bearingTenths(bearingDeg + 90 * k));
  const walls = listAt(draft, 'walls').map((wall, k) => {
    const named = textAt(wall, 'name') === wallWord(bearings[k] as number);
    return { ...(wall as Draft), azimuthDeg: apart[k], ...(named ? { name: wallWord(apart[k] as number) } : {}) };
  });
  return withOutline(withValue(draft, 'walls', walls), bearingDeg, units);
}

function withNewWalls(draft: Draft, bearingDeg: number): Draft {
  const construction = valueAt(draft, 'walls.0.construction');
  const built = construction === undefined ? {} : { construction };
  const walls = [0, 90, 180, 270].map((turn) => {
    const azimuthDeg = bearingTenths(bearingDeg + turn);
    return { name: wallWord(azimuthDeg), azimuthDeg, ...built };
  });
  return withValue(draft, 'walls', walls);
}

function withOutline(draft: Draft, bearingDeg: number, units: UnitSystem): Draft {
  const outline = enteredOutline(draft);
  const rectangle = outline && rectangleOf(outline, units);
  if (rectangle === null) return draft;
  const bearing = nearestQuarter(rectangle.bearingDeg, bearingDeg);
  return withValue(draft, OUTLINE, rectangleCorners({ ...rectangle, bearingDeg: bearing }, units));
}

/** Of a bearing and those at right angles to it the one nearest to another. */
function nearestQuarter(from: number, bearingDeg: number): number {
  const quarters = Math.round((from - bearingDeg) / 90);
  return bearingTenths(bearingDeg + 90 * quarters);
}

/** The bearings of the walls; null while one of them is no number. */
function bearingsOf(draft: Draft): number[] | null {
  const bearings = listAt(draft, 'walls').map((_, k) => valueAt(draft, `walls.${k}.azimuthDeg`));
  return bearings.every((bearing) => typeof bearing === 'number' && Number.isFinite(bearing))
    ? (bearings as number[])
    : null;
}
