/** A figure that opens the equation behind it. */
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { PlayedDay } from '../../../model/index.ts';

/** A figure of a day, and the step that it belongs to; without one it belongs to the day as a whole. */
export interface Explained {
  readonly played: PlayedDay;
  readonly what: string;
  readonly step?: number;
}

/** Null where nothing can be opened, as on paper. */
export const ExplainContext = createContext<((explained: Explained) => void) | null>(null);

export function ExplainButton({ children, ...explained }: Explained & { children: string }) {
  const open = useContext(ExplainContext);
  if (open === null) return <>{children}</>;
  return (
    <button type="button" class="figure-button" aria-haspopup="dialog" onClick={() => open(explained)}>
      {children}
    </button>
  );
}
