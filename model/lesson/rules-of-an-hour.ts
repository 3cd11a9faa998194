/** What may be said of the sun on fronts or faces beside each other at one hour. */
import { compassPoint } from '../compass.ts';
import type { Face } from '../faces.ts';
import type { PlayedDay } from '../siting/played-day.ts';
import { formatQuantity } from '../units.ts';
import { hourText } from './ask.ts';
import { faceSunWm2, stepAtHour } from './day-facts.ts';
import { share } from './pair-facts.ts';
import type { Rule } from './rule.ts';

/** A front or face at the hour. */
export interface LitPlane {
  /** "the front at “east”", as a subject. */
  readonly name: string;
  /** All of the sun on it, W/m2. */
  readonly sunWm2: number;
  /** Share of the direct beam that falls on each of its square metres: how squarely it is met, and how much of it is lit. */
  readonly beamShare: number;
}

export interface SunAtHour {
  readonly hour: number;
  readonly step: number;
  /** A day of the place. */
  readonly played: PlayedDay;
  /** The sunniest first. */
  readonly planes: readonly LitPlane[];
}

/** Faces as a person names them. */
const FACE_NAMES: Readonly<Record<Face, string>> = {
  front: 'front',
  left: 'left side',
  right: 'right side',
  top: 'lid',
  bottom: 'underside',
  back: 'back',
};

/** The fronts at some walls, the sunniest first. */
export function frontsAtHour(walls: readonly PlayedDay[], hour: number): SunAtHour {
  const planes = walls.map((played) =>
    litPlane(played, 'front', stepAtHour(played, hour), `the front at "${played.wall.name}"`),
  );
  const first = walls[0] as PlayedDay;
  return { hour, step: stepAtHour(first, hour), played: first, planes: bySun(planes) };
}

/** Some faces of one box, the sunniest first. */
export function facesAtHour(played: PlayedDay, faces: readonly Face[], hour: number): SunAtHour {
  const step = stepAtHour(played, hour);
  const planes = faces.map((face) => litPlane(played, face, step, `the ${FACE_NAMES[face]}`));
  return { hour, step, played, planes: bySun(planes) };
}

const bySun = (planes: readonly LitPlane[]): LitPlane[] => [...planes].sort((a, b) => b.sunWm2 - a.sunWm2);

const litPlane = (played: PlayedDay, face: Face, step: number, name: string): LitPlane => ({
  name,
  sunWm2: faceSunWm2(played, face, step),
  beamShare: played.litCosine[face][step] as number,
});

/** Less of the beam than this is called none of it. */
const SOME_BEAM = 0.005;

const most = ({ planes }: SunAtHour): LitPlane => planes[0] as LitPlane;
const byBeam = ({ planes }: SunAtHour): LitPlane[] => [...planes].sort((a, b) => b.beamShare - a.beamShare);

export const HOUR_RULES: readonly Rule<SunAtHour>[] = [
  {
    id: 'sun-meets-it-most-squarely',
    condition: 'what gets the most sun at the hour gets the largest share of the direct beam, too',
    where: 'everywhere',
    holds: (hour) => most(hour).beamShare >= SOME_BEAM && byBeam(hour)[0] === most(hour),
    text: (hour, units) => {
      const [, second] = byBeam(hour);
      const next =
        second === undefined || second.beamShare < SOME_BEAM
          ? 'and no other gets any of it'
          : `and one of ${second.name} ${share(second.beamShare)}`;
      return `${sunStands(hour, units)}. The more squarely it meets a face, the more falls on it: a square metre of ${most(hour).name} gets ${share(most(hour).beamShare)} of the direct beam, ${next}.`;
    },
  },
  {
    id: 'no-beam-at-that-hour',
    condition: 'at the hour no direct sun falls on any of them, though the sun is up',
    where: 'everywhere',
    holds: ({ planes }) =>
      planes.every(({ beamShare }) => beamShare < SOME_BEAM) && planes.some(({ sunWm2 }) => sunWm2 > 0),
    text: (hour, units) =>
      `${sunStands(hour, units)}, behind all of them or hidden: what counts is the light of sky, ground and wall, of which ${most(hour).name} gets the most.`,
  },
];

/** "At 09:00 the sun stands in the E, 43° high". */
function sunStands({ hour, step, played }: SunAtHour, units: Parameters<typeof formatQuantity>[2]): string {
  const { azimuthDeg = 0, elevationDeg = 0 } = played.suns[step] ?? {};
  return `At ${hourText(hour)} the sun stands in the ${compassPoint(azimuthDeg)}, ${formatQuantity('angle', elevationDeg, units, 0)} high`;
}
