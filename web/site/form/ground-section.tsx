import { valueAt } from '../draft.ts';
import { shownText } from '../quantity-text.ts';
import { useForm } from './form-context.ts';
import { NumberField } from './number-field.tsx';
import { Section } from './section.tsx';

const ALBEDO = 'ground.albedo';

export function GroundSection() {
  const { draft, units } = useForm();
  const albedo = shownText(valueAt(draft, ALBEDO), 'ratio', units);
  return (
    <Section title="Ground" gist={albedo === '' ? '' : `albedo ${albedo}`} path="ground">
      <NumberField path={ALBEDO} />
    </Section>
  );
}
