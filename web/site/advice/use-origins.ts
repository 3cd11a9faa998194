/** What each result that follows a ranking was computed from: results stay on the page until newer ones take their place. */
import { useRef } from 'preact/hooks';
import type { UnitSystem } from '../../../model/index.ts';
import type { FollowUpKind } from '../../compute/follow-up.ts';
import type { SiteResult } from '../../compute/protocol.ts';
import type { FollowUpStates } from '../use-follow-ups.ts';

export interface Origin {
  readonly result: SiteResult;
  /** Those that its sentences speak; numbers beside them must not speak others. */
  readonly units: UnitSystem;
  /** Whether the page has moved on since. */
  readonly stale: boolean;
}

export type OriginOf = (kind: FollowUpKind) => Origin;

/** Null while there is no ranking. */
export function useOrigins(states: FollowUpStates, result: SiteResult | null, units: UnitSystem): OriginOf | null {
  const origins = useRef(new WeakMap<object, Omit<Origin, 'stale'>>());
  // A change of the ranking stops whatever still works on the one before, so what arrives belongs to the present one.
  if (result === null) return null;
  for (const state of Object.values(states)) {
    if (state.phase === 'done' && !origins.current.has(state)) origins.current.set(state, { result, units });
  }
  /** Of the result of a kind; the present ranking where there is no result yet. */
  return (kind) => {
    const origin = origins.current.get(states[kind]) ?? { result, units };
    return { ...origin, stale: origin.result !== result || origin.units !== units };
  };
}
