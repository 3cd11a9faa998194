/** A box to tick, with its problems and help below it. */
import type { ComponentChildren } from 'preact';
import { FieldMessages, messageIds } from './field-messages.tsx';
import { fieldId, useForm } from './form-context.ts';

interface CheckFieldProps {
  readonly path: string;
  readonly label: string;
  readonly checked: boolean;
  /** Where the id of the path names the section that the box stands in. */
  readonly id?: string;
  readonly children?: ComponentChildren;
  onCheck(on: boolean): void;
}

export function CheckField({ path, label, checked, id = fieldId(path), children, onCheck }: CheckFieldProps) {
  const wrong = useForm().problems.get(path) ?? [];
  return (
    <>
      <label class="choice">
        <input
          type="checkbox"
          id={id}
          checked={checked}
          aria-invalid={wrong.length > 0}
          aria-describedby={messageIds(id, wrong.length > 0, false)}
          onChange={({ currentTarget }) => onCheck(currentTarget.checked)}
        />
        <span>{label}</span>
      </label>
      <FieldMessages id={id} problems={wrong}>
        {children}
      </FieldMessages>
    </>
  );
}
