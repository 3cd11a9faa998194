/**
 * Follows a screening: by the server's stream of events, and by asking where the stream breaks or says nothing. A server
 * that is started anew goes on with the screening, and so does this.
 */
import { ApiFailure, type Screening, type Status } from './api.ts';

interface Stream {
  close(): void;
}

export interface Means {
  ask(id: string): Promise<Screening>;
  /** Opens the stream; `broken` is called at each break, with whether it mends itself. */
  open(id: string, heard: { state(state: Screening): void; broken(mends: boolean): void }): Stream;
}

export interface Told {
  state(state: Screening): void;
  /** Whether the server is heard. */
  heard(heard: boolean): void;
  /** It will not come back: there is no such screening, or the server keeps none. */
  gone(why: string): void;
}

const ASK_EVERY_MS = 2000;
const SLOWEST_MS = 10_000;
/** Without a word for this long the stream may be held up on its way. */
const QUIET_MS = 15_000;
/** A way on which streams do not come through is not tried for ever. */
const MOST_BREAKS = 3;

/** Answers that asking again does not mend. */
const GONE: Readonly<Record<number, string>> = {
  401: 'The server asks for a token before it tells anything of its screenings.',
  404: 'There is no such screening any more.',
};

export const isFinal = (status: Status): boolean => status === 'done' || status === 'cancelled' || status === 'failed';

/** Gives back how to stop. Ends by itself once the screening has ended. */
export function followScreening(id: string, means: Means, told: Told): () => void {
  let stopped = false;
  let stream: Stream | null = null;
  let breaks = 0;
  let waitMs = ASK_EVERY_MS;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const stop = () => {
    stopped = true;
    clearTimeout(timer);
    stream?.close();
    stream = null;
  };
  const askIn = (ms: number) => {
    clearTimeout(timer);
    timer = setTimeout(ask, ms);
  };
  const hear = (state: Screening) => {
    waitMs = ASK_EVERY_MS;
    told.heard(true);
    told.state(state);
    if (isFinal(state.status)) stop();
  };
  const listen = () => {
    stream = means.open(id, {
      state(state) {
        if (stopped) return;
        breaks = 0;
        hear(state);
        if (!stopped) askIn(QUIET_MS);
      },
      broken(mends) {
        if (stopped) return;
        if (!mends) {
          stream?.close();
          stream = null;
          breaks += 1;
        }
        askIn(ASK_EVERY_MS);
      },
    });
  };
  async function ask() {
    try {
      const state = await means.ask(id);
      if (stopped) return;
      hear(state);
      if (stopped) return;
      if (stream === null && breaks < MOST_BREAKS) listen();
      askIn(stream === null ? ASK_EVERY_MS : QUIET_MS);
    } catch (error) {
      if (stopped) return;
      const why = error instanceof ApiFailure ? GONE[error.status] : undefined;
      if (why !== undefined) {
        stop();
        told.gone(why);
        return;
      }
      told.heard(false);
      askIn(waitMs);
      waitMs = Math.min(waitMs * 2, SLOWEST_MS);
    }
  }
  ask();
  return stop;
}
