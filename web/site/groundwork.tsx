/** What the forecast rests on. */
import type { Assumption } from '../../model/index.ts';
import { unbroken } from './words.ts';

export function Groundwork({ assumptions }: { assumptions: readonly Assumption[] }) {
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
    </section>
  );
}
