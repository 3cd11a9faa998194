/** Why something was not done: a sentence, and every problem that the server names. */
import { capital } from '../../model/index.ts';
import { ApiFailure } from './api.ts';

export interface Refused {
  readonly message: string;
  readonly problems: readonly string[];
}

export function refusedBy(error: unknown): Refused {
  if (error instanceof ApiFailure) return error;
  return { message: error instanceof Error ? error.message : String(error), problems: [] };
}

/** Always there, so that what comes later is read out. */
export function Refusal({ refused }: { refused: Refused | null }) {
  return (
    <div role="alert">
      {refused !== null && refused.message !== '' && (
        <div class="area-refused">
          <p>
            <b>{capital(refused.message)}</b>
          </p>
          {refused.problems.length > 0 && (
            <ul>
              {refused.problems.map((problem) => (
                <li key={problem}>{problem}</li>
              ))}
            </ul>
          )}
        </div>
      )}
    </div>
  );
}
