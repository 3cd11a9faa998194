/** Plays a day: moves on step by step while it runs. Where motion is not wanted, it does not run at all. */
import { useEffect, useState } from 'preact/hooks';

/** An hour of the day takes about a second. */
const TICK_MS = 170;
const STEPS_PER_TICK = 2;

export interface Play {
  readonly playing: boolean;
  /** False where the person asked for less motion. */
  readonly mayRun: boolean;
  start(): void;
  pause(): void;
}

export function usePlay(step: number, steps: number, onStep: (step: number) => void): Play {
  const mayRun = useMayRun();
  const [playing, setPlaying] = useState(false);
  const running = playing && mayRun;

  useEffect(() => {
    if (!running) return;
    const timer = setTimeout(() => {
      const next = step + STEPS_PER_TICK;
      if (next < steps) onStep(next);
      else {
        onStep(steps - 1);
        setPlaying(false);
      }
    }, TICK_MS);
    return () => clearTimeout(timer);
  }, [running, step, steps, onStep]);

  return {
    playing: running,
    mayRun,
    start() {
      // From the end it begins anew.
      if (step >= steps - 1) onStep(0);
      setPlaying(true);
    },
    pause: () => setPlaying(false),
  };
}

function useMayRun(): boolean {
  const [mayRun, setMayRun] = useState(() => !lessMotion().matches);
  useEffect(() => {
    const query = lessMotion();
    const follow = () => setMayRun(!query.matches);
    query.addEventListener('change', follow);
    return () => query.removeEventListener('change', follow);
  }, []);
  return mayRun;
}

const lessMotion = () => matchMedia('(prefers-reduced-motion: reduce)');
