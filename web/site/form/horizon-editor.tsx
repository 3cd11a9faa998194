/** What stands up on the horizon in front of a wall: points of bearing and elevation, as a phone's inclinometer gives them. */
import { listAt } from '../draft.ts';
import { Inclinometer } from '../instruments/inclinometer.tsx';
import { fieldId, useForm } from './form-context.ts';
import { NumberField } from './number-field.tsx';

export function HorizonEditor({ path }: { path: string }) {
  const { draft, set } = useForm();
  const points = listAt(draft, path);
  const without = (index: number) => {
    const rest = points.toSpliced(index, 1);
    set(path, rest.length > 0 ? rest : undefined);
  };
  return (
    <fieldset class="field field-wide" id={fieldId(path)} tabIndex={-1}>
      <legend>Skyline in front of the wall</legend>
      <p class="field-hint">Hills, buildings and trees, sighted from the box. Empty: free to the horizon.</p>
      <Inclinometer add={(bearing, elevation) => set(`${path}.${points.length}`, [bearing, elevation])} />
      {points.map((_, index) => (
        <div class="field-pair" key={index}>
          <NumberField path={`${path}.${index}.0`} label={`bearing of point ${index + 1}`} />
          <NumberField path={`${path}.${index}.1`} label={`elevation of point ${index + 1}`} />
          <button type="button" class="small-button" onClick={() => without(index)}>
            Remove point {index + 1}
          </button>
        </div>
      ))}
      <button
        type="button"
        class="small-button"
        onClick={() => set(`${path}.${points.length}`, [undefined, undefined])}
      >
        Add a point
      </button>
    </fieldset>
  );
}
