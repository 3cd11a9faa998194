import { CONSTRUCTION_NAMES, CONSTRUCTIONS, compassPoint } from '../../../model/index.ts';
import { textAt, valueAt } from '../draft.ts';
import { Compass } from '../instruments/compass.tsx';
import { shortQuantity } from '../quantity-text.ts';
import { HOW_TO_HOLD } from './bearing-fields.tsx';
import { EdgeFields } from './edge-fields.tsx';
import { fieldId, useForm } from './form-context.ts';
import { HorizonEditor } from './horizon-editor.tsx';
import { NumberField } from './number-field.tsx';
import { ObstructionsEditor } from './obstructions-editor.tsx';
import { ChoiceField, TextField } from './text-field.tsx';

interface WallEditorProps {
  readonly index: number;
  rename(name: string): void;
  /** Null for the last wall, which stays. */
  readonly remove: (() => void) | null;
}

export function WallEditor({ index, rename, remove }: WallEditorProps) {
  const { draft, units, problems, filled, set } = useForm();
  const path = `walls.${index}`;
  const name = textAt(draft, `${path}.name`);
  const azimuth = valueAt(draft, `${path}.azimuthDeg`);
  const wrong = [...problems.keys()].some((other) => other === path || other.startsWith(`${path}.`));
  const facing =
    typeof azimuth === 'number' ? `faces ${compassPoint(azimuth)}, ${shortQuantity(azimuth, 'bearing', units)}` : '';

  return (
    <details class="wall-editor">
      <summary id={fieldId(path)}>
        <span class="summary-text">
          <h4>{name || `wall ${index + 1}`}</h4>
          <span class="gist">{facing}</span>
          {wrong && <span class="section-wrong">✕ problem</span>}
        </span>
      </summary>
      <div class="section-fields">
        <TextField path={`${path}.name`} label="Name of the wall" onText={rename} />
        <NumberField path={`${path}.azimuthDeg`} />
        <Compass how={HOW_TO_HOLD} onBearing={(bearing) => set(`${path}.azimuthDeg`, bearing)} />
        <EdgeFields wall={index} />
        <ChoiceField
          path={`${path}.construction`}
          label="Construction"
          options={CONSTRUCTION_NAMES.map((known) => ({ value: known, label: CONSTRUCTIONS[known].label }))}
          standIn={filled?.walls[index]?.construction ?? CONSTRUCTION_NAMES[0]}
        />
        <NumberField path={`${path}.electrodeDistanceM`} />
        <NumberField path={`${path}.cableDistanceM`} />
        <EaveFields path={`${path}.eave`} />
        <ObstructionsEditor path={`${path}.obstructions`} eavePath={`${path}.eave`} />
        <HorizonEditor path={`${path}.horizon`} />
        <ClearanceFields path={`${path}.clearances`} />
        <details class="more field-wide">
          <summary>More about this wall</summary>
          <div class="section-fields">
            <NumberField path={`${path}.solarAbsorptance`} />
            <NumberField path={`${path}.emittance`} />
            <NumberField path={`${path}.heightM`} />
            <NumberField path={`${path}.groundAlbedo`} />
            <NumberField path={`${path}.windShelter`} />
          </div>
        </details>
        {remove && (
          <p class="field-wide">
            <button type="button" onClick={remove}>
              Remove {name || 'this wall'}
            </button>
          </p>
        )}
      </div>
    </details>
  );
}

const CLEARANCE_FIELDS = ['meterM', 'gasVentM', 'exhaustM', 'sprinklerM'];

/** How far the box stays from what it must not stand beside; an empty field is a check left for the visit. */
function ClearanceFields({ path }: { path: string }) {
  const { units } = useForm();
  return (
    <details class="more field-wide">
      <summary>Clearances to meters, gas, exhausts and sprinklers</summary>
      <p class="field-hint">
        Nothing of the kind near: enter how far you looked, such as {units === 'us' ? '30 ft' : '10 m'}.
      </p>
      <div class="section-fields">
        {CLEARANCE_FIELDS.map((key) => (
          <NumberField key={key} path={`${path}.${key}`} quiet />
        ))}
      </div>
    </details>
  );
}

const EAVE_FIELDS = ['depthM', 'heightAboveBoxM', 'widthM', 'offsetM', 'transmittance'];

/** Roof edge, porch roof or canopy: whatever juts out above the box. */
function EaveFields({ path }: { path: string }) {
  const { draft, set } = useForm();
  // It is added by its picture.
  if ((valueAt(draft, path) ?? null) === null) return null;
  return (
    <div class="field-wide">
      <label class="choice">
        <input
          type="checkbox"
          id={fieldId(path)}
          checked
          onChange={() => set(path, undefined, 'The eave was taken out.')}
        />
        <span>An eave or a porch roof juts out above the box</span>
      </label>
      <div class="section-fields">
        {EAVE_FIELDS.map((key) => (
          <NumberField key={key} path={`${path}.${key}`} />
        ))}
      </div>
    </div>
  );
}
