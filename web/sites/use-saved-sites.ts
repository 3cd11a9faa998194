/** The saved sites as the page shows them, and what a person can do with them. */
import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { type Draft, withValue } from '../site/draft.ts';
import type { DraftState } from '../site/use-draft.ts';
import { newId } from './new-id.ts';
import {
  copyOfSaved,
  deletedSite,
  listed,
  mayOverwrite,
  nameOf,
  renamed,
  restoredSite,
  type SavedSite,
  sameDraft,
  savedFrom,
} from './saved-site.ts';
import { siteDatabase as database, storageTrouble } from './site-database.ts';
import type { Choice } from './sync/merging.ts';
import { useConflicts } from './sync/use-conflicts.ts';
import { forgetCopy, keptCopy, unsavedCopies, type WorkingCopy, writeCopy } from './working-copies.ts';

export interface SavedSites {
  /** With deleted ones that the server has not heard of. */
  readonly all: readonly SavedSite[];
  /** The latest first, without deleted ones. */
  readonly sites: readonly SavedSite[];
  /** Sites with edits that are not saved, other than the one in the form. */
  readonly unsaved: readonly WorkingCopy[];
  /** What was done last or could not be done, and the way back where there is one. */
  readonly said: { readonly text: string; readonly back?: () => void /** What comes back. */; readonly id?: string };
  /** The saved state that saving would overwrite unseen; null where there is none. */
  readonly clash: SavedSite | null;
  /** Sites that another state of stands on the server. */
  readonly conflicts: readonly SavedSite[];
  save(): void;
  saveAsCopy(): void;
  /** Puts the saved state of the site in the form back. */
  revert(): void;
  open(id: string): void;
  rename(id: string, title: string): void;
  remove(id: string): void;
  /** Gives up edits that are not saved. */
  discard(id: string): void;
  /** Puts a site in the form that is not saved; `done` says which. */
  openNew(draft: Draft, done: string): void;
  /** Decides about a conflict as it is shown. */
  decide(shown: SavedSite, choice: Choice): void;
  resolveClash(choice: 'mine' | 'theirs' | 'both'): void;
}

export function useSavedSites(drafting: DraftState, verdict: string): SavedSites {
  const { copy, settle, open: openCopy } = drafting;
  const [all, setAll] = useState<readonly SavedSite[]>([]);
  const [said, setSaid] = useState<SavedSites['said']>({ text: '' });
  const [clash, setClash] = useState<SavedSite | null>(null);
  const sites = useMemo(() => listed(all), [all]);
  const own = sites.find(({ id }) => id === copy.id);
  const { conflicts, decide } = useConflicts(all, drafting);
  const [unsaved, setUnsaved] = useState<readonly WorkingCopy[]>([]);

  const lookForUnsaved = useCallback(() => {
    // Edits of the site in the form are in the form.
    setUnsaved(unsavedCopies().filter(({ id }) => id !== copy.id));
  }, [copy.id]);
  useEffect(lookForUnsaved, [lookForUnsaved]);

  useEffect(() => {
    const read = () =>
      database.all().then(setAll, () => {
        // Said when somebody wants to save; the page works without.
      });
    read();
    return database.onChange(read);
  }, []);

  // What was saved or fetched elsewhere shows here, unless it would hide edits of this tab.
  useEffect(() => {
    if (own && !copy.changed && copy.base !== null && own.edition > copy.base) {
      openCopy(copyOfSaved(own), `“${nameOf(own.draft)}” was changed elsewhere; this is the newer state.`);
    }
  }, [own, copy, openCopy]);

  // What was deleted elsewhere stays in the form.
  const seen = useRef<SavedSite | undefined>(undefined);
  const deletedHere = useRef('');
  useEffect(() => {
    const former = seen.current;
    seen.current = own;
    if (own !== undefined || former?.id !== copy.id || deletedHere.current === copy.id) return;
    settle((now) => (now.id === former.id ? { ...now, base: null } : now));
    setSaid({ text: `“${nameOf(former.draft)}” was deleted elsewhere; the form still holds it.` });
  }, [own, copy.id, settle]);

  const attempt = useCallback((work: () => Promise<SavedSites['said']>) => {
    work().then(setSaid, (error) => setSaid({ text: storageTrouble(error) }));
  }, []);

  /** Saves a working copy; the form learns how far it is saved. */
  const store = async (from: WorkingCopy, overwrite = false): Promise<SavedSite | null> => {
    let seen = true;
    const saved = await database.change(from.id, (former) => {
      seen = overwrite || mayOverwrite(former, from);
      return seen ? savedFrom(former, from, verdict, new Date()) : undefined;
    });
    if (saved === undefined || !seen) {
      setClash(saved ?? null);
      return null;
    }
    setClash(null);
    if (deletedHere.current === from.id) deletedHere.current = '';
    askForPermanence();
    settle((now) =>
      now.id === saved.id ? { ...now, base: saved.edition, changed: !sameDraft(now.draft, saved.draft) } : now,
    );
    return saved;
  };

  const save = () =>
    attempt(async () => {
      const saved = await store(copy);
      return { text: saved ? `“${nameOf(saved.draft)}” is saved in this browser.` : '' };
    });

  const saveAsCopy = () =>
    attempt(async () => {
      const title = `${nameOf(copy.draft)} (copy)`;
      const draft = withValue(copy.draft, 'title', title);
      const id = newId();
      const saved = await database.change(id, () => savedFrom(undefined, { id, draft }, verdict, new Date()));
      if (saved === undefined) return { text: '' };
      setClash(null);
      openCopy(copyOfSaved(saved), `“${title}” is saved in this browser and stands in the form.`);
      // The edits went with the copy; the site that they were made in is as it was saved.
      forgetCopy(copy.id);
      return { text: '' };
    });

  const open = (id: string) => {
    const saved = sites.find((site) => site.id === id);
    // Edits that were not saved come first: they can be given up from there, but not got back.
    const kept = keptCopy(id);
    const next = kept?.changed ? kept : saved && copyOfSaved(saved);
    if (!next) return;
    setSaid({ text: '' });
    setClash(null);
    const edits = next.changed ? ', with edits that are not saved' : '';
    openCopy(next, `“${nameOf(next.draft)}” is in the form${edits}.`);
  };

  const revert = () => {
    if (own) openCopy(copyOfSaved(own), `The saved state of “${nameOf(own.draft)}” is back in the form.`);
  };

  const rename = (id: string, title: string) =>
    attempt(async () => {
      const saved = await database.change(id, (former) => former && renamed(former, title, new Date()));
      if (saved === undefined) return { text: '' };
      const retitle = (copy: WorkingCopy): WorkingCopy => ({
        ...copy,
        draft: withValue(copy.draft, 'title', title),
        base: copy.base === saved.edition - 1 ? saved.edition : copy.base,
      });
      const kept = keptCopy(id);
      if (id === copy.id) settle(retitle);
      else if (kept) writeCopy(retitle(kept));
      return { text: `It is called “${nameOf(saved.draft)}” now.` };
    });

  const remove = (id: string) =>
    attempt(async () => {
      let former: SavedSite | undefined;
      deletedHere.current = id;
      await database.change(id, (saved) => {
        former = saved;
        return saved && deletedSite(saved, new Date());
      });
      if (former === undefined) return { text: '' };
      const gone = former;
      if (id === copy.id) settle((now) => ({ ...now, base: null, changed: false }));
      else forgetCopy(id);
      const back = () =>
        attempt(async () => {
          deletedHere.current = '';
          let since: SavedSite | undefined;
          const saved = await database.change(id, (left) => {
            since = left?.deleted === false ? left : undefined;
            return restoredSite(gone, left);
          });
          if (since) return { text: `“${nameOf(since.draft)}” was saved again elsewhere, and stays as it is there.` };
          if (id === copy.id && saved) settle((now) => ({ ...now, base: saved.edition }));
          return { text: `“${nameOf(gone.draft)}” is back.` };
        });
      return { text: `“${nameOf(gone.draft)}” was deleted.`, back, id };
    });

  const discard = (id: string) => {
    const given = keptCopy(id);
    forgetCopy(id);
    lookForUnsaved();
    setSaid({ text: given ? `Edits of “${nameOf(given.draft)}” were given up.` : '' });
  };

  const resolveClash = (choice: 'mine' | 'theirs' | 'both') => {
    if (clash === null) return;
    if (choice === 'mine') attempt(async () => ({ text: (await store(copy, true)) ? 'Your state is saved.' : '' }));
    else if (choice === 'both') saveAsCopy();
    else {
      openCopy(copyOfSaved(clash), `The other state of “${nameOf(clash.draft)}” is in the form.`);
      setClash(null);
    }
  };

  return {
    all,
    sites,
    unsaved,
    said,
    clash,
    conflicts,
    save,
    saveAsCopy,
    revert,
    open,
    openNew: drafting.replace,
    rename,
    remove,
    discard,
    decide: (shown, choice) => attempt(async () => ({ text: await decide(shown, choice) })),
    resolveClash,
  };
}

/** Browsers may clear what is kept when room gets short; asked, they spare it. */
function askForPermanence() {
  navigator.storage?.persist?.().catch(() => {});
}
