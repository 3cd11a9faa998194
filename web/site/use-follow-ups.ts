/** What follows the ranking that is shown, computed beside the page; an edit stops it and starts it anew. */
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { UnitSystem } from '../../model/index.ts';
import type { FollowUpKind, FollowUpReply, FollowUpRequest, FollowUpState } from '../compute/follow-up.ts';
import type { SiteResult } from '../compute/protocol.ts';

export type FollowUpStates = { readonly [Kind in FollowUpKind]: FollowUpState<Kind> };

export interface FollowUpsInPage {
  readonly states: FollowUpStates;
  /** True while something is still to come and nobody stopped it. */
  readonly running: boolean;
  /** True when it has taken so long that the page offers to stop it. */
  readonly slow: boolean;
  /** True when a person, or a worker that failed, ended it before all was there. */
  readonly stopped: boolean;
  cancel(): void;
  restart(): void;
}

/** Typing goes on for a moment: nothing starts before it has stopped for so long, ms … */
const REST_MS = 1000;

/** … and where the advice is out of sight, and only the verdict waits for it, for so long. */
const LONG_REST_MS = 4000;

/** From here on the page offers to stop. */
const SLOW_MS = 1000;

const WAITING: FollowUpState<never> = { phase: 'waiting' };
const NONE_YET: FollowUpStates = {
  cold: WAITING,
  remedies: WAITING,
  wayOut: WAITING,
  months: WAITING,
  choice: WAITING,
  confidence: WAITING,
};

/**
 * @param result what the page shows of the ranking; results of the one before stay until they are replaced
 * @param draft what is being typed: any change stops the work at once
 * @param near whether the advice is in sight
 */
export function useFollowUps(
  result: SiteResult | null,
  units: UnitSystem,
  draft: unknown,
  near: boolean,
): FollowUpsInPage {
  const [states, setStates] = useState<FollowUpStates>(NONE_YET);
  const [running, setRunning] = useState(false);
  const [slow, setSlow] = useState(false);
  const [stopped, setStopped] = useState(false);
  const [attempt, setAttempt] = useState(0);
  const stop = useRef(() => {});
  const isNear = useRef(near);
  /** Begins after another rest what has not begun yet. */
  const hurry = useRef(() => {});

  useEffect(() => {
    setSlow(false);
    setStopped(false);
    if (result === null) return;
    const { site, day, ranking } = result;
    const first = ranking.walls[0]?.name ?? day.wall;
    const request: FollowUpRequest = { site, wall: day.wall, first, withinLimits: ranking.withinLimits, units };
    let worker: Worker | undefined;
    let slowTimer: ReturnType<typeof setTimeout> | undefined;
    const ended = () => {
      worker?.terminate();
      clearTimeout(slowTimer);
      setRunning(false);
      setSlow(false);
    };
    const start = () => {
      slowTimer = setTimeout(() => setSlow(true), SLOW_MS);
      worker = new Worker(new URL('../compute/follow-up.worker.ts', import.meta.url), { type: 'module' });
      worker.addEventListener('message', ({ data }: MessageEvent<FollowUpReply>) => {
        setStates((before) => withReply(before, data));
        if (data.kind === LAST && (data.state.phase === 'done' || data.state.phase === 'failed')) ended();
      });
      worker.addEventListener('error', (event) => {
        event.preventDefault();
        const failed = { phase: 'failed', message: event.message || 'the computation could not start' } as const;
        setStates((before) => withUnfinished(before, failed));
        setStopped(true);
        ended();
      });
      worker.postMessage(request);
    };
    let startTimer = setTimeout(start, isNear.current ? REST_MS : LONG_REST_MS);
    hurry.current = () => {
      if (worker !== undefined) return;
      clearTimeout(startTimer);
      startTimer = setTimeout(start, REST_MS);
    };
    setRunning(true);
    const halt = () => {
      hurry.current = () => {};
      clearTimeout(startTimer);
    };
    stop.current = () => {
      halt();
      setStates((before) => withUnfinished(before, WAITING));
      setStopped(true);
      ended();
    };
    return () => {
      halt();
      clearTimeout(slowTimer);
      worker?.terminate();
    };
  }, [result, units, draft, attempt]);

  useEffect(() => {
    isNear.current = near;
    if (near) hurry.current();
  }, [near]);

  const cancel = useCallback(() => stop.current(), []);
  const restart = useCallback(() => setAttempt((before) => before + 1), []);
  return { states, running, slow, stopped, cancel, restart };
}

/** A result stays on the page until a newer one takes its place. */
function withReply(before: FollowUpStates, { kind, state }: FollowUpReply): FollowUpStates {
  if (state.phase === 'running' && before[kind].phase === 'done') return before;
  return { ...before, [kind]: state };
}

/** The kind that is computed last. */
const LAST: FollowUpKind = 'confidence';

function withUnfinished(states: FollowUpStates, state: FollowUpState<never>): FollowUpStates {
  const entries = Object.entries(states).map(([kind, now]) => [kind, now.phase === 'done' ? now : state]);
  return Object.fromEntries(entries) as FollowUpStates;
}
