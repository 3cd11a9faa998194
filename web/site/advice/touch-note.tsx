/** Says when the outside of the box burns who touches it; says nothing otherwise. */
import { type Touch, touchText, type UnitSystem } from '../../../model/index.ts';
import { unbroken } from '../words.ts';

export function TouchNote({ touch, units }: { touch: Touch; units: UnitSystem }) {
  const text = touchText(touch, units);
  if (text === '') return null;
  return (
    <p class="touch-note">
      <b>Hot to touch.</b> {unbroken(text)}
    </p>
  );
}
