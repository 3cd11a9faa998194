/** The finish of the box and what it gives: how much of the sun it takes in, how well it radiates, how it burns who touches it. */
import { FINISH_NAMES, FINISH_STATES, FINISHES, TOUCH_MATERIALS } from '../../../model/index.ts';
import { type Draft, valueAt, withValue } from '../draft.ts';
import { Fold } from './fold.tsx';
import { useForm } from './form-context.ts';
import { NumberField } from './number-field.tsx';
import { ChoiceField } from './text-field.tsx';

type Finish = (typeof FINISHES)[keyof typeof FINISHES];

const FINISH = 'box.finish';
const STATE = 'box.finishState';
const MATERIAL = 'box.material';
const ABSORPTANCE = 'box.solarAbsorptance';
const EMITTANCE = 'box.emittance';
const PATHS = [FINISH, STATE, MATERIAL, ABSORPTANCE, EMITTANCE];

const STATE_WORDS: Record<(typeof FINISH_STATES)[number], string> = {
  new: 'new',
  weathered: 'after some years outdoors',
};

export function FinishFields() {
  const { draft, problems, set } = useForm();
  const finish = enteredFinish(draft);
  const surface = finish?.[enteredState(draft)];
  const choose = (name: string) => {
    // Figures entered before would outdo the finish that was just chosen.
    const had = [ABSORPTANCE, EMITTANCE].filter((path) => valueAt(draft, path) !== undefined);
    const cleared = had.reduce((rest, path) => withValue(rest, path, undefined), draft);
    if (name === '') set(FINISH, undefined);
    else if (had.length === 0) set(FINISH, name);
    else set('', withValue(cleared, FINISH, name), 'Absorptance and emittance now come from the finish.');
  };
  return (
    <Fold title="Finish" gist={gistOf(draft)} paths={PATHS}>
      <ChoiceField
        path={FINISH}
        label="Finish of the box"
        options={[
          { value: '', label: 'none chosen' },
          ...FINISH_NAMES.map((name) => ({ value: name, label: FINISHES[name].label })),
        ]}
        onChoose={choose}
      >
        {finish ? `Source: ${finish.source}.` : 'Stands in for absorptance and emittance where they are left empty.'}
      </ChoiceField>
      {(finish !== null || problems.has(STATE)) && (
        <ChoiceField
          path={STATE}
          label="State of the finish"
          options={FINISH_STATES.map((state) => ({ value: state, label: STATE_WORDS[state] }))}
          standIn="weathered"
        >
          {finish && statesText(finish)}
        </ChoiceField>
      )}
      <NumberField path={ABSORPTANCE} standIn={surface?.solarAbsorptance} />
      <NumberField path={EMITTANCE} standIn={surface?.emittance} />
      <ChoiceField
        path={MATERIAL}
        label="Outer skin"
        options={TOUCH_MATERIALS.map((material) => ({ value: material, label: material }))}
        standIn={TOUCH_MATERIALS[0]}
      >
        For the temperature at which it burns: metal burns sooner than plastic. Painted metal counts as metal.
      </ChoiceField>
    </Fold>
  );
}

function statesText(finish: Finish): string {
  const [fresh, old] = FINISH_STATES.map((state) => finish[state].solarAbsorptance);
  return fresh === old
    ? `Absorbs ${fresh} of the sun, new or old.`
    : `Absorbs ${fresh} of the sun new, ${old} weathered.`;
}

/** The chosen finish; null for none, and for a word of a file that is none. */
function enteredFinish(draft: Draft): Finish | null {
  const entered = valueAt(draft, FINISH);
  const name = FINISH_NAMES.find((known) => known === entered);
  return name === undefined ? null : FINISHES[name];
}

function enteredState(draft: Draft) {
  const entered = valueAt(draft, STATE);
  return FINISH_STATES.find((known) => known === entered) ?? 'weathered';
}

function gistOf(draft: Draft): string {
  const absorptance = valueAt(draft, ABSORPTANCE);
  const finish = enteredFinish(draft);
  if (typeof absorptance === 'number') return `absorbs ${absorptance} of the sun`;
  return finish === null ? 'none chosen' : finish.label;
}
