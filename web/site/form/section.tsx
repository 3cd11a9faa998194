/**
 * A step of the form: it folds, its heading says what is inside, so that a folded form still reads as a site, and its last
 * button leads on.
 */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { fieldId, goToField, useForm } from './form-context.ts';
import { STEPS, stepAfter } from './steps.ts';

interface SectionProps {
  readonly title: string;
  /** The entered values in a few words. */
  readonly gist: string;
  /** The part of the site file that this shows; its problems are counted in the heading. */
  readonly path: string;
  readonly children: ComponentChildren;
}

/** Where there is room for two columns, the form starts unfolded. */
const ROOMY = '(min-width: 62.5em)';

export function Section({ title, gist, path, children }: SectionProps) {
  const [startsOpen] = useState(() => matchMedia(ROOMY).matches || path === STEPS[0].path);
  const { problems, toVerdict } = useForm();
  const count = [...problems.keys()].filter((other) => other === path || other.startsWith(`${path}.`)).length;
  const next = stepAfter(path);
  const goOn = () => {
    const summary = document.getElementById(fieldId(path));
    // One step at a time where there is room for one; the rest is read in the headings.
    if (summary?.parentElement instanceof HTMLDetailsElement && !matchMedia(ROOMY).matches) {
      summary.parentElement.open = false;
    }
    if (next === null) toVerdict();
    else goToStep(next.path);
  };
  return (
    <li class="step">
      <details class="section" open={startsOpen}>
        <summary id={fieldId(path)}>
          <span class="summary-text">
            <h3>{title}</h3>
            <span class="gist">{gist}</span>
            {count > 0 && <span class="section-wrong">✕ {count === 1 ? '1 problem' : `${count} problems`}</span>}
          </span>
        </summary>
        <div class="section-fields">{children}</div>
        <p class="step-end">
          <button type="button" class="next-button" onClick={goOn}>
            {next === null ? 'To the verdict' : `Next: ${next.name}`}
          </button>
        </p>
      </details>
    </li>
  );
}

/** Opens a step and puts it at the top of the window, with the keyboard at its heading. */
function goToStep(path: string) {
  goToField(path);
  const summary = document.getElementById(fieldId(path));
  if (summary?.parentElement instanceof HTMLDetailsElement) summary.parentElement.open = true;
  summary?.scrollIntoView({ block: 'start' });
}
