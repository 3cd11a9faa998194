/** An answer of the server that belongs to what it was asked for; the last good one stays until the next has come. */
import { useEffect, useState } from 'preact/hooks';

export interface Answer<Value> {
  readonly answer: Value | null;
  readonly error: unknown;
}

export function useAnswer<Value>(
  ask: (signal: AbortSignal) => Promise<Value>,
  inputs: readonly unknown[],
): Answer<Value> {
  const [state, setState] = useState<Answer<Value>>({ answer: null, error: null });
  useEffect(() => {
    const stop = new AbortController();
    ask(stop.signal).then(
      (answer) => !stop.signal.aborted && setState({ answer, error: null }),
      (error: unknown) => !stop.signal.aborted && setState(({ answer }) => ({ answer, error })),
    );
    return () => stop.abort();
    // The inputs say what is asked for; the function itself is made anew at each rendering.
  }, inputs);
  return state;
}
