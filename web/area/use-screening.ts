/** A screening as the server tells it, followed while the view shows it. */
import { useCallback, useEffect, useState } from 'preact/hooks';
import { apiAddress, askScreening, cancelScreening, resumeScreening, type Screening } from './api.ts';
import { followScreening, type Means } from './follow.ts';

const MEANS: Means = {
  ask: askScreening,
  open(id, heard) {
    const source = new EventSource(apiAddress(`screenings/${encodeURIComponent(id)}/events`));
    source.addEventListener('state', ({ data }: MessageEvent<string>) => heard.state(JSON.parse(data) as Screening));
    source.addEventListener('error', () => heard.broken(source.readyState !== EventSource.CLOSED));
    return source;
  },
};

export interface FollowedScreening {
  /** Null until the server has told it. */
  readonly state: Screening | null;
  /** Whether the server is heard at the moment. */
  readonly heard: boolean;
  /** Why there is none; empty while there may be. */
  readonly gone: string;
  /** Why the last step was refused. */
  readonly refused: string;
  cancel(): void;
  resume(): void;
}

export function useScreening(id: string): FollowedScreening {
  const [state, setState] = useState<Screening | null>(null);
  const [heard, setHeard] = useState(true);
  const [gone, setGone] = useState('');
  const [refused, setRefused] = useState('');
  const [turn, setTurn] = useState(0);

  useEffect(() => {
    setGone('');
    return followScreening(id, MEANS, { state: setState, heard: setHeard, gone: setGone });
  }, [id, turn]);

  const step = useCallback(
    async (take: (id: string) => Promise<Screening>) => {
      setRefused('');
      try {
        setState(await take(id));
        // What had ended is followed anew.
        setTurn((count) => count + 1);
      } catch (error) {
        setRefused(error instanceof Error ? error.message : String(error));
      }
    },
    [id],
  );
  return { state, heard, gone, refused, cancel: () => step(cancelScreening), resume: () => step(resumeScreening) };
}
