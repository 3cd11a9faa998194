/** The decision in words: what to do, how far it holds, and what stands against the other walls. */
import { capital } from '../capital.ts';
import type { Site } from '../site.ts';
import { formatQuantity, type UnitSystem } from '../units.ts';
import { evaluateColdNight } from './cold-night.ts';
import type { ChoiceConfidence } from './confidence.ts';
import type { WorstMonth } from './other-months.ts';
import type { Remedy, RemedyList } from './remedies.ts';
import { coldDecides, decidingMarginK, type Ranking, type WallDay } from './results.ts';
import { pastInMonth } from './wall-standing.ts';
import { ALIKE_K, type Candidate, difference, failures, quoted, type WordingContext } from './wording.ts';

/** What a limit is compared with, as a subject of a sentence, and how it goes up and down. */
const LIMITED: Readonly<Record<Site['limits']['refersTo'], { subject: string; reaches: string; falls: string }>> = {
  insideAir: { subject: 'the air inside', reaches: 'reaches', falls: 'falls' },
  outsideAir: { subject: 'the outside air', reaches: 'reaches', falls: 'falls' },
  componentCase: { subject: 'the electronics', reaches: 'reach', falls: 'fall' },
};

export interface VerdictWords {
  /** Which wall, and how far from the limit, in one sentence. */
  readonly decision: string;
  /** What goes with it, a sentence or two each: the next best wall, the cooler one that is out, what is to be checked. */
  readonly grounds: readonly string[];
  /** Whether the first wall keeps its lower limit on the design day and passes it in the coldest night. */
  readonly pastInColdestNight: boolean;
}

export function verdictOn(context: WordingContext): VerdictWords {
  const { candidates, best, site, units } = context;
  if (best === null) {
    const coolest = candidates[0];
    const grounds = coolest === undefined ? [] : [`The coolest, ${quoted(coolest)}, is out: ${failures(coolest)}.`];
    return { decision: 'No wall satisfies the constraints.', grounds, pastInColdestNight: false };
  }
  const { inside, reaches, room, limit } = extremeOn(best.day, site, units);
  const decision = inside
    ? `Use ${quoted(best)}: ${reaches}, ${room} inside the limit of ${limit}.`
    : `No permitted wall stays within ${limit}: on the least bad one, ${quoted(best)}, ${reaches}, ${room} past the limit.`;
  const coldNight = coldNightSentence(site, { name: best.wall.name, day: best.day }, units);
  const grounds = [coldNight, runnerUp(context, best), betterButOut(context, best), openChecks(best), sunNote(site)];
  return { decision, grounds: grounds.filter((text) => text !== ''), pastInColdestNight: coldNight !== '' };
}

/** What a day comes to on a wall, beside the limit that decides, in words. */
function extremeOn(day: Pick<WallDay, 'marginK' | 'coldMarginK'>, { limits }: Site, units: UnitSystem) {
  const cold = coldDecides(day);
  const temperature = (c: number) => formatQuantity('temperature', c, units);
  const extremeC = cold ? limits.minC + day.coldMarginK : limits.maxC - day.marginK;
  const marginK = decidingMarginK(day);
  const { subject, reaches, falls } = LIMITED[limits.refersTo];
  return {
    inside: marginK >= 0,
    reaches: `${subject} ${cold ? `${falls} to` : reaches} ${temperature(extremeC)}`,
    room: room(marginK, units),
    limit: temperature(cold ? limits.minC : limits.maxC),
  };
}

/** What a wall comes to that somebody chose against the ranking, in a sentence. */
export function chosenSentence(
  site: Site,
  { name, day }: { name: string; day: Pick<WallDay, 'marginK' | 'coldMarginK'> },
  units: UnitSystem,
): string {
  const { inside, reaches, room, limit } = extremeOn(day, site, units);
  return `Wall "${name}", chosen by hand: ${reaches}, ${room} ${inside ? 'inside' : 'past'} the limit of ${limit}.`;
}

/** The design day says nothing of the coldest night: told where a wall passes its lower limit then; empty where it does not. */
export function coldNightSentence(
  site: Site,
  { name, day }: { name: string; day: Pick<WallDay, 'marginK' | 'coldMarginK'> },
  units: UnitSystem,
): string {
  if (coldDecides(day)) return '';
  const { running, soaked } = evaluateColdNight(site, name);
  const [state, when] =
    running.marginK < 0 ? [running, 'while it runs'] : [soaked, 'after an outage, before it starts'];
  if (state.marginK >= 0) return '';
  const { limits } = site;
  const { subject, falls } = LIMITED[limits.refersTo];
  const temperature = (c: number) => formatQuantity('temperature', c, units);
  return (
    `Mind the cold: in the coldest night ${subject} ${falls} to ${temperature(limits.minC + state.marginK)} ${when}, ` +
    `${difference(-state.marginK, units)} past the lower limit of ${temperature(limits.minC)}.`
  );
}

/** What the person falls back on where the first wall turns out to be no good. */
function runnerUp({ candidates, units, site }: WordingContext, best: Candidate): string {
  if (candidates.length < 2) return '';
  const next = candidates.find(({ feasible }, k) => feasible && candidates[k] !== best);
  if (next === undefined) return 'No other wall is permitted.';
  const beside = coldDecides(best.day)
    ? besideInWords(
        next.day.coldMarginK - best.day.coldMarginK,
        ['warmer at its coldest', 'colder at its coldest'],
        units,
      )
    : besideInWords(next.day.peakInsideAirC - best.day.peakInsideAirC, ['hotter', 'cooler'], units);
  // Outside air is the same everywhere: its margin says nothing of this wall.
  const room = site.limits.refersTo === 'outsideAir' ? '' : `, ${roomWords(decidingMarginK(next.day), units)}`;
  return `Next best: ${quoted(next)}, ${beside}${room}.`;
}

function besideInWords(moreK: number, [more, less]: readonly [string, string], units: UnitSystem): string {
  if (Math.abs(moreK) < ALIKE_K) return 'about as warm';
  return `${difference(Math.abs(moreK), units)} ${moreK > 0 ? more : less}`;
}

/** How far from a limit: "4 °F"; "just" where that would read as nothing. */
function room(marginK: number, units: UnitSystem): string {
  const text = difference(Math.abs(marginK), units);
  return Number.parseFloat(text) === 0 ? 'just' : text;
}

const roomWords = (marginK: number, units: UnitSystem): string =>
  `${room(marginK, units)} ${marginK >= 0 ? 'inside' : 'past'} the limit`;

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
  if (wrong.length > 0) parts.push(`To be put right: ${wrong.join('; ')}.`);
  if (first.length > 0) {
    const rest = others === 0 ? '' : `; and ${checks} more on site`;
    parts.push(`To be checked first: ${first.map(({ text }) => text).join('; ')}${rest}.`);
  } else if (open.length > 0) parts.push(`On site remain to be done: ${checks}.`);
  return parts.join(' ');
}

/** Names the coolest wall that the constraints rule out, where it would have been cooler; the warmest where cold decides. */
function betterButOut({ candidates, units }: WordingContext, best: Candidate): string {
  const cold = coldDecides(best.day);
  const betterK = ({ day }: Candidate): number =>
    cold ? day.coldMarginK - best.day.coldMarginK : best.day.peakInsideAirC - day.peakInsideAirC;
  const out = candidates.find((candidate) => !candidate.feasible && betterK(candidate) > ALIKE_K);
  if (out === undefined) return '';
  const gain = difference(betterK(out), units);
  const how = cold ? 'warmer at its coldest' : 'cooler';
  return `${capital(quoted(out))} would be ${gain} ${how}, but is out: ${failures(out)}.`;
}

/** A limit on outside air says nothing of the sun: every wall has the same margin, and the box is hotter than its rating thinks. */
function sunNote(site: Site): string {
  if (site.limits.refersTo !== 'outsideAir') return '';
  return 'The limit refers to outside air, which is the same on every wall: walls are ranked by the air inside, and whether the rating covers a sunlit box is for its maker to say.';
}

const monthName = new Intl.DateTimeFormat('en-GB', { month: 'long', timeZone: 'UTC' });

/**
 * Where another month is worse for a wall than that of its design day, by more than counts or across the limit; empty where
 * none is.
 */
export function monthSentence(site: Site, worst: WorstMonth | null, units: UnitSystem): string {
  if (worst === null) return '';
  const acrossLimit = pastInMonth(worst) && worst.marginK + worst.worseK >= 0;
  if (worst.worseK <= ALIKE_K && !acrossLimit) return '';
  const { limits } = site;
  const { subject, reaches } = LIMITED[limits.refersTo];
  const month = monthName.format(Date.UTC(2026, worst.month - 1, 15));
  const though = worst.coolerAirK > 0 ? ', although the air outside is cooler' : '';
  const extreme = formatQuantity('temperature', limits.maxC - worst.marginK, units);
  return (
    `${worst.marginK < 0 ? 'Mind the season' : 'The season'}: on a clear day in ${month} ${subject} on wall "${worst.wall}" ${reaches} ${extreme}${though}, ` +
    `${roomWords(worst.marginK, units)}.`
  );
}

/** How far the decision holds while its inputs are out; empty where no wall is permitted. */
export function surenessSentence(choice: ChoiceConfidence, { best }: Pick<Ranking, 'best'>): string {
  const wall = choice.walls.find(({ name }) => name === best);
  if (wall === undefined) return '';
  const { samples } = choice;
  const inside = `In ${countOf(wall.withinShare, samples)} guesses of the inputs wall "${wall.name}" stays inside the limits on its design day`;
  // The only permitted wall is the best of them whatever the inputs are.
  if (choice.walls.length < 2) return `${inside}.`;
  const stays = wall.withinShare < 0.5 && wall.bestShare >= 0.5 ? ', but in ' : ', and in ';
  return `${inside}${stays}${countOf(wall.bestShare, samples)} it stays the best wall.`;
}

/** "93 of 100"; what is rare is not told as none, nor what is frequent as all. */
function countOf(share: number, samples: number): string {
  const count = Math.round(share * samples);
  if (count === 0) return share > 0 ? `fewer than 1 of ${samples}` : `none of ${samples}`;
  if (count === samples) return share < 1 ? `nearly all ${samples}` : `all ${samples}`;
  return `${count} of ${samples}`;
}

/**
 * What to do where the first wall of a ranking is past its limit or not permitted; empty where nothing needs to be done.
 * @param list what was tried on that wall
 */
export function wayOutSentence(site: Site, ranking: Ranking, list: RemedyList, units: UnitSystem): string {
  if (ranking.withinLimits) return '';
  const { least } = list;
  const named = `wall "${list.wall}"`;
  if (least !== null) {
    const start =
      ranking.best === null ? `What would make ${named} do` : `What suffices on ${named} ${leastEffortWords(list)}`;
    const permitted = ranking.best === null ? 'permitted and ' : '';
    const then = `then it is ${permitted}${roomWords(least.marginK, units)}`;
    return `${start}: ${least.text} (${effortWords(least)}); ${then}.${least.caution === '' ? '' : ` ${least.caution}`}`;
  }
  if (ranking.best === null) {
    return `Nothing that was tried at box and wall makes ${named} do: another wall, another earth electrode or another cable entry is needed.`;
  }
  if (site.limits.refersTo === 'outsideAir') {
    return 'Nothing done to box or wall changes the outside air: a unit with another limit is needed.';
  }
  const most = mostGained(list);
  const gained = most === null ? '' : ` The most, ${most.text}, leaves it ${roomWords(most.marginK, units)}.`;
  return `Nothing that was tried on ${named}, alone or two together, suffices.${gained} ${otherUnit(site, list, units)}`;
}

/** How the recommended remedy was picked: openings are passed over where anything else suffices, and that is said. */
export const leastEffortWords = ({ openingsPassedOver }: Pick<RemedyList, 'openingsPassedOver'>): string =>
  `${openingsPassedOver ? 'without openings in the box, ' : ''}with the least effort`;

const effortWords = ({ effort }: Remedy): string =>
  `${effort.hours} h, ${effort.parts === 'none' ? 'no parts' : effort.parts}`;

function mostGained({ remedies, bestPair }: RemedyList): Remedy | null {
  if (bestPair !== null) return bestPair;
  return remedies.find(({ permitted, gainK }) => permitted && gainK > 0) ?? null;
}

/** The limit that a unit needs on the wall as it stands, whole degrees to the safe side. */
function otherUnit({ limits }: Site, { marginK, coldDecides: cold }: RemedyList, units: UnitSystem): string {
  const neededC = cold ? Math.floor(limits.minC + marginK) : Math.ceil(limits.maxC - marginK);
  const needed = formatQuantity('temperature', neededC, units);
  return `A unit rated ${cold ? `down to ${needed}` : `for ${needed}`} would do as it stands.`;
}
