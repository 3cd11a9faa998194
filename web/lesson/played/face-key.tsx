/** The key of the colours: each class with its watts. */
import { classLabels, type FaceClasses } from './face-classes.ts';

export function FaceKey({ classes }: { classes: FaceClasses }) {
  return (
    <div class="face-key">
      <p>Sun taken in by a face, or by the hood before it:</p>
      <ul>
        {classLabels(classes).map((label, k) => (
          <li key={label}>
            <svg viewBox="0 0 32 20" aria-hidden="true">
              <rect class={`face taken-${k}`} x="1" y="1" width="30" height="18" />
            </svg>
            {label}
          </li>
        ))}
      </ul>
    </div>
  );
}
