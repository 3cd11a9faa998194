/** A group of fields that folds within a section; its heading says what is entered, so that it need not be opened to be read. */
import type { ComponentChildren } from 'preact';
import { useForm } from './form-context.ts';

interface FoldProps {
  readonly title: string;
  /** The entered values in a few words. */
  readonly gist: string;
  /** The parts of the site file that this shows; their problems are counted in the heading. */
  readonly paths: readonly string[];
  readonly children: ComponentChildren;
}

export function Fold({ title, gist, paths, children }: FoldProps) {
  const { problems } = useForm();
  const here = (other: string) => paths.some((path) => other === path || other.startsWith(`${path}.`));
  const count = [...problems.keys()].filter(here).length;
  return (
    <details class="more field-wide">
      <summary>
        <span class="summary-text">
          <h4>{title}</h4>
          <span class="gist">{gist}</span>
          {count > 0 && <span class="section-wrong">✕ {count === 1 ? '1 problem' : `${count} problems`}</span>}
        </span>
      </summary>
      <div class="section-fields">{children}</div>
    </details>
  );
}
