/** A number of the site file: shown and read in the displayed unit; label, range and default come from the model. */
import { fieldAt, type Site } from '../../../model/index.ts';
import { valueAt } from '../draft.ts';
import { rangeText, shortQuantity, shownText } from '../quantity-text.ts';
import { fieldHelp } from './field-help.ts';
import { fieldId, useForm } from './form-context.ts';
import { NumberEntry } from './number-entry.tsx';

export interface NumberFieldProps {
  readonly path: string;
  /** Instead of the model's label, where one label covers two fields. */
  readonly label?: string;
  readonly disabled?: boolean;
  /** Must be filled in here, though the model knows a default for a field of this name elsewhere. */
  readonly needed?: boolean;
  /** Its range is said elsewhere, once for a list of such fields. */
  readonly quiet?: boolean;
  /** What an empty field stands for, where another field decides it. */
  readonly standIn?: number | undefined;
}

export function NumberField(props: NumberFieldProps) {
  const { path, label, disabled = false, needed = false, quiet = false, standIn } = props;
  const { draft, units, problems, filled, set } = useForm();
  const field = fieldAt(path);
  if (field === undefined) throw new Error(`no number field at ${path}`);

  const { kind } = field;
  // What was filled in says more than the usual default: a climate brings its altitude, a finish its absorptance.
  const empty = needed ? undefined : (standIn ?? assumedNumber(filled, path) ?? field.default?.value);
  const range = disabled || quiet ? '' : rangeText(field, units);
  const leftEmpty = empty === undefined || disabled ? '' : `. Left empty: ${shortQuantity(empty, kind, units)}`;
  return (
    <NumberEntry
      id={fieldId(path)}
      label={label ?? field.label}
      kind={kind}
      units={units}
      value={valueAt(draft, path)}
      problems={problems.get(path) ?? []}
      disabled={disabled}
      placeholder={empty === undefined ? '' : shownText(empty, kind, units)}
      help={fieldHelp(path)}
      hint={`${range}${leftEmpty}`}
      onValue={(value) => set(path, value)}
    />
  );
}

/** What the model filled in at a path that was left out. */
function assumedNumber(filled: Site | null, path: string): number | undefined {
  const value = filled?.assumed.includes(path) ? valueAt(filled, path) : undefined;
  return typeof value === 'number' ? value : undefined;
}
