/** Openings low and high in the box, through which air rises. */
import { type Draft, valueAt } from '../draft.ts';
import { shortQuantity } from '../quantity-text.ts';
import { Fold } from './fold.tsx';
import { type FormState, useForm } from './form-context.ts';
import { hasPart, PartFields } from './part-fields.tsx';

const VENTS = 'box.vents';

const USUAL_VENTS = { lowAreaM2: 0.004, highAreaM2: 0.004 };

export function VentFields() {
  const { draft, units } = useForm();
  return (
    <Fold title="Vents" gist={gistOf(draft, units)} paths={[VENTS]}>
      <PartFields
        path={VENTS}
        label="The box has openings, low and high"
        start={USUAL_VENTS}
        keys={['lowAreaM2', 'highAreaM2', 'heightM', 'dischargeCoefficient']}
        takenOut="The vents were taken out."
      >
        Openings let in dust, insects and water: only where the maker provides for them.
      </PartFields>
    </Fold>
  );
}

function gistOf(draft: Draft, units: FormState['units']): string {
  if (!hasPart(draft, VENTS)) return 'none';
  const areas = ['low', 'high'].flatMap((place) => {
    const areaM2 = valueAt(draft, `${VENTS}.${place}AreaM2`);
    return typeof areaM2 === 'number' ? [`${shortQuantity(areaM2, 'smallArea', units)} ${place}`] : [];
  });
  return areas.join(', ');
}
