/** A part that a site may have or not, such as a battery: a box to tick, and the fields of the part while it is there. */
import type { ComponentChildren } from 'preact';
import { type Draft, valueAt } from '../draft.ts';
import { CheckField } from './check-field.tsx';
import { useForm } from './form-context.ts';
import { NumberField } from './number-field.tsx';

interface PartFieldsProps {
  readonly path: string;
  readonly label: string;
  /** What the part starts with. */
  readonly start: Draft;
  /** Its number fields, in order. */
  readonly keys: readonly string[];
  /** What was done when it was taken out, for the way back. */
  readonly takenOut: string;
  readonly children?: ComponentChildren;
}

export function PartFields({ path, label, start, keys, takenOut, children }: PartFieldsProps) {
  const { draft, set } = useForm();
  const present = hasPart(draft, path);
  return (
    <div class="field-wide">
      <CheckField
        path={path}
        label={label}
        checked={present}
        onCheck={(on) => (on ? set(path, start) : set(path, undefined, takenOut))}
      >
        {children}
      </CheckField>
      {present && (
        <div class="section-fields">
          {keys.map((key) => (
            <NumberField key={key} path={`${path}.${key}`} />
          ))}
        </div>
      )}
    </div>
  );
}

/** Whether the part is there; a file may say with null that it is not. */
export function hasPart(draft: Draft, path: string): boolean {
  return (valueAt(draft, path) ?? null) !== null;
}
