/** One result that follows the ranking: what it shows, or how far it is. */
import type { ComponentChildren } from 'preact';
import type { FollowUpKind, FollowUpState, FollowUps } from '../../compute/follow-up.ts';
import type { FollowUpsInPage } from '../use-follow-ups.ts';

interface FollowUpProps<Kind extends FollowUpKind> {
  readonly kind: Kind;
  /** For those who hear the page: what is being computed. */
  readonly subject: string;
  readonly follow: FollowUpsInPage;
  /** Whether the result belongs to the ranking before. */
  readonly stale: boolean;
  children(result: FollowUps[Kind]): ComponentChildren;
}

export function FollowUp<Kind extends FollowUpKind>(props: FollowUpProps<Kind>) {
  const { kind, subject, follow, stale, children } = props;
  // The states of a kind and its results go together, which an index by a type parameter does not show.
  const state = follow.states[kind] as FollowUpState<Kind>;
  if (state.phase === 'done') {
    // A result that is replaced within a second would only flicker.
    const told = stale && (follow.slow || follow.stopped);
    return (
      <>
        {told && <p class="badge badge-stale">Out of date: of the site before the last change</p>}
        {children(state.result)}
      </>
    );
  }
  if (state.phase === 'failed') return <p>This could not be computed: {state.message}</p>;
  if (follow.stopped) return <p>Not computed: it was stopped.</p>;
  if (state.phase === 'waiting') return <p>To be computed.</p>;
  return (
    <p class="follow-progress">
      <progress aria-label={`${subject}: computing`} value={state.share > 0 ? state.share : undefined} />
      {state.share > 0 ? `${Math.round(100 * state.share)} %` : 'Computing…'}
    </p>
  );
}
