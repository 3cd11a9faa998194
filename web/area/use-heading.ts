/** A step that takes the place of another gets the focus at its heading, so that keys and screen readers go on from there. */
import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

export function useHeading(): RefObject<HTMLHeadingElement | null> {
  const ref = useRef<HTMLHeadingElement>(null);
  useEffect(() => ref.current?.focus({ preventScroll: true }), []);
  return ref;
}
