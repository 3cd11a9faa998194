/** Sites whose states here and on the server grew apart, and what a person decides about them. */
import { useMemo } from 'preact/hooks';
import { withValue } from '../../site/draft.ts';
import type { DraftState } from '../../site/use-draft.ts';
import { newId } from '../new-id.ts';
import { copyOfSaved, nameOf, type SavedSite, savedFrom } from '../saved-site.ts';
import { siteDatabase } from '../site-database.ts';
import { type Choice, decided, inConflict } from './merging.ts';

export interface Conflicts {
  readonly conflicts: readonly SavedSite[];
  /** Decides about a conflict as it was shown; gives back what to say. */
  decide(shown: SavedSite, choice: Choice): Promise<string>;
}

export function useConflicts(all: readonly SavedSite[], { copy, open }: DraftState): Conflicts {
  const conflicts = useMemo(() => inConflict(all), [all]);

  const decide = async (shown: SavedSite, choice: Choice): Promise<string> => {
    const name = nameOf(shown.draft);
    const now = new Date();
    const mine =
      choice === 'both'
        ? savedFrom(
            undefined,
            { id: newId(), draft: withValue(shown.draft, 'title', `${name} (copy)`) },
            shown.verdict,
            now,
          )
        : null;
    // Mine is safe before theirs takes its place.
    if (mine !== null) await siteDatabase.change(mine.id, () => mine);
    let isDone = false;
    await siteDatabase.change(shown.id, (saved) => {
      const decision = decided(saved, shown, choice);
      isDone = decision !== null;
      return decision?.site;
    });
    if (!isDone) {
      if (mine !== null) await siteDatabase.change(mine.id, () => null);
      return `“${name}” was changed again meanwhile; look at both states once more.`;
    }
    if (mine === null)
      return choice === 'mine' ? `Your state of “${name}” stays.` : `The server's state of “${name}” stays.`;
    const done = `Yours is kept as “${nameOf(mine.draft)}”.`;
    if (copy.id === shown.id && !copy.changed) open(copyOfSaved(mine), done);
    return done;
  };

  return { conflicts, decide };
}
