/** Everything that follows a ranking for one wall: what would help, how sure it is, the coldest night, what burns. */
import {
  type ChoiceConfidence,
  type ColdResult,
  choiceConfidence,
  evaluateColdNight,
  evaluateDay,
  type RemedyList,
  remedySteps,
  type Site,
  type SitingRules,
  type Touch,
  type UnitSystem,
  type WallConfidence,
  type WorstMonth,
  wallConfidence,
  worstMonth,
} from '../model/index.ts';

export const SAMPLES = { usual: 100, least: 1, most: 1000 } as const;
export const SEEDS = { usual: 1, least: 0, most: 2 ** 32 - 1 } as const;

export interface Advice {
  readonly remedies: RemedyList;
  readonly confidence: WallConfidence;
  readonly choice: ChoiceConfidence;
  readonly cold: ColdResult;
  readonly touch: Touch;
  /** The month that is worse for the wall than that of the design day; null where none is or months are not known. */
  readonly worstMonth: WorstMonth | null;
}

export interface AdviceOptions {
  /** Units of the sentences; the usual ones of the place when left out. */
  readonly units?: UnitSystem | undefined;
  readonly samples?: number | undefined;
  readonly seed?: number | undefined;
  /** Thresholds of the siting checks; the usual ones where left out. */
  readonly rules?: SitingRules | undefined;
  /** Told the share of the work done, 0 to 1, whenever others had their turn. */
  readonly onShare?: (share: number) => void;
  /** Asked at the same times; the work ends with `AdviceStopped` once it says yes. */
  readonly stopped?: () => boolean;
}

/** Thrown when nobody waits for the advice any more. */
export class AdviceStopped extends Error {
  override readonly name = 'AdviceStopped';
}

/**
 * Works out the advice for one wall, letting others have their turn in between.
 * @throws SiteError when the site has no wall of that name; AdviceStopped
 */
export async function adviseOn(site: Site, wall: string, options: AdviceOptions = {}): Promise<Advice> {
  const { samples = SAMPLES.usual, seed = SEEDS.usual, units, rules, onShare, stopped } = options;
  const sampled = { samples, seed, rules, ...(units !== undefined && { units }) };
  // The day comes first: it finds what is wrong before anything long begins.
  const { touch } = evaluateDay(site, wall);
  const cold = evaluateColdNight(site, wall);
  await turn();
  const worst = await inTurns(worstMonth(site, wall), { ...(stopped && { stopped }) });
  // The remedies cost about as much as one wall's spread, and that as much as each wall's part of the choice.
  const whole = 2 + site.walls.length;
  const remedies = await inTurns(remedySteps(site, wall, { units, rules }), {
    ...options,
    onShare: (share) => onShare?.(share / whole),
  });
  const confidence = await inTurns(wallConfidence(site, wall, sampled), {
    ...options,
    onShare: (share) => onShare?.((1 + share) / whole),
  });
  const choice = await inTurns(choiceConfidence(site, sampled), {
    ...options,
    onShare: (share) => onShare?.((2 + share * site.walls.length) / whole),
  });
  return { remedies, confidence, choice, cold, touch, worstMonth: worst };
}

/** How long a computation may keep others waiting, ms. */
const TURN_MS = 50;

async function inTurns<Result>(
  work: Generator<number, Result>,
  { onShare, stopped }: Pick<AdviceOptions, 'onShare' | 'stopped'>,
): Promise<Result> {
  let since = performance.now();
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    if (performance.now() - since < TURN_MS) continue;
    onShare?.(step.value);
    await turn();
    if (stopped?.()) throw new AdviceStopped();
    since = performance.now();
  }
}

function turn(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}
