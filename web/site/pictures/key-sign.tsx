/** A sample of a sign for the list beside a picture. */
import type { ComponentChildren } from 'preact';

export function KeySign({ children }: { children: ComponentChildren }) {
  return (
    <svg class="swatch" viewBox="0 0 36 24" width="36" height="24" aria-hidden="true">
      {children}
    </svg>
  );
}
