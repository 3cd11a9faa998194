/** The width that a picture has, so that it is drawn pixel by pixel and its letters keep their size. */
import type { RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/** Until the first measurement: a small phone. */
const USUAL_PX = 328;

export function useWidth(): { readonly ref: RefObject<HTMLDivElement | null>; readonly widthPx: number } {
  const ref = useRef<HTMLDivElement>(null);
  const [widthPx, setWidthPx] = useState(USUAL_PX);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const measure = () => {
      if (element.clientWidth > 0) setWidthPx(element.clientWidth);
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, widthPx };
}
