/** One screening: how far it is, and what it has found so far. */
import { useEffect, useState } from 'preact/hooks';
import type { UnitSystem } from '../../model/index.ts';
import { goTo } from './address.ts';
import { deleteScreening, type Screening } from './api.ts';
import { DeleteButton } from './delete-button.tsx';
import { isFinal } from './follow.ts';
import { Refusal, refusedBy } from './refusal.tsx';
import { Results } from './results.tsx';
import { durationText, progressText, STATUS_WORDS, shareDone } from './run-words.ts';
import { useHeading } from './use-heading.ts';
import { type FollowedScreening, useScreening } from './use-screening.ts';

/** While it runs, the results so far are looked at again this often. */
const RESULTS_EVERY_MS = 5000;

export function ScreeningPanel({ id, units }: { id: string; units: UnitSystem }) {
  const heading = useHeading();
  const followed = useScreening(id);
  const { state, gone } = followed;
  const version = useVersion(state);
  return (
    <>
      <section class="run" aria-labelledby="run-heading">
        <p>
          <a class="back-link" href="#/area">
            All screenings
          </a>
        </p>
        <h2 id="run-heading" ref={heading} tabIndex={-1}>
          {state?.name ?? 'Screening'}
        </h2>
        {gone !== '' && <p class="area-notice">{gone}</p>}
        {state === null && gone === '' && <p role="status">Asking the server …</p>}
        {state !== null && <Run state={state} followed={followed} />}
      </section>
      {state !== null && state.rows.done > 0 && <Results screening={state} version={version} units={units} />}
    </>
  );
}

function Run({ state, followed }: { state: Screening; followed: FollowedScreening }) {
  const [failure, setFailure] = useState('');
  const { status, startedAt, endedAt } = state;
  const share = shareDone(state);
  const ended = isFinal(status);
  const tookS = startedAt !== null && endedAt !== null ? (Date.parse(endedAt) - Date.parse(startedAt)) / 1000 : null;
  return (
    <div class={`run-state run-${status}`}>
      <p class="badge">{STATUS_WORDS[status]}</p>
      {!ended && <progress aria-label={`Screening of ${state.name}`} value={share ?? undefined} />}
      <p class="run-figures">
        {progressText(state)}
        {status === 'done' && tookS !== null && tookS > 0 && `, in ${durationText(tookS)}`}
      </p>
      {/* Coarse, so that a screen reader is not kept busy. */}
      <p class="visually-hidden" role="status">
        {STATUS_WORDS[status]}
        {status === 'running' && share !== null && `, ${Math.floor(share * 10) * 10} % of the rows`}
      </p>
      {status === 'failed' && <p class="area-refused">{state.error}</p>}
      {!followed.heard && (
        <p class="area-notice" role="status">
          The server is not heard at the moment. The screening goes on there, or as soon as it is back; this page looks
          for it by itself.
        </p>
      )}
      <div class="buttons">
        {!ended && (
          <button type="button" onClick={followed.cancel}>
            Stop the screening
          </button>
        )}
        {(status === 'cancelled' || status === 'failed') && (
          <button type="button" onClick={followed.resume}>
            Go on
          </button>
        )}
        {ended && (
          <DeleteButton
            name={state.name}
            remove={() =>
              deleteScreening(state.id).then(
                () => goTo(null),
                (error: unknown) => setFailure(refusedBy(error).message),
              )
            }
          />
        )}
      </div>
      <Refusal refused={{ message: followed.refused || failure, problems: [] }} />
    </div>
  );
}

/** A number that changes when the results are worth another look. */
function useVersion(state: Screening | null): number {
  const [version, setVersion] = useState(0);
  const [seen, setSeen] = useState(0);
  const status = state?.status;
  const running = status === 'running';
  const begun = (state?.rows.done ?? 0) > 0;
  useEffect(() => setVersion((count) => count + 1), [status, begun]);
  useEffect(() => {
    if (!running) return;
    const timer = setInterval(() => setSeen((count) => count + 1), RESULTS_EVERY_MS);
    return () => clearInterval(timer);
  }, [running]);
  return version + seen;
}
