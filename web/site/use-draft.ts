/** The draft in the form: kept in the browser, with one step back after a change that a keystroke cannot undo. */
import { useCallback, useEffect, useLayoutEffect, useState } from 'preact/hooks';
import { DEMO_SITE } from '../../model/index.ts';
import {
  forgetCopy,
  freshCopy,
  keepCopy,
  onEditElsewhere,
  resumedCopy,
  type WorkingCopy,
} from '../sites/working-copies.ts';
import { type Draft, withoutEntry, withValue } from './draft.ts';

const DEMO: Draft = DEMO_SITE;

export interface DraftState {
  readonly draft: Draft;
  /** The draft with where it comes from and how far it is saved. */
  readonly copy: WorkingCopy;
  /** Whether the browser keeps what is entered. */
  readonly kept: boolean;
  /** A change with words for what was done is a big one. */
  set(path: string, value: unknown, done?: string): void;
  removeEntry(listPath: string, index: number, done: string): void;
  /** Puts another site in the form; `done` says what happened. */
  replace(draft: Draft, done: string): void;
  backToDemo(): void;
  /** Puts a saved site in the form. */
  open(copy: WorkingCopy, done: string): void;
  /** Takes over how far the draft is saved; without a word, since the draft itself stays. */
  settle(change: (copy: WorkingCopy) => WorkingCopy): void;
  /** What the last big change did, and the way back; null after the next ordinary change. */
  readonly undo: { readonly done: string; back(): void } | null;
}

interface State {
  readonly copy: WorkingCopy;
  readonly before: WorkingCopy | null;
  readonly done: string;
  /** Where the copy is kept already: it was read, or another tab wrote it, perhaps with newer edits on their way. */
  readonly known: boolean;
}

export function useDraft(): DraftState {
  const [{ copy, before, done, known }, setState] = useState<State>(() => ({
    copy: resumedCopy() ?? freshCopy(DEMO),
    before: null,
    done: '',
    known: true,
  }));
  const [kept, setKept] = useState(true);

  // Before the next paint, so that no edit that is seen can be lost.
  useLayoutEffect(() => {
    if (!known) setKept(keepCopy(copy));
  }, [copy, known]);

  useEffect(
    () =>
      onEditElsewhere(copy.id, (other) => {
        setState((state) => {
          return isNewer(other, state.copy) ? { copy: other, before: null, done: '', known: true } : state;
        });
      }),
    [copy.id],
  );

  const edit = useCallback((change: (draft: Draft) => Draft, message?: string) => {
    setState(({ copy: former }) => ({
      copy: { ...former, draft: change(former.draft), changed: true, editedAt: new Date().toISOString() },
      before: message === undefined ? null : former,
      done: message ?? '',
      known: false,
    }));
  }, []);
  const set = useCallback(
    (path: string, value: unknown, message?: string) => edit((draft) => withValue(draft, path, value), message),
    [edit],
  );
  const removeEntry = useCallback(
    (listPath: string, index: number, message: string) =>
      edit((draft) => withoutEntry(draft, listPath, index), message),
    [edit],
  );
  const open = useCallback((next: WorkingCopy, message: string) => {
    setState(({ copy: former }) => {
      leave(former, next);
      return { copy: next, before: former, done: message, known: false };
    });
  }, []);
  const replace = useCallback((next: Draft, message: string) => open(freshCopy(next), message), [open]);
  const settle = useCallback((change: (copy: WorkingCopy) => WorkingCopy) => {
    setState((state) => ({ ...state, copy: change(state.copy), known: false }));
  }, []);

  return {
    draft: copy.draft,
    copy,
    kept,
    set,
    removeEntry,
    replace,
    backToDemo: () => replace(DEMO, 'The demo site is back in the form.'),
    open,
    settle,
    undo:
      before === null
        ? null
        : {
            done,
            back() {
              leave(copy, before);
              setState({ copy: before, before: null, done: '', known: false });
            },
          },
  };
}

/** What is kept may also be older than what stands here: the browser may have refused to keep that. */
function isNewer(other: WorkingCopy, copy: WorkingCopy): boolean {
  return other.id === copy.id && other.editedAt >= copy.editedAt && JSON.stringify(other) !== JSON.stringify(copy);
}

/** What is left without edits of its own can be had again: it is saved, or came from elsewhere. */
function leave(former: WorkingCopy, next: WorkingCopy) {
  if (!former.changed && former.id !== next.id) forgetCopy(former.id);
}
