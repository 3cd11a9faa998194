/** Computes what follows a ranking, one thing after the other. Holds no physics: it calls the model. */
import {
  choiceConfidence,
  evaluateColdNight,
  type RemedyList,
  remedySteps,
  wallConfidence,
  worstMonth,
} from '../../model/index.ts';
import type { FollowUpKind, FollowUpReply, FollowUpRequest, FollowUps } from './follow-up.ts';

/** Steps of a computation: each yields the share that is done. */
type Steps<Result> = Generator<number, Result>;

const STEPS: { [Kind in FollowUpKind]: (request: FollowUpRequest) => Steps<FollowUps[Kind]> } = {
  cold: ({ site, wall }) => atOnce(() => evaluateColdNight(site, wall)),
  remedies: remediesOfShown,
  wayOut: wayOutSteps,
  months: ({ site, first }) => worstMonth(site, first),
  choice: ({ site, units }) => choiceConfidence(site, { units }),
  confidence: ({ site, wall, units }) => wallConfidence(site, wall, { units }),
};

/** Of the shown wall, which mostly is the first one: then the way out is among them. */
let ofShown: RemedyList | undefined;

function* remediesOfShown({ site, wall, units }: FollowUpRequest): Steps<RemedyList> {
  ofShown = yield* remedySteps(site, wall, { units });
  return ofShown;
}

function* wayOutSteps({ site, first, wall, withinLimits, units }: FollowUpRequest): Steps<RemedyList | null> {
  if (withinLimits) return null;
  if (first === wall && ofShown !== undefined) return ofShown;
  return yield* remedySteps(site, first, { units });
}

self.addEventListener('message', ({ data }: MessageEvent<FollowUpRequest>) => {
  for (const kind of Object.keys(STEPS) as FollowUpKind[]) finish(kind, data);
});

function finish<Kind extends FollowUpKind>(kind: Kind, request: FollowUpRequest): void {
  const say = (state: unknown) => self.postMessage({ kind, state } as FollowUpReply);
  try {
    const steps = STEPS[kind](request);
    let said = performance.now();
    say({ phase: 'running', share: 0 });
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) {
        say({ phase: 'done', result: step.value });
        return;
      }
      if (performance.now() - said < SAY_EVERY_MS) continue;
      said = performance.now();
      say({ phase: 'running', share: step.value });
    }
  } catch (error) {
    say({ phase: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
}

/** Progress is said no oftener than this, ms. */
const SAY_EVERY_MS = 100;

// biome-ignore lint/correctness/useYield: done in one step
function* atOnce<Result>(compute: () => Result): Steps<Result> {
  return compute();
}
