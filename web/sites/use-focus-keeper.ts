/**
 * Keeps the focus close to where it was when the element that had it goes away: on the same entry of a list, or the one that took
 * its place, or what stands above the list. Otherwise the browser lets it fall to the page, and a keyboard starts over.
 *
 * Lists carry `data-list`, their entries `data-entry` with an id, and what takes the focus in an entry `data-home`.
 */
import { useCallback, useEffect, useRef } from 'preact/hooks';

interface Place {
  readonly element: Element;
  readonly list: string;
  readonly entry: string;
  readonly index: number;
}

export interface FocusKeeper<Holder extends HTMLElement> {
  readonly holder: { readonly current: Holder | null };
  /** The entry that is about to come takes the focus. */
  expect(entry: string): void;
}

export function useFocusKeeper<Holder extends HTMLElement>(): FocusKeeper<Holder> {
  const holder = useRef<Holder>(null);
  const expected = useRef<string | null>(null);

  useEffect(() => {
    const root = holder.current;
    if (root === null) return undefined;
    let last: Place | null = null;
    const note = ({ target }: FocusEvent) => {
      if (target instanceof Element) last = placeOf(root, target);
    };
    const keep = () => {
      if (expected.current !== null) {
        const entry = entryNamed(root, expected.current);
        if (entry === undefined) return;
        expected.current = null;
        // Whoever has gone on meanwhile is left alone.
        if (hasFallen() || last?.element === document.activeElement) focusOn(root, entry);
      } else if (last !== null && !last.element.isConnected && hasFallen()) {
        const { list, entry, index } = last;
        const others = entriesOf(root, list);
        focusOn(root, entryNamed(root, entry) ?? others[Math.min(index, others.length - 1)]);
      }
    };
    root.addEventListener('focusin', note);
    const changes = new MutationObserver(keep);
    changes.observe(root, { childList: true, subtree: true });
    return () => {
      root.removeEventListener('focusin', note);
      changes.disconnect();
    };
  }, []);

  const expect = useCallback((entry: string) => {
    expected.current = entry;
  }, []);
  return { holder, expect };
}

function hasFallen(): boolean {
  return document.activeElement === null || document.activeElement === document.body;
}

function placeOf(root: Element, element: Element): Place {
  const list = element.closest('[data-list]')?.getAttribute('data-list') ?? '';
  const entry = element.closest('[data-entry]');
  return {
    element,
    list,
    entry: entry?.getAttribute('data-entry') ?? '',
    index: entry === null ? 0 : entriesOf(root, list).indexOf(entry),
  };
}

function entriesOf(root: Element, list: string): Element[] {
  return [...root.querySelectorAll(`[data-list="${list}"] [data-entry]`)];
}

function entryNamed(root: Element, name: string): Element | undefined {
  return [...root.querySelectorAll('[data-entry]')].find((entry) => entry.getAttribute('data-entry') === name);
}

/** A folded list cannot take the focus; what unfolds it can, and if there is none, the head of the whole. */
function focusOn(root: Element, entry: Element | undefined) {
  const home = entry?.querySelector<HTMLElement>('[data-home]');
  home?.focus();
  if (home !== undefined && home === document.activeElement) return;
  const fold = entry?.closest('details')?.querySelector('summary');
  (fold ?? root.querySelector<HTMLElement>('[data-head]'))?.focus();
}
