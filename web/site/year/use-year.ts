/** A year that somebody asked for, worked out beside the page: reading its weather, marching the walls, and stopping. */
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { YearResult } from '../../../model/index.ts';
import type { SiteResult } from '../../compute/protocol.ts';
import type { WeatherChoice, WeatherTold, YearReply, YearRequest } from '../../compute/year.ts';

/** Years of the walls of a site, with what they were reckoned from. */
export interface ReckonedYears {
  readonly result: SiteResult;
  readonly weather: WeatherTold;
  readonly years: readonly YearResult[];
}

export type WeatherState =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading' }
  | { readonly kind: 'told'; readonly weather: WeatherTold }
  | { readonly kind: 'refused'; readonly message: string };

export type RunState =
  | { readonly kind: 'idle' }
  | { readonly kind: 'running'; readonly done: number; readonly of: number }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'failed'; readonly message: string };

export interface YearInPage {
  readonly choice: WeatherChoice;
  readonly weather: WeatherState;
  readonly run: RunState;
  /** The last that were reckoned; they stay until others take their place. */
  readonly reckoned: ReckonedYears | null;
  choose(choice: WeatherChoice, result: SiteResult): void;
  reckon(result: SiteResult): void;
  cancel(): void;
}

export function useYear(): YearInPage {
  const [choice, setChoice] = useState<WeatherChoice>({ kind: 'invented', seed: 1 });
  const [weather, setWeather] = useState<WeatherState>({ kind: 'none' });
  const [run, setRun] = useState<RunState>({ kind: 'idle' });
  const [reckoned, setReckoned] = useState<ReckonedYears | null>(null);
  const end = useRef(() => {});
  useEffect(() => () => end.current(), []);

  /** Ends what runs and asks a new worker, which ends with its last answer: a year is asked for rarely. */
  const ask = useCallback((request: YearRequest, onReply: (reply: YearReply) => boolean) => {
    end.current();
    const worker = new Worker(new URL('../../compute/year.worker.ts', import.meta.url), { type: 'module' });
    end.current = () => worker.terminate();
    worker.addEventListener('message', ({ data }: MessageEvent<YearReply>) => {
      if (onReply(data)) worker.terminate();
    });
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      worker.terminate();
      onReply({ kind: 'failed', message: event.message || 'the computation could not start' });
    });
    worker.postMessage(request);
  }, []);

  const choose = useCallback(
    (next: WeatherChoice, { site }: SiteResult) => {
      setChoice(next);
      setRun({ kind: 'idle' });
      setWeather({ kind: 'reading' });
      ask({ kind: 'read', weather: next, site }, (reply) => {
        if (reply.kind === 'weather') setWeather({ kind: 'told', weather: reply.weather });
        else if (reply.kind === 'refused' || reply.kind === 'failed') setWeather({ ...reply, kind: 'refused' });
        return true;
      });
    },
    [ask],
  );

  const reckon = useCallback(
    (result: SiteResult) => {
      let told: WeatherTold | null = null;
      setRun({ kind: 'running', done: 0, of: result.site.walls.length });
      ask({ kind: 'reckon', weather: choice, site: result.site }, (reply) => {
        if (reply.kind === 'progress') setRun({ ...reply, kind: 'running' });
        else if (reply.kind === 'weather') {
          told = reply.weather;
          setWeather({ kind: 'told', weather: told });
        } else if (reply.kind === 'years') {
          if (told !== null) setReckoned({ result, weather: told, years: reply.years });
          setRun({ kind: 'idle' });
        } else setRun({ kind: 'failed', message: reply.message });
        return reply.kind !== 'progress' && reply.kind !== 'weather';
      });
    },
    [ask, choice],
  );

  const cancel = useCallback(() => {
    end.current();
    setRun({ kind: 'stopped' });
  }, []);

  return { choice, weather, run, reckoned, choose, reckon, cancel };
}
