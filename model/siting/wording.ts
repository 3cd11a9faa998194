/** Why each wall stands where it stands, and what the words for walls have in common. */
import { capital } from '../capital.ts';
import type { CivilDay } from '../civil-day.ts';
import { compassPoint } from '../compass.ts';
import { openFaces } from '../faces.ts';
import type { Site, Wall } from '../site.ts';
import { covers } from '../thermal/hood.ts';
import { formatQuantity, type UnitSystem } from '../units.ts';
import type { Finding, WallDay } from './results.ts';
import { SUNSHINE } from './sunshine.ts';
import type { Touch } from './touch.ts';

export interface Candidate<Day = WallDay> {
  readonly wall: Wall;
  readonly findings: Finding[];
  readonly feasible: boolean;
  readonly day: Day;
}

export interface WordingContext {
  /** In the order of the ranking. */
  readonly candidates: readonly Candidate[];
  readonly best: Candidate | null;
  readonly site: Site;
  readonly civil: CivilDay;
  readonly units: UnitSystem;
}

/** Temperatures closer than this are called equal, K. */
export const ALIKE_K = 0.5;

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
  return day.sunHours === 0 ? `no ${SUNSHINE} on the box` : `${day.sunHours.toFixed(1)} h of ${SUNSHINE} on the box`;
}

function sunAtPeakText({ ledgerAtPeak: ledger }: WallDay): string {
  const direct = Math.round(ledger.sunBeam);
  const other = Math.round(ledger.sunDiffuse + ledger.sunReflected);
  const inside = Math.round(ledger.dissipation);
  return `Then it takes in ${direct} W of direct sun and ${other} W from sky, ground and wall, beside ${inside} W of its own.`;
}

export const quoted = ({ wall }: Candidate): string => `wall "${wall.name}"`;

export const failures = ({ findings }: Candidate): string =>
  findings
    .filter(({ status, hard }) => status === 'fail' && hard)
    .map(({ text }) => text)
    .join('; ');

export const difference = (kelvins: number, units: UnitSystem): string =>
  formatQuantity('temperatureDifference', kelvins, units);
