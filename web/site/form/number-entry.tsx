/** The entry of a quantity in the displayed unit: label, text, unit, messages. Where its value lives is the caller's. */
import { useEffect, useState } from 'preact/hooks';
import { compassPoint, type QuantityKind, type UnitSystem, unitSymbol } from '../../../model/index.ts';
import type { ShownProblem } from '../problems.ts';
import { shownText, typedValue } from '../quantity-text.ts';
import { FieldMessages, messageIds } from './field-messages.tsx';

export interface NumberEntryProps {
  readonly id: string;
  readonly label: string;
  readonly kind: QuantityKind;
  readonly units: UnitSystem;
  /** SI, or text as typed. */
  readonly value: unknown;
  readonly problems: readonly ShownProblem[];
  readonly disabled?: boolean;
  readonly placeholder?: string;
  readonly help?: string | undefined;
  readonly hint?: string;
  onValue(value: number | string | undefined): void;
  /** The person went on to another field; what was typed has become what `value` shows. */
  onLeave?(): void;
}

export function NumberEntry(props: NumberEntryProps) {
  const { id, label, kind, units, value, problems, disabled = false, placeholder = '', help, hint } = props;
  // While somebody types, the text stays as typed: "1." must not jump to "1".
  const [typing, setTyping] = useState<string | null>(null);
  // It was typed in the former unit.
  useEffect(() => setTyping(null), [units]);

  const symbol = unitSymbol(kind, units);
  const facing = kind === 'bearing' && typeof value === 'number' ? compassPoint(value) : null;
  return (
    <div class={kind === 'bearing' ? 'field field-wide' : 'field'}>
      <label for={id}>{label}</label>
      <span class="field-entry">
        <input
          id={id}
          type="text"
          inputMode={kind === 'bearing' ? 'text' : 'decimal'}
          autocomplete="off"
          maxLength={60}
          disabled={disabled}
          value={typing ?? shownText(value, kind, units)}
          placeholder={placeholder}
          aria-invalid={problems.length > 0}
          aria-describedby={messageIds(id, problems.length > 0, help !== undefined)}
          onInput={({ currentTarget }) => {
            setTyping(currentTarget.value);
            props.onValue(typedValue(currentTarget.value, kind, units));
          }}
          onBlur={() => {
            setTyping(null);
            props.onLeave?.();
          }}
        />
        {symbol !== '' && <span class="field-unit">{symbol}</span>}
        {facing !== null && <span class="field-unit">{facing}</span>}
      </span>
      <FieldMessages id={id} problems={problems} help={help}>
        {hint}
      </FieldMessages>
    </div>
  );
}
