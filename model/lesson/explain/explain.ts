/** Opens the figures of a lesson: which there are, and the equation behind each. */
import { type Face, openFaces } from '../../faces.ts';
import { problem, SiteError, shown } from '../../site-error.ts';
import { LEDGER_WORDS } from '../../siting/ledger-words.ts';
import type { PlayedDay } from '../../siting/played-day.ts';
import { LEDGER_PATHS, type LedgerPath } from '../../siting/results.ts';
import { insidePeakStep } from '../day-facts.ts';
import { explainBatteryNow, explainBatteryYears, explainWear, explainWearNow } from './explain-ageing.ts';
import { explainHoursOver, explainInsideAir, explainMargin, explainOutsideAir } from './explain-air.ts';
import { bareFaces, explainCoefficient, explainStillAir } from './explain-coefficient.ts';
import { explainAbsorbed, explainPath, explainPathAt, nodesOf, pathFigure } from './explain-ledger.ts';
import {
  explainBeam,
  explainDirect,
  explainGlobal,
  explainPressure,
  explainSky,
  explainSunHeight,
} from './explain-sun.ts';
import type { Explanation } from './explanation.ts';
import { nodeName } from './node-names.ts';

/** A figure that can be opened. */
export interface Explained {
  readonly what: string;
  readonly label: string;
  /** Whether it is one of the whole day, the same at every step. */
  readonly wholeDay: boolean;
}

type Make = (played: PlayedDay, step: number) => Explanation | null;

interface Entry extends Explained {
  readonly make: Make;
}

const entry = (what: string, label: string, make: Make, wholeDay = false): Entry => ({ what, label, make, wholeDay });

/** Every figure of a played day that can be opened, in the order of a lesson. */
function entries(played: PlayedDay): Entry[] {
  const paths = LEDGER_PATHS.filter((path) => played.ledgers.some((ledger) => ledger[path] !== 0));
  const open = openFaces(played.site.box.mount);
  const bare = bareFaces(played);
  return [
    entry('insideAir', 'temperature of the air inside', explainInsideAir),
    entry('margin', 'margin to the upper limit', explainMargin, true),
    entry('hoursOverLimit', 'hours over the limit', explainHoursOver, true),
    entry('outsideAir', 'temperature of the outside air', explainOutsideAir),
    ...paths.map((path) => entry(pathFigure(path), LEDGER_WORDS[path], (day, step) => explainPath(day, path, step))),
    ...paths.flatMap((path) => pathEntries(played, path)),
    ...open.map((face) =>
      entry(`absorbed:${face}`, `sun taken in by ${nodeName(face)}`, ofFace(explainAbsorbed, face)),
    ),
    ...open.map((face) => entry(`beam:${face}`, `direct sun on ${nodeName(face)}`, ofFace(explainBeam, face))),
    ...bare.map((face) =>
      entry(`coefficient:${face}`, `convection coefficient of ${nodeName(face)}`, ofFace(explainCoefficient, face)),
    ),
    ...bare
      .filter((face) => face !== 'top' && face !== 'bottom')
      .map((face) =>
        entry(`stillAir:${face}`, `the same in still air, ${nodeName(face)}`, ofFace(explainStillAir, face)),
      ),
    entry('sunHeight', 'height of the sun', explainSunHeight),
    entry('direct', 'direct sun of the clear sky', explainDirect),
    entry('global', 'sun and sky on the horizontal', explainGlobal),
    entry('sky', 'long-wave radiation of the sky', explainSky),
    entry('pressure', 'pressure of the air', explainPressure, true),
    entry('wearNow', 'wear of the electronics at this moment', explainWearNow),
    entry('wear', 'wear of the electronics over the day', explainWear, true),
    entry('batteryNow', 'ageing of a battery at this moment', explainBatteryNow),
    entry('batteryYears', 'life of a battery', explainBatteryYears, true),
  ];
}

const ofFace =
  (make: (played: PlayedDay, face: Face, step: number) => Explanation, face: Face): Make =>
  (played, step) =>
    make(played, face, step);

/** A path face by face, where it is made of links. */
function pathEntries(played: PlayedDay, path: LedgerPath): Entry[] {
  return nodesOf(played, path).map((node) =>
    entry(pathFigure(path, node), `${LEDGER_WORDS[path]}, through ${nodeName(node)}`, (day, step) =>
      explainPathAt(day, path, node, step),
    ),
  );
}

/** The figures of a day that can be opened. */
export function explainable(played: PlayedDay): Explained[] {
  return entries(played).map(({ what, label, wholeDay }) => ({ what, label, wholeDay }));
}

/**
 * Opens a figure at a step, that of the peak inside where none is given. Null where there is nothing to open: the clear sky
 * at night or on a tabulated day.
 * @throws SiteError for a figure that the day has not
 */
export function explain(played: PlayedDay, what: string, step: number = insidePeakStep(played)): Explanation | null {
  const all = entries(played);
  const found = all.find((one) => one.what === what);
  if (found === undefined) {
    const allowed = all.map((one) => one.what).join(', ');
    throw new SiteError([problem('what', shown(what), `there is no figure ${shown(what)}`, allowed)]);
  }
  if (!Number.isInteger(step) || step < 0 || step >= played.suns.length) {
    throw new SiteError([
      problem('step', shown(step), `${shown(step)} is no step of the day`, `0 to ${played.suns.length - 1}`),
    ]);
  }
  return found.make(played, step);
}
