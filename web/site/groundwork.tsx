/** What the forecast rests on, and what to mind at the wall. */
import type { Assumption } from '../../model/index.ts';
import { unbroken } from './words.ts';

export function Groundwork({
  assumptions,
  cautions,
}: {
  assumptions: readonly Assumption[];
  cautions: readonly string[];
}) {
  return (
    <section class="groundwork" aria-labelledby="assumptions-heading">
      <h2 id="assumptions-heading">What this rests on</h2>
      <ul class="assumptions">
        {assumptions.map(({ subject, text, origin }) => (
          <li key={`${subject} ${text}`}>
            {unbroken(text)} <span class="origin">({origin})</span>
          </li>
        ))}
      </ul>
      {cautions.length > 0 && (
        <>
          <h2>Mind</h2>
          <ul class="cautions">
            {cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
