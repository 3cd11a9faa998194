/** A hood over the box: sheets that stand off some of its faces and take the sun in their stead. */
import { useRef } from 'preact/hooks';
import { FACES, type Face, USUAL_HOOD_FACES } from '../../../model/index.ts';
import { valueAt } from '../draft.ts';
import { CheckField } from './check-field.tsx';
import { FieldMessages, messageIds } from './field-messages.tsx';
import { fieldId, useForm } from './form-context.ts';
import { enteredMount } from './mount-fields.tsx';
import { NumberField } from './number-field.tsx';

const HOOD = 'box.hood';
const COVERED = `${HOOD}.faces`;
const OPEN_TOP = `${HOOD}.openTop`;

export function HoodFields() {
  const { draft, set } = useForm();
  const present = (valueAt(draft, HOOD) ?? null) !== null;
  return (
    <div class="field-wide">
      <CheckField
        path={HOOD}
        label="A hood shades the box"
        checked={present}
        onCheck={(on) => set(HOOD, on ? {} : undefined)}
      />
      {present && (
        <div class="section-fields">
          <NumberField path={`${HOOD}.gapM`} />
          <NumberField path={`${HOOD}.solarAbsorptance`} />
          <NumberField path={`${HOOD}.emittance`} />
          <div class="field-wide">
            <CheckField
              path={OPEN_TOP}
              label="Air can leave at the top"
              checked={(valueAt(draft, OPEN_TOP) ?? true) === true}
              onCheck={(on) => set(OPEN_TOP, on)}
            >
              Then the air behind the hood rises and carries heat away.
            </CheckField>
          </div>
          <CoveredFaces />
        </div>
      )}
    </div>
  );
}

function CoveredFaces() {
  const { draft, problems, set } = useForm();
  const entered = valueAt(draft, COVERED) ?? USUAL_HOOD_FACES;
  const covered: readonly unknown[] = Array.isArray(entered) ? entered : [];
  // A file may name a face that no box has; its mark finds no field of its own.
  const wrong = [...problems].flatMap(([path, found]) =>
    path === COVERED || path.startsWith(`${COVERED}.`) ? found : [],
  );
  const mount = enteredMount(draft);
  // Only a post leaves room behind the box. A back that a file covers all the same can be unticked.
  const offered = FACES.filter((face) => face !== 'back' || mount === 'post' || covered.includes('back'));
  const frame = useRef<HTMLFieldSetElement>(null);
  const cover = (face: Face, on: boolean) => {
    // It goes as it is unticked; the focus must not go with it.
    if (face === 'back' && mount !== 'post') frame.current?.focus();
    set(
      COVERED,
      FACES.filter((other) => (other === face ? on : covered.includes(other))),
    );
  };
  const id = fieldId(COVERED);
  return (
    <fieldset
      class="field field-wide"
      id={id}
      tabIndex={-1}
      ref={frame}
      aria-describedby={messageIds(id, wrong.length > 0, false)}
    >
      <legend>Faces that the hood covers</legend>
      <FieldMessages id={id} problems={wrong}>
        Left and right as seen from outside.
      </FieldMessages>
      <div class="choice-row">
        {offered.map((face) => (
          <label key={face} class="choice">
            <input
              type="checkbox"
              checked={covered.includes(face)}
              onChange={({ currentTarget }) => cover(face, currentTarget.checked)}
            />
            <span>{face}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
