/** Answers that are a wall or a face: the hottest, the sunniest, and whether the sun reaches one. */
import { type Face, openFaces } from '../faces.ts';
import { problem, SiteError } from '../site-error.ts';
import type { PlayedDay } from '../siting/played-day.ts';
import { formatQuantity } from '../units.ts';
import { type Found, ofOne, ofWalls, peakText, wallLabel } from './answer.ts';
import { hourText } from './ask.ts';
import { bothUnits, hoursText, kelvins } from './both-units.ts';
import { directSunSteps, faceSunWm2, hoursOf, stepAtHour, sunniestFace } from './day-facts.ts';
import { statementsOf } from './rule.ts';
import { WALL_RULES } from './rules-of-a-wall.ts';
import { facesAtHour, frontsAtHour, HOUR_RULES } from './rules-of-an-hour.ts';
import { WALLS_RULES } from './rules-of-walls.ts';

/** A wall this near the hottest or coolest counts as near, K. */
const NEAR_WALL_K = 1;

/** A face or wall with this share of the most sun counts as near. */
const NEAR_SUN = 0.9;

/** @param ordered the wall asked for first */
export function wallByPeak(ordered: readonly PlayedDay[]): Found {
  const first = ordered[0] as PlayedDay;
  const near = ordered
    .slice(1)
    .filter(({ result }) => Math.abs(result.peakInsideAirC - first.result.peakInsideAirC) <= NEAR_WALL_K);
  return {
    ...ofWalls(ordered),
    statements: [...statementsOf(WALLS_RULES, ordered), ...statementsOf(WALL_RULES, first)],
    target: { type: 'choice', right: [first.wall.name], near: near.map(({ wall }) => wall.name) },
    computed: bothUnits((units) => `${first.wall.name}: ${peakText(first)[units]}`),
    nearMeans: bothUnits((units) => `a wall within ${kelvins(NEAR_WALL_K, units)} of it counts as near`),
  };
}

export function sunniestWall({ hour, id }: { hour: number; id: string }, walls: readonly PlayedDay[]): Found {
  const sun = (played: PlayedDay): number => faceSunWm2(played, 'front', stepAtHour(played, hour));
  const ordered = [...walls].sort((a, b) => sun(b) - sun(a));
  const first = ordered[0] as PlayedDay;
  if (sun(first) <= 0) throw darkness(id, hour);
  const text = (played: PlayedDay) => bothUnits((units) => formatQuantity('irradiance', sun(played), units));
  return {
    ...ofWalls(ordered),
    statements: [...statementsOf(HOUR_RULES, frontsAtHour(ordered, hour)), ...statementsOf(WALLS_RULES, ordered)],
    figures: ordered.map((played) => ({ label: wallLabel(played), text: text(played) })),
    target: { type: 'choice', right: [first.wall.name], near: nearSun(ordered.map((p) => [p.wall.name, sun(p)])) },
    computed: bothUnits((units) => `${first.wall.name}: ${text(first)[units]} at ${hourText(hour)}`),
    nearMeans: NEAR_SUN_TEXT,
  };
}

export function faceOfTheSun({ hour, id }: { hour: number; id: string }, played: PlayedDay): Found {
  const step = stepAtHour(played, hour);
  const sun = (face: Face): number => faceSunWm2(played, face, step);
  const first = sunniestFace(played, step);
  if (sun(first) <= 0) throw darkness(id, hour);
  const faces = [...openFaces(played.site.box.mount)].sort((a, b) => sun(b) - sun(a));
  const text = (face: Face) => bothUnits((units) => formatQuantity('irradiance', sun(face), units));
  return {
    ...ofOne(played),
    statements: [...statementsOf(HOUR_RULES, facesAtHour(played, faces, hour)), ...statementsOf(WALL_RULES, played)],
    figures: faces.map((face) => ({ label: bothUnits(() => face), text: text(face) })),
    target: { type: 'choice', right: [first], near: nearSun(faces.map((face) => [face, sun(face)])) },
    computed: bothUnits((units) => `${first}: ${text(first)[units]} at ${hourText(hour)}`),
    nearMeans: NEAR_SUN_TEXT,
  };
}

const NEAR_SUN_TEXT = bothUnits(() => `${NEAR_SUN * 100} % of the most sun or more counts as near`);

/** Those besides the first that get nearly as much. */
function nearSun([first, ...others]: (readonly [name: string, wm2: number])[]): string[] {
  const most = first?.[1] ?? 0;
  return others.filter(([, wm2]) => wm2 >= NEAR_SUN * most).map(([name]) => name);
}

function darkness(id: string, hour: number): SiteError {
  return new SiteError([
    problem(`question ${id}`, hourText(hour), `the sun is down at ${hourText(hour)}`, 'an hour of daylight'),
  ]);
}

export function sunOnWall(played: PlayedDay): Found {
  const { morning, afternoon } = directSunSteps(played, 'front');
  const before = morning.length > 0;
  const after = afternoon.length > 0;
  const right = before && after ? 'both' : before ? 'morning' : after ? 'afternoon' : 'never';
  const hours = `${hoursText(hoursOf(played, morning))} before and ${hoursText(hoursOf(played, afternoon))} after the sun's noon`;
  const near = right === 'both' ? ['morning', 'afternoon'] : right === 'never' ? [] : ['both'];
  return {
    ...ofOne(played),
    target: { type: 'choice', right: [right], near },
    computed: bothUnits(() => (right === 'never' ? 'No direct sun on the front at any hour.' : `Yes: ${hours}.`)),
    nearMeans: bothUnits(() => 'half of the truth counts as near; direct sun counts from 120 W/m² (WMO guide no. 8)'),
  };
}
