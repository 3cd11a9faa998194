/** One instant of the sun in words. */
import { compassPoint, FACES, type Face, type SunDiagram, type SunOnBox, type WallPlan } from '../../../model/index.ts';
import { placeClock } from '../place-clock.ts';
import { hiderOf } from './lit-times.ts';
import { listed, type Thing, thingOf } from './things.ts';

const FACE_WORDS: Record<Face, string> = {
  front: 'the front',
  left: 'the left side',
  right: 'the right side',
  top: 'the top',
  bottom: 'the bottom',
  back: 'the back',
};

interface Around {
  readonly plan: WallPlan;
  readonly diagram: SunDiagram;
  readonly things: readonly Thing[];
}

/** "15:20: sun 62° high in the WSW; it reaches the front and the left side (80 % of the sun on a box that stands alone)." */
export function sunWords(sun: SunOnBox, { plan, diagram, things }: Around): string {
  const time = placeClock(plan.timeZone).time(sun.utc);
  const where = compassPoint(sun.azimuthDeg);
  if (sun.elevationDeg <= 0) return `${time}: the sun is below the horizon, in the ${where}.`;
  const place = `${time}: sun ${Math.round(sun.elevationDeg)}° high in the ${where}`;
  const faces = FACES.filter((face) => sun.reaches[face] > 0).map((face) => FACE_WORDS[face]);
  if (faces.length === 0) {
    const hider = hiderOf(sun, diagram.silhouettes);
    const name = hider && thingOf(things, hider)?.name;
    return `${place}; none reaches the box${name === undefined ? '' : `, hidden by ${name}`}.`;
  }
  const share = Math.max(1, Math.round(sun.lit * 100));
  return `${place}; it reaches ${listed(faces)} (${share}\u00a0% of what it would give a box that stands alone).`;
}
