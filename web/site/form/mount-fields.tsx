/** How the box is held, and how far from the wall: against it, or on a post before it. */
import { MOUNTS } from '../../../model/index.ts';
import { valueAt } from '../draft.ts';
import { FieldMessages, messageIds } from './field-messages.tsx';
import { fieldId, useForm } from './form-context.ts';
import { NumberField } from './number-field.tsx';

type Mount = (typeof MOUNTS)[number];

const MOUNT = 'box.mount';

const WORDS: Record<Mount, { readonly label: string; readonly distance: string }> = {
  wall: { label: 'On the wall, flat or on brackets', distance: 'box.standOffM' },
  post: { label: 'On a post of its own before the wall', distance: 'box.postDistanceM' },
};

/** The entered mount; null for a word of a file that is none. */
export function enteredMount(draft: unknown): Mount | null {
  const entered = valueAt(draft, MOUNT) ?? 'wall';
  return MOUNTS.find((mount) => mount === entered) ?? null;
}

export function MountFields() {
  const { draft, problems, set } = useForm();
  const mount = enteredMount(draft);
  const id = fieldId(MOUNT);
  const wrong = problems.get(MOUNT) ?? [];
  return (
    <>
      <fieldset
        class="field field-wide choices"
        id={id}
        tabIndex={-1}
        aria-describedby={messageIds(id, wrong.length > 0, false)}
      >
        <legend>How the box is held</legend>
        <FieldMessages id={id} problems={wrong} />
        {MOUNTS.map((choice) => (
          <label key={choice} class="choice">
            <input type="radio" name="box-mount" checked={choice === mount} onChange={() => set(MOUNT, choice)} />
            <span>{WORDS[choice].label}</span>
          </label>
        ))}
      </fieldset>
      {/* The distance of the other mount stays in the site, unseen unless something is wrong with it. */}
      {MOUNTS.filter((choice) => choice === mount || problems.has(WORDS[choice].distance)).map((choice) => (
        <NumberField key={choice} path={WORDS[choice].distance} />
      ))}
    </>
  );
}
