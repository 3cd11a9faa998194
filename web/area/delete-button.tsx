/** Deletes a screening, once more asked. */
import { useState } from 'preact/hooks';

export function DeleteButton({ name, remove }: { name: string; remove(): void }) {
  const [asked, setAsked] = useState(false);
  if (!asked) {
    return (
      <button type="button" class="small-button" aria-label={`Delete ${name}`} onClick={() => setAsked(true)}>
        Delete
      </button>
    );
  }
  return (
    <fieldset class="delete-asked">
      <legend>Delete {name} and its results for good?</legend>
      <div class="buttons">
        <button type="button" class="small-button" onClick={remove}>
          Delete for good
        </button>
        <button
          type="button"
          class="small-button"
          // The safe answer is the one that Enter gives.
          ref={(button) => button?.focus()}
          onClick={() => setAsked(false)}
        >
          Keep
        </button>
      </div>
    </fieldset>
  );
}
