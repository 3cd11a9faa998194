/** What follows from the day on the shown wall: what would help, how sure it is, how cold it gets. */
import type { FollowUpKind } from '../../compute/follow-up.ts';
import type { FollowUpsInPage } from '../use-follow-ups.ts';
import { ChoicePanel } from './choice-panel.tsx';
import { ColdNightPanel } from './cold-night-panel.tsx';
import { ConfidencePanel } from './confidence-panel.tsx';
import { FollowUp } from './follow-up.tsx';
import { RemediesPanel } from './remedies-panel.tsx';
import type { OriginOf } from './use-origins.ts';

interface AdviceProps {
  readonly originOf: OriginOf;
  readonly follow: FollowUpsInPage;
}

const KINDS: readonly FollowUpKind[] = ['remedies', 'confidence', 'choice', 'cold'];

/** Where the verdict leads to. */
export const REMEDIES_HEADING = 'remedies-heading';

export function Advice({ originOf, follow }: AdviceProps) {
  const [remedies, confidence, choice, cold] = [
    originOf('remedies'),
    originOf('confidence'),
    originOf('choice'),
    originOf('cold'),
  ];
  const open = KINDS.some((kind) => follow.states[kind].phase !== 'done' || originOf(kind).stale);
  return (
    <>
      <section class="advice" aria-labelledby={REMEDIES_HEADING}>
        <h2 id={REMEDIES_HEADING} tabIndex={-1}>
          What would help on wall “{remedies.result.day.wall}”
        </h2>
        {open && <AdviceControl follow={follow} />}
        <FollowUp kind="remedies" subject="What would help" follow={follow} stale={remedies.stale}>
          {(list) => <RemediesPanel list={list} {...remedies.result} units={remedies.units} />}
        </FollowUp>
      </section>
      <section class="advice" aria-labelledby="confidence-heading">
        <h2 id="confidence-heading">How sure the forecast on wall “{confidence.result.day.wall}” is</h2>
        <FollowUp kind="confidence" subject="How sure" follow={follow} stale={confidence.stale}>
          {(spread) => <ConfidencePanel confidence={spread} {...confidence.result} units={confidence.units} />}
        </FollowUp>
        <h3>Whether the choice of wall holds</h3>
        <FollowUp kind="choice" subject="The choice of wall" follow={follow} stale={choice.stale}>
          {(shares) => <ChoicePanel choice={shares} />}
        </FollowUp>
      </section>
      <section class="advice" aria-labelledby="cold-heading">
        <h2 id="cold-heading">The coldest night on wall “{cold.result.day.wall}”</h2>
        <FollowUp kind="cold" subject="The coldest night" follow={follow} stale={cold.stale}>
          {(night) => <ColdNightPanel cold={night} {...cold.result} units={cold.units} />}
        </FollowUp>
      </section>
    </>
  );
}

/** Offers to stop what takes long, and to take it up again. */
function AdviceControl({ follow }: { follow: FollowUpsInPage }) {
  const { slow, stopped, cancel, restart } = follow;
  if (!slow && !stopped) return null;
  return (
    <p class="advice-control">
      <span role="status">{stopped ? 'Computing the advice was stopped.' : 'Still computing the advice.'}</span>
      <button type="button" class="small-button" onClick={stopped ? restart : cancel}>
        {stopped ? 'Compute the advice' : 'Cancel the advice'}
      </button>
    </p>
  );
}
