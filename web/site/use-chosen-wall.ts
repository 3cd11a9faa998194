/** The wall whose day is shown: kept beside the site that somebody works on, so that a reload shows it again. */
import { useCallback, useEffect, useState } from 'preact/hooks';
import { keepWall, keptWall } from '../sites/working-copies.ts';
import type { DraftState } from './use-draft.ts';

/** Null for the first wall of the ranking. */
export function useChosenWall({ copy: { id }, settle }: DraftState): [string | null, (wall: string | null) => void] {
  const [wall, setWall] = useState(() => keptWall(id));
  // Another site may have a wall of the same name, which then stays the shown one.
  useEffect(() => setWall((former) => keptWall(id) ?? former), [id]);
  const choose = useCallback(
    (next: string | null) => {
      setWall(next);
      keepWall(id, next);
      // A site that nobody edited is not kept yet, and would come back under another id.
      settle((copy) => copy);
    },
    [id, settle],
  );
  return [wall, choose];
}
