/**
 * What a wall must satisfy whatever its temperature: earth, cable, working height, clearances. What nobody entered is a
 * thing to look at on site and never passes unseen.
 */
import type { Site, Wall } from '../site.ts';
import { formatQuantity, type UnitSystem } from '../units.ts';
import { gaugeWithin } from '../wire-gauge.ts';
import type { SiteDay } from './design-day.ts';
import { copperRunOhm } from './earth-conductor.ts';
import type { Finding, FindingStatus } from './results.ts';
import { type SitingCheck, type SitingRules, USUAL_SITING_RULES } from './siting-rules.ts';

export interface CheckContext {
  readonly units: UnitSystem;
  /** The day whose hottest air the earthing conductor is taken to have. */
  readonly day: SiteDay;
  readonly rules?: SitingRules | undefined;
}

/** Whether no check bars a wall: a hard one that fails does. */
export function isPermitted(findings: readonly Finding[]): boolean {
  return !findings.some(({ status, hard }) => status === 'fail' && hard);
}

/** Checks a wall against the rules and the constraints of its site. */
export function sitingFindings(site: Site, wall: Wall, context: CheckContext): Finding[] {
  const { checks } = context.rules ?? USUAL_SITING_RULES;
  const answered = [
    ...earthAnswers(site, wall, context),
    ...reachAnswers(site, wall, context),
    ...clearanceAnswers(wall, context),
  ];
  return answered.map(({ check, status, text }) => {
    const { hard, origin } = checks[check];
    return { check, status, text, hard, origin };
  });
}

type Answer = Pick<Finding, 'check' | 'status' | 'text'>;

function earthAnswers(site: Site, wall: Wall, { units, day, rules = USUAL_SITING_RULES }: CheckContext): Answer[] {
  const { checks } = rules;
  const { conductorMm2, electrodeDepthM } = site.earthing;
  const runM = wall.electrodeDistanceM;
  const maxM = site.constraints.maxElectrodeDistanceM;
  const length = lengthIn(units);
  const answers: Answer[] =
    maxM === null ? [] : [runAnswer('electrode', 'run to the earth electrode', { runM, maxM, length })];

  const least = checks.conductor.passFromMm2;
  if (conductorMm2 === null) {
    answers.push(look('conductor', `earthing conductor: size not entered; ${conductor(least, units)} or more passes`));
  } else {
    const status = fromBelow(conductorMm2, checks.conductor.failBelowMm2, least);
    const worded = { pass: 'is at least', look: 'is below the usual', fail: 'is far below the usual' }[status];
    answers.push({
      check: 'conductor',
      status,
      text: `earthing conductor: ${conductor(conductorMm2, units)} ${worded} ${conductor(least, units)}`,
    });
  }

  const { passUpToOhm, failAboveOhm } = checks.resistance;
  if (conductorMm2 === null || runM === null) {
    answers.push(look('resistance', 'resistance of the earthing run: needs its length and the size of its conductor'));
  } else {
    const copperC = Math.max(...day.steps.map(({ weather }) => weather.airC));
    const ohm = copperRunOhm({ lengthM: runM, areaMm2: conductorMm2, copperC });
    const status: FindingStatus = ohm <= passUpToOhm ? 'pass' : ohm <= failAboveOhm ? 'look' : 'fail';
    const at = formatQuantity('temperature', copperC, units, 0);
    const text = `resistance of the earthing run: ${ohms(ohm)} of copper at ${at}, ${status === 'pass' ? 'within' : 'above'} ${ohms(passUpToOhm)}; joints come on top`;
    answers.push({ check: 'resistance', status, text });
  }

  const depth = checks.electrodeDepth;
  if (electrodeDepthM === null) {
    const text = `depth of the earth electrode: not entered; measure the electrode's resistance to earth where ${length(depth.passFromM)} cannot be seen`;
    answers.push(look('electrodeDepth', text));
  } else {
    const status = fromBelow(electrodeDepthM, depth.failBelowM, depth.passFromM);
    const worded = status === 'pass' ? 'reaches' : 'falls short of';
    const measure = status === 'pass' ? '' : "; measure the electrode's resistance to earth";
    const text = `depth of the earth electrode: ${length(electrodeDepthM)} ${worded} ${length(depth.passFromM)}${measure}`;
    answers.push({ check: 'electrodeDepth', status, text });
  }
  return answers;
}

function reachAnswers(site: Site, wall: Wall, { units, rules = USUAL_SITING_RULES }: CheckContext): Answer[] {
  const { maxCableDistanceM: maxM, mountHeightM: heights } = site.constraints;
  const length = lengthIn(units);
  const answers: Answer[] = [cableAnswer(wall.cableDistanceM, maxM, rules.checks.cable.slackM, length)];
  if (heights !== null) {
    const [low, high] = heights;
    const within = site.box.mountHeightM >= low && site.box.mountHeightM <= high;
    answers.push({
      check: 'mountHeight',
      status: within ? 'pass' : 'fail',
      text: `mounting height ${length(site.box.mountHeightM)} is ${within ? 'within' : 'outside'} ${length(low)} to ${length(high)}`,
    });
  }
  return answers;
}

function cableAnswer(runM: number | null, maxM: number | null, slackM: number, length: Length): Answer {
  const what = 'run to the incoming cable';
  if (maxM === null) {
    const run = runM === null ? 'not entered' : length(runM);
    return look('cable', `${what}: ${run}; how far the cable reaches is not entered`);
  }
  if (runM !== null && runM <= maxM && runM + slackM > maxM) {
    return look(
      'cable',
      `${what}: ${length(runM)} is within ${length(maxM)}, but leaves less than ${length(slackM)} of slack`,
    );
  }
  return runAnswer('cable', what, { runM, maxM, length });
}

const CLEARANCES = [
  ['meter', 'meterM', 'clearance to electricity meter and panel'],
  ['gasVent', 'gasVentM', 'clearance to gas meter, regulator and vent'],
  ['exhaust', 'exhaustM', 'clearance to dryer exhaust, flue and fan outlet'],
  ['sprinkler', 'sprinklerM', 'clearance to sprinkler and hose tap'],
] as const;

function clearanceAnswers(wall: Wall, { units, rules = USUAL_SITING_RULES }: CheckContext): Answer[] {
  const length = lengthIn(units);
  return CLEARANCES.map(([check, key, what]) => {
    const { passFromM, failBelowM } = rules.checks[check];
    const clearM = wall.clearances[key];
    if (clearM === null) return look(check, `${what}: not entered; ${length(passFromM)} or more passes`);
    const status = fromBelow(clearM, failBelowM, passFromM);
    const text = `${what}: ${length(clearM)} is ${status === 'pass' ? 'at least' : 'less than'} ${length(passFromM)}`;
    return { check, status, text };
  });
}

type Length = (metres: number) => string;

const lengthIn =
  (units: UnitSystem): Length =>
  (metres) =>
    formatQuantity('length', metres, units);

function runAnswer(
  check: 'electrode' | 'cable',
  what: string,
  { runM, maxM, length }: { runM: number | null; maxM: number; length: Length },
): Answer {
  if (runM === null) return look(check, `${what}: not entered; up to ${length(maxM)} is permitted`);
  const within = runM <= maxM;
  return {
    check,
    status: within ? 'pass' : 'fail',
    text: `${what}: ${length(runM)} ${within ? 'is within' : 'exceeds'} ${length(maxM)}`,
  };
}

const look = (check: SitingCheck, text: string): Answer => ({ check, status: 'look', text });

function fromBelow(value: number, failBelow: number, passFrom: number): FindingStatus {
  if (value >= passFrom) return 'pass';
  return value < failBelow ? 'fail' : 'look';
}

/** Who reads US units buys by gauge, who reads metric ones by area; the other stands beside it. */
function conductor(mm2: number, units: UnitSystem): string {
  const [area, gauge] = [formatQuantity('conductorArea', mm2, 'metric'), gaugeWithin(mm2)];
  return units === 'us' ? `${gauge} (${area})` : `${area} (${gauge})`;
}

/** Resistances of a run are a few hundredths of an ohm. */
const ohms = (ohm: number): string => `${Number(ohm.toPrecision(2))} Ω`;
