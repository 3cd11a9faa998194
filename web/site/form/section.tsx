/** A part of the form that folds; its heading says what is inside, so that a folded form still reads as a site. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { fieldId, useForm } from './form-context.ts';

interface SectionProps {
  readonly title: string;
  /** The entered values in a few words. */
  readonly gist: string;
  /** The part of the site file that this shows; its problems are counted in the heading. */
  readonly path: string;
  readonly children: ComponentChildren;
}

/** Where there is room for two columns, the form starts unfolded. */
const ROOMY = '(min-width: 1000px)';

export function Section({ title, gist, path, children }: SectionProps) {
  const [startsOpen] = useState(() => matchMedia(ROOMY).matches);
  const { problems } = useForm();
  const count = [...problems.keys()].filter((other) => other === path || other.startsWith(`${path}.`)).length;
  return (
    <details class="section" open={startsOpen}>
      <summary id={fieldId(path)}>
        <span class="summary-text">
          <h3>{title}</h3>
          <span class="gist">{gist}</span>
          {count > 0 && <span class="section-wrong">✕ {count === 1 ? '1 problem' : `${count} problems`}</span>}
        </span>
      </summary>
      <div class="section-fields">{children}</div>
    </details>
  );
}
