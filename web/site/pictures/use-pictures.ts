/** What the pictures show, worked out once the result stands on the page, and given up as soon as something is changed. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { RosePoint, SunDiagram, WallPlan } from '../../../model/index.ts';
import { createPictureMaker, type PictureMaker } from '../../compute/picture-maker.ts';
import type { SiteResult } from '../../compute/protocol.ts';

/** A picture and the result that it belongs to. */
export interface WallView {
  readonly result: SiteResult;
  readonly diagram: SunDiagram;
  readonly plan: WallPlan;
}

export interface Rose {
  readonly result: SiteResult;
  readonly points: readonly RosePoint[];
}

export type RoseState =
  | { readonly kind: 'running'; readonly done: number; readonly slow: boolean }
  /** For the result of a change, or for somebody to look. */
  | { readonly kind: 'waiting' }
  | { readonly kind: 'done' }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'failed'; readonly message: string };

export interface Pictures {
  /** The last that were worked out; null until there are some. */
  readonly view: WallView | null;
  readonly rose: Rose | null;
  readonly roseState: RoseState;
  cancel(): void;
  retry(): void;
}

/** From here on the page says that it computes and offers to stop. */
const SLOW_MS = 1000;

/** Nothing is drawn before the typing has rested for so long, ms. */
const REST_MS = 500;

/**
 * @param input whatever, when it changes, makes a run for the last result pointless
 * @param near whether the pictures are in sight; else nothing is begun
 */
export function usePictures(result: SiteResult, input: readonly unknown[], near: boolean): Pictures {
  const [view, setView] = useState<WallView | null>(null);
  const [rose, setRose] = useState<Rose | null>(null);
  const [roseState, setRoseState] = useState<RoseState>({ kind: 'waiting' });
  const [attempt, setAttempt] = useState(0);
  const maker = useRef<PictureMaker | null>(null);
  /** What the maker works on, or has worked out. */
  const drawn = useRef<SiteResult | null>(null);

  useEffect(() => {
    const started = createPictureMaker((reply) => {
      const of = drawn.current;
      if (of === null) return;
      if (reply.kind === 'view') setView({ result: of, diagram: reply.diagram, plan: reply.plan });
      else if (reply.kind === 'progress')
        setRoseState((state) => ({ slow: false, ...state, kind: 'running', done: reply.done }));
      else if (reply.kind === 'rose') {
        setRose({ result: of, points: reply.points });
        setRoseState({ kind: 'done' });
      } else setRoseState({ kind: 'failed', message: reply.message });
    });
    maker.current = started;
    return () => started.dispose();
  }, []);

  // Before the drawing below, so that a result that comes with a change is drawn and not stopped.
  useEffect(() => {
    maker.current?.stop();
    setRoseState((state) => (state.kind === 'running' ? { kind: 'waiting' } : state));
  }, input);

  useEffect(() => {
    if (!near || drawn.current === result) return;
    // Who goes on typing needs no pictures yet.
    const timer = setTimeout(() => {
      drawn.current = result;
      setRoseState({ kind: 'running', done: 0, slow: false });
      maker.current?.draw(result.site, result.day.wall);
    }, REST_MS);
    return () => clearTimeout(timer);
  }, [result, attempt, near]);

  const running = roseState.kind === 'running';
  useEffect(() => {
    if (!running) return;
    const timer = setTimeout(() => {
      setRoseState((state) => (state.kind === 'running' ? { ...state, slow: true } : state));
    }, SLOW_MS);
    return () => clearTimeout(timer);
  }, [running, result, attempt]);

  return {
    view,
    rose,
    roseState,
    cancel() {
      maker.current?.stop();
      setRoseState({ kind: 'stopped' });
    },
    retry() {
      drawn.current = null;
      setAttempt((count) => count + 1);
    },
  };
}
