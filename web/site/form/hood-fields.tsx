/** A hood over the box: sheets that stand off some of its faces and take the sun in their stead. */
import { FACES, type Face } from '../../../model/index.ts';
import { valueAt } from '../draft.ts';
import { FieldMessages, messageIds } from './field-messages.tsx';
import { fieldId, useForm } from './form-context.ts';
import { NumberField } from './number-field.tsx';

const HOOD = 'box.hood';
const COVERED = `${HOOD}.faces`;
const OPEN_TOP = `${HOOD}.openTop`;

/** The faces that a hood covers where none are entered, as the model assumes them. */
const USUAL_FACES: readonly unknown[] = ['front', 'left', 'right', 'top'] satisfies Face[];

export function HoodFields() {
  const { draft, problems, set } = useForm();
  const present = (valueAt(draft, HOOD) ?? null) !== null;
  const wrong = problems.get(HOOD) ?? [];
  const id = fieldId(HOOD);
  return (
    <div class="field-wide">
      <label class="choice">
        <input
          type="checkbox"
          id={id}
          checked={present}
          aria-invalid={wrong.length > 0}
          aria-describedby={messageIds(id, wrong.length > 0, false)}
          onChange={({ currentTarget }) => set(HOOD, currentTarget.checked ? {} : undefined)}
        />
        <span>A hood shades the box</span>
      </label>
      <FieldMessages id={id} problems={wrong} />
      {present && (
        <div class="section-fields">
          <NumberField path={`${HOOD}.gapM`} />
          <NumberField path={`${HOOD}.solarAbsorptance`} />
          <NumberField path={`${HOOD}.emittance`} />
          <OpenTop />
          <CoveredFaces />
        </div>
      )}
    </div>
  );
}

function OpenTop() {
  const { draft, problems, set } = useForm();
  const wrong = problems.get(OPEN_TOP) ?? [];
  const id = fieldId(OPEN_TOP);
  return (
    <div class="field-wide">
      <label class="choice">
        <input
          type="checkbox"
          id={id}
          checked={(valueAt(draft, OPEN_TOP) ?? true) === true}
          aria-invalid={wrong.length > 0}
          aria-describedby={messageIds(id, wrong.length > 0, false)}
          onChange={({ currentTarget }) => set(OPEN_TOP, currentTarget.checked)}
        />
        <span>Air can leave at the top</span>
      </label>
      <FieldMessages id={id} problems={wrong}>
        Then the air behind the hood rises and carries heat away.
      </FieldMessages>
    </div>
  );
}

function CoveredFaces() {
  const { draft, problems, set } = useForm();
  const entered = valueAt(draft, COVERED) ?? USUAL_FACES;
  const covered: readonly unknown[] = Array.isArray(entered) ? entered : [];
  // A file may name a face that no box has; its mark finds no field of its own.
  const wrong = [...problems].flatMap(([path, found]) =>
    path === COVERED || path.startsWith(`${COVERED}.`) ? found : [],
  );
  const cover = (face: Face, on: boolean) =>
    set(
      COVERED,
      FACES.filter((other) => (other === face ? on : covered.includes(other))),
    );
  const id = fieldId(COVERED);
  return (
    <fieldset class="field field-wide" id={id} tabIndex={-1} aria-describedby={messageIds(id, wrong.length > 0, false)}>
      <legend>Faces that the hood covers</legend>
      <FieldMessages id={id} problems={wrong}>
        Left and right as seen from outside.
      </FieldMessages>
      <div class="choice-row">
        {FACES.map((face) => (
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
