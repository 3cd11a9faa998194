/** What stands where the box hangs, or grows upside down, is a slip of the pen. */
import type { RawSite } from './raw-site.ts';
import { type Problem, problem, shown } from './site-error.ts';

/** Room that the box takes, in metres to the right of its middle, out from the wall, and up from the ground. */
export interface BoxRoom {
  readonly halfWidthM: number;
  /** 0 for a box on the wall: nothing stands in the gap behind it. */
  readonly backM: number;
  readonly frontM: number;
  readonly bottomM: number;
  readonly topM: number;
}

/** The room of the box; undefined while one of its sizes is missing or wrong. */
export function boxRoom(raw: RawSite): BoxRoom | undefined {
  const [width, height, depth] = ['widthM', 'heightM', 'depthM'].map((key) => raw.number(`box.${key}`));
  const onPost = raw.at('box.mount') === 'post';
  const mount = raw.numberOrUsual('box.mountHeightM');
  const backM = raw.numberOrUsual(onPost ? 'box.postDistanceM' : 'box.standOffM');
  if (width === undefined || height === undefined || depth === undefined) return undefined;
  if (mount === undefined || backM === undefined) return undefined;
  return {
    halfWidthM: width / 2,
    backM: onPost ? backM : 0,
    frontM: backM + depth,
    bottomM: mount - height / 2,
    topM: mount + height / 2,
  };
}

/** The problems of what stands before one wall. */
export function obstructionProblems(raw: RawSite, wallPath: string): Problem[] {
  const list = raw.at(`${wallPath}.obstructions`);
  const room = boxRoom(raw);
  if (!Array.isArray(list)) return [];
  return list.flatMap((_, index): Problem[] => {
    const path = `${wallPath}.obstructions.${index}`;
    const number = (key: string): number => raw.numberOrUsual(`${path}.${key}`) ?? Number.NaN;
    const found: Problem[] = [];
    if (raw.at(`${path}.kind`) === 'tree' && number('heightM') <= number('crownBaseM')) {
      found.push(problem(`${path}.heightM`, shown(raw.at(`${path}.heightM`)), 'the tree ends below its crown', ''));
    }
    const cut = room && cutThrough(String(raw.at(`${path}.kind`)), number, room);
    if (cut) {
      const at = `${path}.${cut.key}`;
      found.push(problem(at, shown(raw.at(at)), 'cuts through the box', `from ${cut.fromM.toFixed(2)} m`));
    }
    return found;
  });
}

/** The field that would have to grow for the thing to clear the box, and to what; undefined where it is clear. */
function cutThrough(
  kind: string,
  number: (key: string) => number,
  room: BoxRoom,
): { key: string; fromM: number } | undefined {
  const overlaps = (low: number, high: number, roomLow: number, roomHigh: number) => low < roomHigh && high > roomLow;
  const beside = (middle: number, half: number) => Math.abs(middle) < room.halfWidthM + half;
  const { backM, frontM, bottomM, topM } = room;
  if (number('heightM') <= bottomM) return undefined;
  if (kind === 'sideWall') {
    const cuts = number('distanceM') < room.halfWidthM && number('depthM') > backM;
    return cuts ? { key: 'distanceM', fromM: room.halfWidthM } : undefined;
  }
  if (kind === 'front') {
    const distance = number('distanceM');
    const cuts = beside(number('offsetM'), number('widthM') / 2) && distance > backM && distance < frontM;
    return cuts ? { key: 'distanceM', fromM: frontM } : undefined;
  }
  const out = number('outM');
  if (kind === 'block') {
    const cuts = beside(number('rightM'), number('widthM') / 2) && overlaps(out, out + number('depthM'), backM, frontM);
    return cuts ? { key: 'outM', fromM: frontM } : undefined;
  }
  if (kind !== 'tree') return undefined;
  const right = number('rightM');
  const trunk = number('trunkDiameterM') / 2;
  const base = number('crownBaseM');
  if (base > bottomM && beside(right, trunk) && overlaps(out - trunk, out + trunk, backM, frontM)) {
    return { key: 'outM', fromM: frontM + trunk };
  }
  // The crown fills the ellipsoid between its base and its top: does the nearest point of the box lie within?
  const crown = number('crownDiameterM') / 2;
  const [middle, half] = [(base + number('heightM')) / 2, (number('heightM') - base) / 2];
  const beyond = (centre: number, low: number, high: number) => Math.max(low - centre, 0, centre - high);
  const across = beyond(right, -room.halfWidthM, room.halfWidthM) / crown;
  const upwards = beyond(middle, bottomM, topM) / half;
  const outwards = beyond(out, backM, frontM) / crown;
  if (across ** 2 + upwards ** 2 + outwards ** 2 >= 1) return undefined;
  return { key: 'outM', fromM: frontM + crown * Math.sqrt(Math.max(0, 1 - across ** 2 - upwards ** 2)) };
}
