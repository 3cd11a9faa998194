/** A bounded number of places to work and to wait for one, first come, first served. */
import { Abandoned } from './failures.ts';

export interface Places {
  readonly taken: number;
  readonly waiting: number;
  /** Resolves to true once a place is had, at once to false when there is no room to wait. Whoever got a place gives it back. */
  take(signal: AbortSignal): Promise<boolean>;
  giveBack(): void;
}

export function makePlaces({ places, room }: { places: number; room: number }): Places {
  let taken = 0;
  const queue = new Set<() => void>();

  const wait = (signal: AbortSignal) =>
    new Promise<boolean>((resolve, reject) => {
      const leave = () => {
        queue.delete(enter);
        reject(new Abandoned());
      };
      const enter = () => {
        signal.removeEventListener('abort', leave);
        resolve(true);
      };
      queue.add(enter);
      signal.addEventListener('abort', leave, { once: true });
    });

  return {
    get taken() {
      return taken;
    },
    get waiting() {
      return queue.size;
    },
    take: async (signal) => {
      if (signal.aborted) throw new Abandoned();
      if (taken < places) {
        taken += 1;
        return true;
      }
      return queue.size < room && wait(signal);
    },
    giveBack: () => {
      const [next] = queue;
      if (next === undefined) taken -= 1;
      else {
        // The place goes straight to the next one.
        queue.delete(next);
        next();
      }
    },
  };
}
