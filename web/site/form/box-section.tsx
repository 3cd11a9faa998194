import { fieldAt } from '../../../model/index.ts';
import { valueAt } from '../draft.ts';
import { shortQuantity } from '../quantity-text.ts';
import { BoxClassFields } from './box-class-fields.tsx';
import { FinishFields } from './finish-fields.tsx';
import { useForm } from './form-context.ts';
import { HoodFields } from './hood-fields.tsx';
import { InsideFields } from './inside-fields.tsx';
import { MountFields } from './mount-fields.tsx';
import { NumberField } from './number-field.tsx';
import { Section } from './section.tsx';
import { VentFields } from './vent-fields.tsx';

const SIZE = ['box.widthM', 'box.heightM', 'box.depthM'] as const;
const REST = ['box.powerW', 'box.massKg', 'box.mountHeightM'];

export function BoxSection() {
  const { draft, units } = useForm();
  const quantity = (path: string) => {
    const value = valueAt(draft, path);
    const kind = fieldAt(path)?.kind;
    if (typeof value === 'string') return value;
    return typeof value === 'number' && kind !== undefined ? shortQuantity(value, kind, units) : '?';
  };
  return (
    <Section title="Box" gist={`${SIZE.map(quantity).join(' × ')}, ${quantity('box.powerW')}`} path="box">
      <BoxClassFields />
      {[...SIZE, ...REST].map((path) => (
        <NumberField key={path} path={path} />
      ))}
      <FinishFields />
      <InsideFields />
      <VentFields />
      <MountFields />
      <HoodFields />
    </Section>
  );
}
