/** Five minutes around the page: a panel at its foot that goes from part to part and marks each. */
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { TOUR_STEPS } from './tour-steps.ts';

/** How long a part may take to appear, ms; a view loads its code when it is opened. */
const PATIENCE_MS = 10_000;

/** An attribute of its own: classes are written anew where a part is drawn again. */
const MARK = 'data-tour';

export function Tour() {
  const [at, setAt] = useState<number | null>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const end = useCallback(() => {
    setAt(null);
    opener.current?.focus();
  }, []);
  return (
    <>
      <button ref={opener} type="button" class="small-button" aria-expanded={at !== null} onClick={() => setAt(0)}>
        Tour
      </button>
      {at !== null && <TourPanel at={at} onMove={setAt} onEnd={end} />}
    </>
  );
}

interface PanelProps {
  readonly at: number;
  readonly onMove: (at: number) => void;
  readonly onEnd: () => void;
}

function TourPanel({ at, onMove, onEnd }: PanelProps) {
  const step = TOUR_STEPS[at] ?? TOUR_STEPS[0];
  const heading = useRef<HTMLHeadingElement>(null);
  const last = at === TOUR_STEPS.length - 1;

  useEffect(() => {
    if (location.hash !== step.hash) location.hash = step.hash;
    heading.current?.focus({ preventScroll: true });
    return marked(step.target);
  }, [step]);

  useEffect(() => {
    document.documentElement.classList.add('on-tour');
    const onKey = ({ key }: KeyboardEvent) => key === 'Escape' && onEnd();
    addEventListener('keydown', onKey);
    return () => {
      document.documentElement.classList.remove('on-tour');
      removeEventListener('keydown', onKey);
    };
  }, [onEnd]);

  return (
    <section class="tour" aria-labelledby="tour-heading">
      <h2 id="tour-heading" ref={heading} tabIndex={-1}>
        <span class="tour-count">
          {at + 1} of {TOUR_STEPS.length}
        </span>{' '}
        {step.title}
      </h2>
      <p>{step.text}</p>
      <div class="tour-buttons">
        <button type="button" disabled={at === 0} onClick={() => onMove(at - 1)}>
          Back
        </button>
        <button type="button" onClick={() => (last ? onEnd() : onMove(at + 1))}>
          {last ? 'Done' : 'Next'}
        </button>
        {!last && (
          <button type="button" onClick={onEnd}>
            End the tour
          </button>
        )}
      </div>
    </section>
  );
}

/** Marks a part as soon as it is there and brings it into view; the function that it gives back takes the mark away. */
function marked(selector: string): () => void {
  const until = performance.now() + PATIENCE_MS;
  let found: Element | null = null;
  let timer: ReturnType<typeof setTimeout>;
  const look = () => {
    found = document.querySelector(selector);
    if (found === null) {
      if (performance.now() < until) timer = setTimeout(look, 100);
      return;
    }
    found.setAttribute(MARK, '');
    const calm = matchMedia('(prefers-reduced-motion: reduce)').matches;
    found.scrollIntoView({ block: 'start', behavior: calm ? 'auto' : 'smooth' });
  };
  timer = setTimeout(look, 0);
  return () => {
    clearTimeout(timer);
    found?.removeAttribute(MARK);
  };
}
