/** What a wall must satisfy whatever its temperature. */
import { fieldAt } from '../../../model/index.ts';
import { valueAt } from '../draft.ts';
import { shortQuantity } from '../quantity-text.ts';
import { FieldMessages } from './field-messages.tsx';
import { fieldId, useForm } from './form-context.ts';
import { NumberField } from './number-field.tsx';
import { Section } from './section.tsx';

const ELECTRODE = 'constraints.maxElectrodeDistanceM';
const CABLE = 'constraints.maxCableDistanceM';
const HEIGHT = 'constraints.mountHeightM';

export function ConstraintsSection() {
  const { draft, units, problems } = useForm();
  const reach = (path: string, what: string) => {
    const value = valueAt(draft, path) ?? fieldAt(path)?.default?.value;
    return typeof value === 'number' ? [`${what} ${shortQuantity(value, 'length', units)}`] : [];
  };
  const noHeight = valueAt(draft, HEIGHT) === null;
  return (
    <Section
      title="What the wall must allow"
      gist={[...reach(ELECTRODE, 'electrode within'), ...reach(CABLE, 'cable within')].join(', ')}
      path="constraints"
    >
      <div class="field-group">
        <NumberField path={ELECTRODE} disabled={valueAt(draft, ELECTRODE) === null} />
        <NoLimit path={ELECTRODE} label="No limit for the electrode run" />
      </div>
      <div class="field-group">
        <NumberField path={CABLE} />
        <p class="field-hint">Empty: no limit.</p>
      </div>
      <NumberField path="earthing.conductorMm2" />
      <NumberField path="earthing.electrodeDepthM" />
      <fieldset class="field field-wide" id={fieldId(HEIGHT)} tabIndex={-1}>
        <legend>{fieldAt(HEIGHT)?.label}</legend>
        <FieldMessages id={fieldId(HEIGHT)} problems={problems.get(HEIGHT) ?? []} />
        <div class="field-pair">
          <NumberField path={`${HEIGHT}.0`} label="from" disabled={noHeight} />
          <NumberField path={`${HEIGHT}.1`} label="to" disabled={noHeight} />
        </div>
        <NoLimit path={HEIGHT} label="Any height" />
      </fieldset>
    </Section>
  );
}

/** In a site file, null says that there is no limit; an empty field stands for the default. */
function NoLimit({ path, label }: { path: string; label: string }) {
  const { draft, set } = useForm();
  return (
    <label class="choice">
      <input
        type="checkbox"
        checked={valueAt(draft, path) === null}
        onChange={({ currentTarget }) => set(path, currentTarget.checked ? null : undefined)}
      />
      <span>{label}</span>
    </label>
  );
}
