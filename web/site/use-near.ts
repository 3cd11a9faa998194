/** Whether a part of the page is in sight or close to it: what nobody looks at need not be computed yet. */
import { useCallback, useRef, useState } from 'preact/hooks';

/** How far outside the window still counts, so that it is there when somebody gets there. */
const MARGIN = '300px';

export interface Near {
  readonly near: boolean;
  /** Of the element to watch. */
  readonly ref: (element: Element | null) => void;
}

export function useNear(): Near {
  const [near, setNear] = useState(false);
  const observer = useRef<IntersectionObserver | null>(null);
  const ref = useCallback((element: Element | null) => {
    observer.current?.disconnect();
    observer.current = null;
    if (element === null) return;
    const started = new IntersectionObserver((entries) => setNear(entries.at(-1)?.isIntersecting ?? false), {
      rootMargin: MARGIN,
    });
    started.observe(element);
    observer.current = started;
  }, []);
  return { near, ref };
}
