/** The dialog in which a figure shows the equation behind it, for everything within. */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { UnitSystem } from '../../../model/index.ts';
import { ExplainContext, type Explained } from './explain-button.tsx';
import { ExplanationText } from './explanation-text.tsx';

export function ExplainRoom({ units, children }: { units: UnitSystem; children: ComponentChildren }) {
  const [explained, setExplained] = useState<Explained | null>(null);
  return (
    <ExplainContext.Provider value={setExplained}>
      {children}
      {explained && <ExplainDialog explained={explained} units={units} close={() => setExplained(null)} />}
    </ExplainContext.Provider>
  );
}

interface ExplainDialogProps {
  readonly explained: Explained;
  readonly units: UnitSystem;
  close(): void;
}

/** The browser keeps the focus inside, closes at Escape, and gives the focus back to the figure. */
function ExplainDialog({ explained, units, close }: ExplainDialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} class="explain" aria-labelledby="explain-heading" onClose={close}>
      <ExplanationText
        explained={explained}
        units={units}
        headingId="explain-heading"
        close={() => dialog.current?.close()}
      />
    </dialog>
  );
}
