/** The story of the day, for who reads rather than looks, and for who looks again. */
import { useMemo } from 'preact/hooks';
import type { UnitSystem } from '../../../model/index.ts';
import type { Curve } from '../comparison/day-curves.tsx';
import { dayStory } from './story.ts';

export function Story({ boxes, units }: { boxes: readonly Curve[]; units: UnitSystem }) {
  const quarters = useMemo(() => dayStory(boxes, units), [boxes, units]);
  return (
    <section class="story" aria-label="The day in words">
      <h4>The day in words</h4>
      {quarters.map(({ title, text }) => (
        <p key={title}>
          <b>{title}.</b> {text}
        </p>
      ))}
    </section>
  );
}
