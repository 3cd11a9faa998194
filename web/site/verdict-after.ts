/** What the verdict says once the follow-ups are there: how far it holds, and what to do where no wall will do. */
import { monthSentence, surenessSentence, type WorstMonth, wayOutSentence } from '../../model/index.ts';
import type { FollowUps } from '../compute/follow-up.ts';
import type { SiteResult } from '../compute/protocol.ts';
import type { OriginOf } from './advice/use-origins.ts';
import type { FollowUpStates, FollowUpsInPage } from './use-follow-ups.ts';

export interface Afterthoughts {
  /** The month that is worse than that of the design day; null where none is, or it is not known yet. */
  readonly month: WorstMonth | null;
  /** The same in words; empty where none is. */
  readonly season: string;
  readonly sureness: string;
  /** Empty where the first wall will do as it stands. */
  readonly wayOut: string;
  /** Whether the way out is there, and not only announced. */
  readonly wayOutKnown: boolean;
}

const SURENESS_TO_COME = 'How far this holds is computed once you pause.';
const WAY_OUT_TO_COME = 'What would help is computed once you pause.';

/** A sentence about a site that has changed since would contradict the verdict beside it: it is left out until it is new. */
export function afterthoughts(
  follow: FollowUpsInPage,
  { ranking, site }: SiteResult,
  originOf: OriginOf,
): Afterthoughts {
  const fresh = <Kind extends keyof FollowUps>(kind: Kind): FollowUps[Kind] | null => {
    const state = follow.states[kind] as FollowUpStates[Kind];
    return state.phase === 'done' && !originOf(kind).stale ? (state.result as FollowUps[Kind]) : null;
  };
  const toCome = (kind: keyof FollowUps, words: string) =>
    follow.stopped || follow.states[kind].phase === 'failed' ? '' : words;
  const [choice, list, months] = [fresh('choice'), fresh('wayOut'), fresh('months')];
  const { units } = originOf('wayOut');
  return {
    month: ranking.best === null ? null : months,
    season: ranking.best === null ? '' : monthSentence(site, months, units),
    sureness:
      ranking.best === null ? '' : choice ? surenessSentence(choice, ranking) : toCome('choice', SURENESS_TO_COME),
    wayOut: ranking.withinLimits
      ? ''
      : list
        ? wayOutSentence(site, ranking, list, units)
        : toCome('wayOut', WAY_OUT_TO_COME),
    wayOutKnown: list !== null,
  };
}
