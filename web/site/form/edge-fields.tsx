/** Where on the building's outline a wall stands, and where on it the box. */
import { outlineEdges } from '../../../model/index.ts';
import { valueAt } from '../draft.ts';
import { edgeText } from './edge-text.ts';
import { useForm } from './form-context.ts';
import { NumberField } from './number-field.tsx';
import { enteredOutline } from './outline.ts';
import { ChoiceField } from './text-field.tsx';

export function EdgeFields({ wall }: { wall: number }) {
  const { draft, units, problems, filled, set } = useForm();
  const path = `walls.${wall}`;
  const entered = valueAt(draft, `${path}.edge`) ?? null;
  const known = (valueAt(draft, 'building') ?? null) !== null;
  // A file may say where on a building that it does not hold; what is wrong must be in sight.
  const wrong = ['edge', 'alongM'].some((key) => problems.has(`${path}.${key}`));
  if (!known && !wrong) return null;

  // While a corner holds text, the outline as last computed.
  const computed = filled?.building?.outlineM ?? null;
  const edges = outlineEdges(enteredOutline(draft) ?? computed ?? []);
  const options = edges.map((edge, k) => ({ value: String(k), label: `edge ${k}, ${edgeText(edge, units)}` }));
  const taken = entered === null && known && computed !== null ? filled?.walls[wall]?.edge : null;
  return (
    <>
      <ChoiceField
        path={`${path}.edge`}
        label="Edge of the building's outline"
        options={[{ value: '', label: 'found by the bearing of the wall' }, ...options]}
        onChoose={(edge) => set(`${path}.edge`, edge === '' ? undefined : Number(edge))}
      >
        {typeof taken === 'number' && options[taken] && `Taken: ${options[taken].label}.`}
      </ChoiceField>
      <NumberField path={`${path}.alongM`} label="from the left end of the edge to the middle of the box" />
    </>
  );
}
