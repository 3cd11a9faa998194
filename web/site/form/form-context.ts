/** What every field of the form needs: the draft, its problems, and the last good site. */
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Site, UnitSystem } from '../../../model/index.ts';
import type { Draft } from '../draft.ts';
import type { ProblemsByPath } from '../problems.ts';

export interface FormState {
  readonly draft: Draft;
  readonly units: UnitSystem;
  readonly problems: ProblemsByPath;
  /** The last good site, whose filled-in values stand in empty fields as placeholders. */
  readonly filled: Site | null;
  /** With what was done in words, the change can be undone. */
  set(path: string, value: unknown, done?: string): void;
  /** Leads to the verdict in full. */
  toVerdict(): void;
}

export const FORM_ID = 'site-form';

export const FormContext = createContext<FormState | null>(null);

export function useForm(): FormState {
  const form = useContext(FormContext);
  if (form === null) throw new Error('a form field stands outside the form');
  return form;
}

/** The id of the field at a path, for labels, messages and links. */
export function fieldId(path: string): string {
  return `field-${path.replaceAll('.', '-')}`;
}

/** Moves to the field at a path, or to the part of the form it belongs to, and opens whatever folds it away. */
export function goToField(path: string): void {
  const keys = path.split('.');
  while (keys.length > 0 && document.getElementById(fieldId(keys.join('.'))) === null) keys.pop();
  const target = document.getElementById(keys.length > 0 ? fieldId(keys.join('.')) : FORM_ID);
  for (let parent = target?.parentElement; parent; parent = parent.parentElement) {
    if (parent instanceof HTMLDetailsElement) parent.open = true;
  }
  target?.focus();
}
