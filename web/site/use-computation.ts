/** The results that belong to a draft: asked for at each change, the last good ones kept. */
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Problem, UnitSystem } from '../../model/index.ts';
import { type Computer, createComputer } from '../compute/computer.ts';
import type { SiteResult } from '../compute/protocol.ts';
import type { Draft } from './draft.ts';

/** Always the same list, so that what is drawn from it need not be drawn anew. */
const NO_PROBLEMS: readonly Problem[] = [];

export interface Computation {
  /** The last good result; null until there is one. */
  readonly result: SiteResult | null;
  readonly problems: readonly Problem[];
  /** Why the computation itself failed; null where it did not. */
  readonly failure: string | null;
  /** True when it has taken so long that the page offers to stop it. */
  readonly slow: boolean;
  /** Whether a person stopped it before there was a result. */
  readonly stopped: boolean;
  cancel(): void;
  retry(): void;
}

export function useComputation(draft: Draft, units: UnitSystem, wall: string | null): Computation {
  const [result, setResult] = useState<SiteResult | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>(NO_PROBLEMS);
  const [failure, setFailure] = useState<string | null>(null);
  const [slow, setSlow] = useState(false);
  const [stopped, setStopped] = useState(false);
  const [attempt, setAttempt] = useState(0);
  const computer = useRef<Computer | null>(null);

  useLayoutEffect(() => {
    const started = createComputer({
      onPhase: (phase) => setSlow(phase === 'slow'),
      onReply(reply) {
        setProblems(reply.kind === 'problems' ? reply.problems : NO_PROBLEMS);
        setFailure(reply.kind === 'failed' ? reply.message : null);
        if (reply.kind === 'result') setResult(reply.result);
      },
    });
    computer.current = started;
    return () => started.dispose();
  }, []);

  // Before the next paint, so that the worker computes while the page draws. Nothing waits for typing to rest: the newest
  // input overtakes older ones.
  useLayoutEffect(() => {
    setStopped(false);
    computer.current?.request({ input: draft, units, wall });
  }, [draft, units, wall, attempt]);

  return {
    result,
    problems,
    failure,
    slow,
    stopped,
    cancel() {
      computer.current?.cancel();
      setStopped(true);
    },
    retry: () => setAttempt((count) => count + 1),
  };
}
