/** The results that belong to a draft: asked for a moment after the last change, the last good ones kept. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Problem, UnitSystem } from '../../model/index.ts';
import { type ComputePhase, type Computer, createComputer } from '../compute/computer.ts';
import type { SiteResult } from '../compute/protocol.ts';
import type { Draft } from './draft.ts';

/** Two changes of one keystroke come together; more need not wait, since the newest input overtakes older ones. */
const DEBOUNCE_MS = 20;

export interface Computation {
  /** The last good result; null until there is one. */
  readonly result: SiteResult | null;
  readonly problems: readonly Problem[];
  /** Why the computation itself failed; null where it did not. */
  readonly failure: string | null;
  readonly phase: ComputePhase;
  /** Whether a person stopped it before there was a result. */
  readonly stopped: boolean;
  cancel(): void;
  retry(): void;
}

export function useComputation(draft: Draft, units: UnitSystem, wall: string | null): Computation {
  const [result, setResult] = useState<SiteResult | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [failure, setFailure] = useState<string | null>(null);
  const [phase, setPhase] = useState<ComputePhase>('running');
  const [stopped, setStopped] = useState(false);
  const [attempt, setAttempt] = useState(0);
  const computer = useRef<Computer | null>(null);
  const first = useRef(true);

  useEffect(() => {
    const started = createComputer({
      onPhase: setPhase,
      onReply(reply) {
        setProblems(reply.kind === 'problems' ? reply.problems : []);
        setFailure(reply.kind === 'failed' ? reply.message : null);
        if (reply.kind === 'result') setResult(reply.result);
      },
    });
    computer.current = started;
    return () => started.dispose();
  }, []);

  useEffect(() => {
    setStopped(false);
    const ask = () => computer.current?.request({ input: draft, units, wall });
    const timer = setTimeout(ask, first.current ? 0 : DEBOUNCE_MS);
    first.current = false;
    return () => clearTimeout(timer);
  }, [draft, units, wall, attempt]);

  return {
    result,
    problems,
    failure,
    phase,
    stopped,
    cancel() {
      computer.current?.cancel();
      setStopped(true);
    },
    retry: () => setAttempt((count) => count + 1),
  };
}
