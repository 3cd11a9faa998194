/** What is in the box: when it gives off its heat, a battery, a second room. */
import { DUTIES, DUTY_NAMES } from '../../../model/index.ts';
import { type Draft, valueAt } from '../draft.ts';
import { Fold } from './fold.tsx';
import { useForm } from './form-context.ts';
import { hasPart, PartFields } from './part-fields.tsx';
import { ChoiceField } from './text-field.tsx';

const DUTY = 'box.duty';
const BATTERY = 'box.battery';
const ROOMS = 'box.compartments';

/** A sealed battery of 12 V and 7 Ah, the usual one beside small outdoor units. */
const USUAL_BATTERY = { massKg: 2.5 };

export function InsideFields() {
  const { draft } = useForm();
  const duty = enteredDuty(draft);
  return (
    <Fold title="Inside" gist={gistOf(draft)} paths={[DUTY, BATTERY, ROOMS]}>
      <ChoiceField
        path={DUTY}
        label="The heat through the day"
        options={DUTY_NAMES.map((name) => ({ value: name, label: DUTIES[name].label }))}
        standIn="constant"
      >
        {duty && `Of the heat entered above. Origin: ${DUTIES[duty].origin}.`}
      </ChoiceField>
      <PartFields
        path={BATTERY}
        label="A battery in the box"
        start={USUAL_BATTERY}
        keys={['massKg', 'powerW']}
        takenOut="The battery was taken out."
      >
        Beside the mass entered above. It warms and cools slowly.
      </PartFields>
      <PartFields
        path={ROOMS}
        label="Two rooms, one above the other"
        start={{}}
        keys={['lowerShare', 'lowerPowerW']}
        takenOut="The box has one room again."
      >
        The electronics are in the upper room, a battery in the lower one.
      </PartFields>
    </Fold>
  );
}

function enteredDuty(draft: Draft) {
  const entered = valueAt(draft, DUTY) ?? 'constant';
  return DUTY_NAMES.find((name) => name === entered) ?? null;
}

function gistOf(draft: Draft): string {
  const duty = enteredDuty(draft);
  return [
    hasPart(draft, ROOMS) ? 'two rooms' : 'one room',
    hasPart(draft, BATTERY) ? 'a battery' : 'no battery',
    ...(duty === null || duty === 'constant' ? [] : ['heat by the clock']),
  ].join(', ');
}
