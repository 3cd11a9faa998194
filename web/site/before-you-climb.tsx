/** What to mind at the wall before the work begins: general cautions, and what this day and this wall add to them. */
import type { SiteCautions } from '../../model/index.ts';
import { unbroken } from './words.ts';

export const CLIMB_HEADING = 'climb-heading';

export function BeforeYouClimb({ wall, cautions }: SiteCautions) {
  return (
    <section class="climb" aria-labelledby={CLIMB_HEADING}>
      <h2 id={CLIMB_HEADING} tabIndex={-1}>
        Before you climb
      </h2>
      <p>
        For wall “{wall}” on the design day. None of this permits anything: the rules of the place, of the trade and of
        the makers come first.
      </p>
      <ul class="cautions">
        {cautions.map(({ part, heading, text, here, origin }) => (
          <li key={part}>
            <b>{heading}.</b> {text}
            {here !== '' && (
              <>
                {' '}
                <span class="caution-here">{unbroken(here)}</span> <span class="origin">({unbroken(origin)})</span>
              </>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
