/** Everything that is wrong with a file or a choice, in one list. */
import { useId } from 'preact/hooks';
import type { Problem } from '../../model/index.ts';

export function ProblemTexts({ title, problems }: { title: string; problems: readonly Problem[] }) {
  const id = useId();
  return (
    <section class="problem-list" role="alert" aria-labelledby={id}>
      <h3 id={id}>{title}</h3>
      <ul>
        {problems.map(({ message }) => (
          <li key={message}>{message}</li>
        ))}
      </ul>
    </section>
  );
}
