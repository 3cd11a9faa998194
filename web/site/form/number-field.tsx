/** A number of the site file: shown and read in the displayed unit; label, range and default come from the model. */
import { useEffect, useState } from 'preact/hooks';
import { compassPoint, fieldAt, type Site, unitSymbol } from '../../../model/index.ts';
import { valueAt } from '../draft.ts';
import { rangeText, shortQuantity, shownText, typedValue } from '../quantity-text.ts';
import { fieldHelp } from './field-help.ts';
import { FieldMessages, messageIds } from './field-messages.tsx';
import { fieldId, useForm } from './form-context.ts';

export interface NumberFieldProps {
  readonly path: string;
  /** Instead of the model's label, where one label covers two fields. */
  readonly label?: string;
  readonly disabled?: boolean;
  /** Must be filled in here, though the model knows a default for a field of this name elsewhere. */
  readonly needed?: boolean;
}

export function NumberField({ path, label, disabled = false, needed = false }: NumberFieldProps) {
  const { draft, units, problems, filled, set } = useForm();
  const field = fieldAt(path);
  const value = valueAt(draft, path);
  // While somebody types, the text stays as typed: "1." must not jump to "1".
  const [typing, setTyping] = useState<string | null>(null);
  // It was typed in the former unit.
  useEffect(() => setTyping(null), [units]);
  if (field === undefined) throw new Error(`no number field at ${path}`);

  const { kind } = field;
  const empty = needed ? undefined : (field.default?.value ?? assumedNumber(filled, path));
  const wrong = problems.get(path) ?? [];
  const id = fieldId(path);
  const symbol = unitSymbol(kind, units);
  const facing = kind === 'bearing' && typeof value === 'number' ? compassPoint(value) : null;
  const help = fieldHelp(path);
  const range = disabled ? '' : rangeText(field, units);

  return (
    <div class={kind === 'bearing' ? 'field field-wide' : 'field'}>
      <label for={id}>{label ?? field.label}</label>
      <span class="field-entry">
        <input
          id={id}
          type="text"
          inputMode={kind === 'bearing' ? 'text' : 'decimal'}
          autocomplete="off"
          maxLength={60}
          disabled={disabled}
          value={typing ?? shownText(value, kind, units)}
          placeholder={empty === undefined ? '' : shownText(empty, kind, units)}
          aria-invalid={wrong.length > 0}
          aria-describedby={messageIds(id, wrong.length > 0, help !== undefined)}
          onInput={({ currentTarget }) => {
            setTyping(currentTarget.value);
            set(path, typedValue(currentTarget.value, kind, units));
          }}
          onBlur={() => setTyping(null)}
        />
        {symbol !== '' && <span class="field-unit">{symbol}</span>}
        {facing !== null && <span class="field-unit">{facing}</span>}
      </span>
      <FieldMessages id={id} problems={wrong} help={help}>
        {range}
        {empty !== undefined && !disabled && `. Left empty: ${shortQuantity(empty, kind, units)}`}
      </FieldMessages>
    </div>
  );
}

/** What the model filled in at a path that was left out. */
function assumedNumber(filled: Site | null, path: string): number | undefined {
  const value = filled?.assumed.includes(path) ? valueAt(filled, path) : undefined;
  return typeof value === 'number' ? value : undefined;
}
