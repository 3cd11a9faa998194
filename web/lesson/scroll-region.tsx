/** What may be wider than the screen: it scrolls sideways, by keyboard as well, and says so while a part is out of sight. */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

interface ScrollRegionProps {
  readonly kind: 'table-scroll' | 'equation';
  readonly label: string;
  readonly children: ComponentChildren;
}

export function ScrollRegion({ kind, label, children }: ScrollRegionProps) {
  const ref = useRef<HTMLElement>(null);
  const [over, setOver] = useState(false);
  useEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const measure = () => setOver(element.scrollWidth > element.clientWidth + 1);
    const observer = new ResizeObserver(measure);
    // Either may change: the room with the screen, the content with its figures.
    observer.observe(element);
    if (element.firstElementChild) observer.observe(element.firstElementChild);
    measure();
    return () => observer.disconnect();
  });
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section ref={ref} class={kind} tabIndex={0} aria-label={label}>
        {children}
      </section>
      {over && <p class="scroll-hint">It goes on to the right: scroll, or select it and press →.</p>}
    </>
  );
}
