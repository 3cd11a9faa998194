/** Where a trainee puts a guess: one of some choices, an hour on a slider, or a number in the shown unit. */
import { useId } from 'preact/hooks';
import type { GuessForm } from '../../../model/index.ts';
import { clockText } from './guess.ts';

interface GuessFieldProps {
  readonly form: GuessForm;
  readonly prompt: string;
  readonly value: string;
  readonly error: string;
  onValue(value: string): void;
}

export function GuessField({ form, prompt, value, error, onValue }: GuessFieldProps) {
  const id = useId();
  const described = error === '' ? {} : { 'aria-describedby': `${id}-error`, 'aria-invalid': true };
  return (
    <div class="guess-field">
      {form.type === 'choice' && (
        <fieldset class="guess-choices">
          <legend class="visually-hidden">{prompt}</legend>
          {form.choices.map((choice) => (
            <label key={choice.value}>
              <input
                type="radio"
                name={id}
                value={choice.value}
                checked={value === choice.value}
                onChange={() => onValue(choice.value)}
                {...described}
              />
              <span>{choice.label}</span>
            </label>
          ))}
        </fieldset>
      )}
      {form.type === 'time' && (
        <div class="guess-hour">
          <label for={id}>Time of the day</label> <output for={id}>{clockText(Number(value))}</output>
          <input
            id={id}
            type="range"
            min={0}
            max={23.75}
            step={0.25}
            value={value}
            aria-valuetext={clockText(Number(value))}
            onInput={({ currentTarget }) => onValue(currentTarget.value)}
          />
          <span class="hour-ends" aria-hidden="true">
            <span>00:00</span>
            <span>06:00</span>
            <span>12:00</span>
            <span>18:00</span>
            <span>24:00</span>
          </span>
        </div>
      )}
      {form.type === 'number' && (
        <label class="guess-number">
          <span>Your guess, {form.unit}</span>
          <input
            type="text"
            inputMode="decimal"
            autocomplete="off"
            value={value}
            onInput={({ currentTarget }) => onValue(currentTarget.value)}
            {...described}
          />
        </label>
      )}
      {error !== '' && (
        <p id={`${id}-error`} class="guess-error" role="alert">
          {error}
        </p>
      )}
    </div>
  );
}
