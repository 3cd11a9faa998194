/** The permitted temperatures, and what they are a limit of: like must be compared with like. */
import { LIMIT_REFERENCES, type Site } from '../../../model/index.ts';
import { valueAt } from '../draft.ts';
import { shortQuantity } from '../quantity-text.ts';
import { limitSubject } from '../words.ts';
import { fieldId, useForm } from './form-context.ts';
import { NumberField } from './number-field.tsx';
import { Section } from './section.tsx';

type Reference = Site['limits']['refersTo'];

const MEANING: Record<Reference, string> = {
  insideAir:
    'The data sheet speaks of the air around a board or module that sits in a closed box. The box then adds its own heat and sun to the weather.',
  outsideAir:
    'The maker states the weather that the whole closed unit stands. The sun is seldom in that figure: read the small print.',
  componentCase: 'The data sheet states how hot the part itself may get. Compared with the electronics in the box.',
};

export function LimitsSection() {
  const { draft, units, set } = useForm();
  const stated = valueAt(draft, 'limits.refersTo');
  const reference = LIMIT_REFERENCES.find((known) => known === stated) ?? (stated === undefined ? 'insideAir' : null);
  const upper = valueAt(draft, 'limits.maxC');
  const upperText = typeof upper === 'number' ? ` up to ${shortQuantity(upper, 'temperature', units)}` : '';
  return (
    <Section title="Limits" gist={reference === null ? '' : `${limitSubject(reference)}${upperText}`} path="limits">
      <NumberField path="limits.minC" />
      <NumberField path="limits.maxC" />
      <fieldset class="field field-wide choices" id={fieldId('limits.refersTo')} tabIndex={-1}>
        <legend>What the limit is a limit of</legend>
        {LIMIT_REFERENCES.map((choice) => (
          <label key={choice} class="choice">
            <input
              type="radio"
              name="limit-reference"
              checked={choice === reference}
              onChange={() => set('limits.refersTo', choice)}
            />
            <span>
              <b>{limitSubject(choice)}</b>
              <span class="choice-meaning">{MEANING[choice]}</span>
            </span>
          </label>
        ))}
      </fieldset>
    </Section>
  );
}
