/** What stands below a field: what is wrong, what is allowed, what the word means. */
import type { ComponentChildren } from 'preact';
import type { ShownProblem } from '../problems.ts';

export interface FieldMessagesProps {
  readonly id: string;
  readonly problems: readonly ShownProblem[];
  readonly help?: string | undefined;
  readonly children?: ComponentChildren;
}

export function FieldMessages({ id, problems, help, children }: FieldMessagesProps) {
  return (
    <div class="field-messages">
      {problems.length > 0 && (
        <p class="field-problem" id={`${id}-problem`}>
          <span aria-hidden="true">✕ </span>
          {problems.map(({ text }) => text).join('; ')}
        </p>
      )}
      <p class="field-hint" id={`${id}-hint`}>
        {children}
      </p>
      {help !== undefined && (
        <p class="field-hint" id={`${id}-help`}>
          {help}
        </p>
      )}
    </div>
  );
}

/** The ids for aria-describedby, the problem first. */
export function messageIds(id: string, wrong: boolean, help: boolean): string {
  return [wrong && `${id}-problem`, `${id}-hint`, help && `${id}-help`].filter(Boolean).join(' ');
}
