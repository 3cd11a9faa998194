/** Text, dates and choices of the site file. */
import type { ComponentChildren } from 'preact';
import { valueAt } from '../draft.ts';
import { FieldMessages, messageIds } from './field-messages.tsx';
import { fieldId, useForm } from './form-context.ts';

interface TextFieldProps {
  readonly path: string;
  readonly label: string;
  readonly type?: 'text' | 'date';
  readonly help?: string;
  readonly placeholder?: string;
  /** Id of a list of suggestions. */
  readonly list?: string;
  readonly onText?: (text: string) => void;
  /** What stands below the field, beside the messages. */
  readonly children?: ComponentChildren;
}

export function TextField({ path, label, type = 'text', help, placeholder, list, onText, children }: TextFieldProps) {
  const { draft, problems, set } = useForm();
  const value = valueAt(draft, path);
  const wrong = problems.get(path) ?? [];
  const id = fieldId(path);
  return (
    <div class="field field-wide">
      <label for={id}>{label}</label>
      <input
        id={id}
        type={type}
        autocomplete="off"
        maxLength={200}
        list={list}
        placeholder={placeholder}
        value={typeof value === 'string' ? value : ''}
        aria-invalid={wrong.length > 0}
        aria-describedby={messageIds(id, wrong.length > 0, help !== undefined)}
        onInput={({ currentTarget: { value: text } }) => {
          if (onText) onText(text);
          else set(path, text === '' ? undefined : text);
        }}
      />
      <FieldMessages id={id} problems={wrong} help={help}>
        {children}
      </FieldMessages>
    </div>
  );
}

interface ChoiceFieldProps {
  readonly path: string;
  readonly label: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  /** The option that an empty field stands for. */
  readonly standIn?: string;
  readonly onChoose?: (value: string) => void;
  readonly children?: ComponentChildren;
}

export function ChoiceField({ path, label, options, standIn = '', onChoose, children }: ChoiceFieldProps) {
  const { draft, problems, set } = useForm();
  const value = valueAt(draft, path);
  // Where nothing can be chosen, a file may say so with null.
  const nothing = value === undefined || (value === null && options.some((option) => option.value === ''));
  const shown = nothing ? standIn : String(value);
  const wrong = problems.get(path) ?? [];
  const id = fieldId(path);
  return (
    <div class="field field-wide">
      <label for={id}>{label}</label>
      <select
        id={id}
        value={shown}
        aria-invalid={wrong.length > 0}
        aria-describedby={messageIds(id, wrong.length > 0, false)}
        onChange={({ currentTarget }) => (onChoose ?? ((chosen) => set(path, chosen)))(currentTarget.value)}
      >
        {/* An imported file may hold a word that is no option; it must not look like the first one. */}
        {!options.some((option) => option.value === shown) && <option value={shown}>{shown}</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
      <FieldMessages id={id} problems={wrong}>
        {children}
      </FieldMessages>
    </div>
  );
}
