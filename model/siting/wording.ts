/** The decision in words: one sentence for the site, one for each wall. */
import type { CivilDay } from '../civil-day.ts';
import { compassPoint } from '../compass.ts';
import { openFaces } from '../faces.ts';
import type { Site, Wall } from '../site.ts';
import { covers } from '../thermal/hood.ts';
import { formatQuantity, type UnitSystem } from '../units.ts';
import { coldDecides, decidingMarginK, type Finding, type WallDay } from './results.ts';
import type { Touch } from './touch.ts';

export interface Candidate {
  readonly wall: Wall;
  readonly findings: Finding[];
  readonly feasible: boolean;
  readonly day: WallDay;
}

export interface WordingContext {
  /** In the order of the ranking. */
  readonly candidates: readonly Candidate[];
  readonly best: Candidate | null;
  readonly site: Site;
  readonly civil: CivilDay;
  readonly units: UnitSystem;
}

/** What a limit is compared with, as a subject of a sentence. */
const LIMITED: Readonly<Record<Site['limits']['refersTo'], string>> = {
  insideAir: 'the air inside',
  outsideAir: 'the outside air',
  componentCase: 'the electronics',
};

/** Temperatures closer than this are called equal, K. */
const ALIKE_K = 0.5;

/** The decision for the site, in a sentence or two. */
export function verdictOn(context: WordingContext): string {
  const { candidates, best, site, units } = context;
  if (best === null) {
    const coolest = candidates[0];
    const why = coolest === undefined ? '' : ` The coolest, ${quoted(coolest)}, is out: ${failures(coolest)}.`;
    return `No wall satisfies the constraints.${why}`;
  }
  const margin = decidingMarginK(best.day);
  const cold = coldDecides(best.day);
  const temperature = (c: number) => formatQuantity('temperature', c, units);
  const limitC = cold ? site.limits.minC : site.limits.maxC;
  const extremeC = cold ? site.limits.minC + best.day.coldMarginK : site.limits.maxC - best.day.marginK;
  const reaches = `${LIMITED[site.limits.refersTo]} ${cold ? 'falls to' : 'reaches'} ${temperature(extremeC)}`;
  const room = difference(Math.abs(margin), units);
  const decision =
    margin >= 0
      ? `Use ${quoted(best)}: ${reaches}, ${room} inside the limit of ${temperature(limitC)}.`
      : `No permitted wall stays within ${temperature(limitC)}: on the least bad one, ${quoted(best)}, ${reaches}, ${room} past the limit.`;
  return `${decision}${openChecks(best)}${coolerButOut(context, best)}${sunNote(site)}`;
}

/** Open checks that the verdict spells out; the others stand in the list of the wall. */
const MOST_SPELT_OUT = 2;

/** A wall whose distances nobody entered is no answer yet, and what is too short is to be put right. */
function openChecks({ findings }: Candidate): string {
  const wrong = findings.filter(({ status }) => status === 'fail').map(({ text }) => text);
  const open = findings.filter(({ status }) => status === 'look');
  const first = open.filter(({ hard }) => hard).slice(0, MOST_SPELT_OUT);
  const others = open.length - first.length;
  const checks = others === 1 ? '1 check' : `${others} checks`;
  const parts: string[] = [];
  if (wrong.length > 0) parts.push(` To be put right: ${wrong.join('; ')}.`);
  if (first.length > 0) {
    const rest = others === 0 ? '' : `; and ${checks} more on site`;
    parts.push(` To be checked first: ${first.map(({ text }) => text).join('; ')}${rest}.`);
  } else if (open.length > 0) parts.push(` On site remain to be done: ${checks}.`);
  return parts.join('');
}

/** Names the coolest wall that the constraints rule out, where it would have been cooler. */
function coolerButOut({ candidates, units }: WordingContext, best: Candidate): string {
  const out = candidates.find(
    ({ feasible, day }) => !feasible && best.day.peakInsideAirC - day.peakInsideAirC > ALIKE_K,
  );
  if (out === undefined) return '';
  const gain = difference(best.day.peakInsideAirC - out.day.peakInsideAirC, units);
  return ` ${capital(quoted(out))} would be ${gain} cooler, but is out: ${failures(out)}.`;
}

/** A limit on outside air says nothing of the sun: every wall has the same margin, and the box is hotter than its rating thinks. */
function sunNote(site: Site): string {
  if (site.limits.refersTo !== 'outsideAir') return '';
  return ' The limit refers to outside air, which is the same on every wall: walls are ranked by the air inside, and whether the rating covers a sunlit box is for its maker to say.';
}

const FACE_WORDS: Readonly<Record<Touch['face'], string>> = {
  front: 'The front',
  left: 'The left side',
  right: 'The right side',
  top: 'The lid',
  bottom: 'The underside',
  back: 'The back',
};

/** A caution about the hottest part of the outside; empty where a minute of touch does not burn. */
export function touchText({ peakSkinC, face, burnsWithinS }: Touch, units: UnitSystem): string {
  if (burnsWithinS === null) return '';
  const within = burnsWithinS === 60 ? 'a minute' : `${burnsWithinS} second${burnsWithinS === 1 ? '' : 's'}`;
  const hot = formatQuantity('temperature', peakSkinC, units);
  return `${FACE_WORDS[face]} of the box reaches ${hot}: touching it for ${within} may burn (ISO 13732-1, value from memory).`;
}

/** Why a wall stands where it stands. */
export function reasonFor(candidate: Candidate, { best, civil, units, site }: WordingContext): string {
  const { day, wall } = candidate;
  const peak = formatQuantity('temperature', day.peakInsideAirC, units);
  const at = civil.clockTime(day.peakAtUtc);
  const facts = `Faces ${compassPoint(wall.azimuthDeg)}: ${sunText(day, site)}; air inside peaks at ${peak} at ${at}.`;
  const watts = sunAtPeakText(day);
  if (!candidate.feasible) return `Not permitted: ${failures(candidate)}. ${facts} ${watts}`;
  if (best === null || candidate === best) return `First of the permitted walls. ${facts} ${watts}`;
  return `${comparedWith(best, candidate, units)} ${facts} ${watts}`;
}

function comparedWith(best: Candidate, other: Candidate, units: UnitSystem): string {
  const hotterK = other.day.peakInsideAirC - best.day.peakInsideAirC;
  if (Math.abs(hotterK) < ALIKE_K) return `About as warm as ${quoted(best)}.`;
  return `${capital(difference(Math.abs(hotterK), units))} ${hotterK > 0 ? 'hotter' : 'cooler'} than ${quoted(best)}.`;
}

function sunText(day: WallDay, { box }: Site): string {
  if (openFaces(box.mount).every((face) => covers(box.hood, face))) return 'the hood keeps the sun off the box';
  return day.sunHours === 0 ? 'no direct sun on the box' : `${day.sunHours.toFixed(1)} h of direct sun on the box`;
}

function sunAtPeakText({ ledgerAtPeak: ledger }: WallDay): string {
  const direct = Math.round(ledger.sunBeam);
  const other = Math.round(ledger.sunDiffuse + ledger.sunReflected);
  const inside = Math.round(ledger.dissipation);
  return `Then it takes in ${direct} W of direct sun and ${other} W from sky, ground and wall, beside ${inside} W of its own.`;
}

const quoted = ({ wall }: Candidate): string => `wall "${wall.name}"`;

const failures = ({ findings }: Candidate): string =>
  findings
    .filter(({ status, hard }) => status === 'fail' && hard)
    .map(({ text }) => text)
    .join('; ');

const difference = (kelvins: number, units: UnitSystem): string =>
  formatQuantity('temperatureDifference', kelvins, units);

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
