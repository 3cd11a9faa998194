/** Width of a picture and size of its letters, so that it is drawn pixel by pixel at the letters' own size. */
import type { RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';

export interface Size {
  readonly widthPx: number;
  readonly fontPx: number;
}

/** Until the first measurement: a small phone. */
const USUAL: Size = { widthPx: 328, fontPx: 16 };

/** No picture is drawn narrower, in letters. */
const LEAST_LETTERS = 6;

export function useSize(): { readonly ref: RefObject<HTMLDivElement | null>; readonly size: Size } {
  const ref = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState(USUAL);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const measure = () => {
      const fontPx = Number.parseFloat(getComputedStyle(element).fontSize);
      // While the page is being laid out, a place may have no width yet.
      if (element.clientWidth > LEAST_LETTERS * fontPx) setSize({ widthPx: element.clientWidth, fontPx });
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, size };
}
