/** The draft in the form: kept in the browser, with one step back after a change that a keystroke cannot undo. */
import { useCallback, useEffect, useState } from 'preact/hooks';
import { DEMO_SITE } from '../../model/index.ts';
import { type Draft, withoutEntry, withValue } from './draft.ts';
import { storedSite, storeSite } from './storage.ts';

const DEMO: Draft = DEMO_SITE;

export interface DraftState {
  readonly draft: Draft;
  /** A change with words for what was done is a big one. */
  set(path: string, value: unknown, done?: string): void;
  removeEntry(listPath: string, index: number, done: string): void;
  /** Puts another site in the form; `done` says what happened. */
  replace(draft: Draft, done: string): void;
  backToDemo(): void;
  /** What the last big change did, and the way back; null after the next ordinary change. */
  readonly undo: { readonly done: string; back(): void } | null;
}

export function useDraft(): DraftState {
  const [{ draft, before, done }, setState] = useState<{ draft: Draft; before: Draft | null; done: string }>(() => ({
    draft: storedSite() ?? DEMO,
    before: null,
    done: '',
  }));

  useEffect(() => storeSite(draft), [draft]);

  const set = useCallback((path: string, value: unknown, message?: string) => {
    setState((state) => ({
      draft: withValue(state.draft, path, value),
      before: message === undefined ? null : state.draft,
      done: message ?? '',
    }));
  }, []);
  const replace = useCallback((next: Draft, message: string) => {
    setState((state) => ({ draft: next, before: state.draft, done: message }));
  }, []);
  const removeEntry = useCallback((listPath: string, index: number, message: string) => {
    setState((state) => ({ draft: withoutEntry(state.draft, listPath, index), before: state.draft, done: message }));
  }, []);

  return {
    draft,
    set,
    removeEntry,
    replace,
    backToDemo: () => replace(DEMO, 'The demo site is back in the form.'),
    undo: before === null ? null : { done, back: () => setState({ draft: before, before: null, done: '' }) },
  };
}
