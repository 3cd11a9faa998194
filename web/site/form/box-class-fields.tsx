import { unitSymbol } from '../../../model/index.ts';
import { BOX_CLASSES, boxClassOf, withBoxClass } from './box-classes.ts';
import { useForm } from './form-context.ts';

export function BoxClassFields() {
  const { draft, units, set } = useForm();
  const current = boxClassOf(draft);
  return (
    <fieldset class="field field-wide">
      <legend>A usual size, or your own figures below</legend>
      <div class="box-classes">
        {BOX_CLASSES.map((boxClass) => (
          <button
            key={boxClass.name}
            type="button"
            class="box-class"
            aria-pressed={boxClass === current}
            onClick={() =>
              set('', withBoxClass(draft, boxClass, units), `The box is now of the size “${boxClass.name}”.`)
            }
          >
            <b>{boxClass.name}</b>
            <span>
              {boxClass.size[units].join(' × ')} {unitSymbol('smallLength', units)}, {boxClass.powerW} W
            </span>
            <span>{boxClass.holds}</span>
          </button>
        ))}
      </div>
      <p class="field-hint">Round figures, common practice, no source. The data sheet of the equipment knows better.</p>
    </fieldset>
  );
}
