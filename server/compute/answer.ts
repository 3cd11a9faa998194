import type { Response } from 'express';
import type { Compute } from './compute.ts';
import type { TaskInputs, TaskName } from './tasks.ts';

/**
 * Answers a request with the JSON of a task; a client that goes away gives its place to others.
 * @throws what `Compute.run` throws
 */
export async function answerWith<Name extends TaskName>(
  response: Response,
  { compute, name, input }: { compute: Compute; name: Name; input: TaskInputs[Name] },
): Promise<void> {
  const answer = await compute.run(name, input, goneSignal(response));
  // Set by hand: `json` would write the text once more.
  response.set('Content-Type', 'application/json').send(answer);
}

/** Fires when the client of an answer goes away before it is sent. */
export function goneSignal(response: Response): AbortSignal {
  const gone = new AbortController();
  if (response.closed) gone.abort();
  response.once('close', () => {
    if (!response.writableFinished) gone.abort();
  });
  return gone.signal;
}
