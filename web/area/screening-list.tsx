/** Earlier screenings, newest first: opened, gone on with, deleted. */
import { useCallback, useEffect, useState } from 'preact/hooks';
import { when } from '../sites/when.ts';
import { screeningAddress } from './address.ts';
import { deleteScreening, listScreenings, resumeScreening, type Screening } from './api.ts';
import { DeleteButton } from './delete-button.tsx';
import { isFinal } from './follow.ts';
import { Refusal, type Refused, refusedBy } from './refusal.tsx';
import { progressText, STATUS_WORDS } from './run-words.ts';

/** While one of them runs, the list is asked for again. */
const LOOK_EVERY_MS = 3000;

export function ScreeningList() {
  const [screenings, setScreenings] = useState<readonly Screening[] | null>(null);
  const [refused, setRefused] = useState<Refused | null>(null);
  const look = useCallback(async () => {
    try {
      setScreenings(await listScreenings());
    } catch (error) {
      setRefused(refusedBy(error));
    }
  }, []);
  const moving = screenings?.some(({ status }) => !isFinal(status)) ?? false;
  useEffect(() => {
    look();
  }, [look]);
  useEffect(() => {
    if (!moving) return;
    const timer = setInterval(look, LOOK_EVERY_MS);
    return () => clearInterval(timer);
  }, [look, moving]);

  const after = async (step: Promise<unknown>) => {
    setRefused(null);
    await step.catch((error: unknown) => setRefused(refusedBy(error)));
    await look();
  };
  return (
    <section aria-labelledby="earlier-heading">
      <h2 id="earlier-heading" tabIndex={-1}>
        Earlier screenings
      </h2>
      {screenings === null && refused === null && <p>Asking …</p>}
      {screenings?.length === 0 && <p>None yet.</p>}
      <ul class="screening-list">
        {screenings?.map((screening) => (
          <li key={screening.id}>
            <p class="screening-name">
              <a href={screeningAddress(screening.id)}>{screening.name}</a>
            </p>
            <p class="screening-note">
              {STATUS_WORDS[screening.status]}; {progressText(screening)}. Begun {when(screening.createdAt)}.
            </p>
            <div class="buttons">
              {(screening.status === 'cancelled' || screening.status === 'failed') && (
                <button
                  type="button"
                  class="small-button"
                  aria-label={`Go on with ${screening.name}`}
                  onClick={() => after(resumeScreening(screening.id))}
                >
                  Go on
                </button>
              )}
              <DeleteButton
                name={screening.name}
                remove={async () => {
                  await after(deleteScreening(screening.id));
                  document.getElementById('earlier-heading')?.focus();
                }}
              />
            </div>
          </li>
        ))}
      </ul>
      <Refusal refused={refused} />
    </section>
  );
}
