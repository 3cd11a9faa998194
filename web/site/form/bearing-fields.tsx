/** The one bearing that makes the four walls of a building whose outline nobody entered. */
import { useState } from 'preact/hooks';
import { readNumberText } from '../../../model/index.ts';
import { valueAt } from '../draft.ts';
import { Compass } from '../instruments/compass.tsx';
import { useForm } from './form-context.ts';
import { hasFourWalls, withFourWalls } from './four-walls.ts';
import { NumberEntry } from './number-entry.tsx';

export const HOW_TO_HOLD = 'Stand with your back to the wall and hold the device level, its top away from the wall.';

export function BearingFields() {
  const { draft, units, set } = useForm();
  const first = valueAt(draft, 'walls.0.azimuthDeg');
  const [entered, setEntered] = useState<number | string | undefined>(undefined);
  const value = entered ?? (typeof first === 'number' ? first : undefined);
  const read = typeof value === 'string' ? readNumberText(value, 'bearing') : value;
  const good = typeof read === 'number' && read >= 0 && read <= 360;
  const four = hasFourWalls(draft);
  const make = (bearing: number) => {
    setEntered(undefined);
    const done = four ? 'The four walls were turned.' : 'The walls are now the four of a rectangular building.';
    set('', withFourWalls(draft, bearing, units), done);
  };
  return (
    <fieldset class="field field-wide">
      <legend>One bearing makes four walls</legend>
      <p class="field-hint">The way that one wall of a rectangular building faces, straight out.</p>
      <div class="section-fields">
        <NumberEntry
          id="first-bearing"
          label="bearing of one wall, from true north"
          kind="bearing"
          units={units}
          value={value}
          problems={entered !== undefined && !good ? [NO_BEARING] : []}
          onValue={setEntered}
        />
        <p class="field-wide">
          <button type="button" disabled={!good} onClick={() => good && make(read)}>
            {four ? 'Turn the four walls to it' : 'Make the four walls'}
          </button>
        </p>
        <Compass how={HOW_TO_HOLD} onBearing={setEntered} />
      </div>
    </fieldset>
  );
}

const NO_BEARING = {
  path: 'first-bearing',
  subject: 'bearing of one wall',
  text: 'no bearing: degrees from 0 to 360 or a compass point',
  allowed: '',
};
