/** Computes what follows a ranking, one thing after the other. Holds no physics: it calls the model. */
import { choiceConfidence, evaluateColdNight, remedySteps, wallConfidence } from '../../model/index.ts';
import type { FollowUpKind, FollowUpReply, FollowUpRequest, FollowUps } from './follow-up.ts';

/** Steps of a computation: each yields the share that is done. */
type Steps<Result> = Generator<number, Result>;

const STEPS: { [Kind in FollowUpKind]: (request: FollowUpRequest) => Steps<FollowUps[Kind]> } = {
  cold: ({ site, wall }) => atOnce(() => evaluateColdNight(site, wall)),
  remedies: ({ site, wall, units }) => remedySteps(site, wall, units),
  confidence: ({ site, wall, units }) => wallConfidence(site, wall, { units }),
  choice: ({ site, units }) => choiceConfidence(site, { units }),
};

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
