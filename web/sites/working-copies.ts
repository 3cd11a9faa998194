/**
 * The sites that somebody works on, each kept under an id of its own at every edit. Written at once and in one piece, so
 * that a killed tab loses nothing; kept by site and not by tab, so that two tabs with two sites do not overwrite each
 * other, and what a closed tab left unsaved can be found again. Storage may be full, off or corrupt.
 */
import { type Draft, isDraft } from '../site/draft.ts';
import { newId } from './new-id.ts';

export interface WorkingCopy {
  readonly id: string;
  readonly draft: Draft;
  /** Edition of the saved site that this was opened from or saved as; null where it is not saved in this browser. */
  readonly base: number | null;
  /** Whether it holds edits that are not saved. */
  readonly changed: boolean;
  readonly editedAt: string;
}

const COPY_KEY = 'shadeside.draft.';
/** The wall whose day is shown, by the id of the copy: no part of the site. */
const WALL_KEY = 'shadeside.wall.';
/** The id of the site worked on last; in a tab's own storage that of the tab. */
const CURRENT_KEY = 'shadeside.current';
/** Where the page kept its one draft before it knew several. */
const FORMER_KEY = 'shadeside.site';

/** Something new in the form, not saved and not edited. */
export function freshCopy(draft: Draft): WorkingCopy {
  return { id: newId(), draft, base: null, changed: false, editedAt: new Date().toISOString() };
}

/** What this tab worked on before, or else what was worked on last; null where nothing is kept. */
export function resumedCopy(): WorkingCopy | null {
  const former = takeFormer();
  if (former !== null) {
    const copy = { ...freshCopy(former), changed: true };
    keepCopy(copy);
    return copy;
  }
  return keptCopy(read(tabStorage, CURRENT_KEY)) ?? keptCopy(read(browserStorage, CURRENT_KEY));
}

/** Keeps a copy as the one worked on in this tab. False when the browser could not. */
export function keepCopy(copy: WorkingCopy): boolean {
  const kept = writeCopy(copy);
  write(browserStorage, CURRENT_KEY, copy.id);
  write(tabStorage, CURRENT_KEY, copy.id);
  return kept;
}

/** Keeps a copy that is not in the form. False when the browser could not. */
export function writeCopy(copy: WorkingCopy): boolean {
  return write(browserStorage, COPY_KEY + copy.id, JSON.stringify(copy));
}

export function forgetCopy(id: string): void {
  try {
    localStorage.removeItem(COPY_KEY + id);
    localStorage.removeItem(WALL_KEY + id);
  } catch {
    // Nothing was kept in the first place.
  }
}

export function keepWall(id: string, wall: string | null): void {
  write(browserStorage, WALL_KEY + id, wall ?? '');
}

/** The wall that was shown of a copy; null for the first one of the ranking. */
export function keptWall(id: string): string | null {
  return read(browserStorage, WALL_KEY + id) || null;
}

export function keptCopy(id: string | null): WorkingCopy | null {
  return id === null ? null : copyFrom(read(browserStorage, COPY_KEY + id));
}

/** Every copy with edits that are not saved, the latest first. */
export function unsavedCopies(): WorkingCopy[] {
  return storedKeys()
    .map((key) => copyFrom(read(browserStorage, key)))
    .filter((copy) => copy?.changed === true)
    .map((copy) => copy as WorkingCopy)
    .sort((a, b) => (a.editedAt < b.editedAt ? 1 : -1));
}

/** Calls back when another tab edits the site of that id, and with what it missed when this tab slept. */
export function onEditElsewhere(id: string, follow: (copy: WorkingCopy) => void): () => void {
  const hear = (event: StorageEvent) => {
    const copy = event.key === COPY_KEY + id ? copyFrom(event.newValue) : null;
    if (copy !== null) follow(copy);
  };
  const wake = () => {
    const copy = document.visibilityState === 'visible' ? keptCopy(id) : null;
    if (copy !== null) follow(copy);
  };
  addEventListener('storage', hear);
  addEventListener('pageshow', wake);
  document.addEventListener('visibilitychange', wake);
  return () => {
    removeEventListener('storage', hear);
    removeEventListener('pageshow', wake);
    document.removeEventListener('visibilitychange', wake);
  };
}

/** Reads a kept copy; null for text that this page did not write. */
export function copyFrom(text: string | null): WorkingCopy | null {
  const value = parsed(text);
  if (!isDraft(value) || typeof value['id'] !== 'string' || !isDraft(value['draft'])) return null;
  const { id, draft, base, changed, editedAt } = value;
  return {
    id,
    draft,
    base: typeof base === 'number' ? base : null,
    changed: changed !== false,
    editedAt: typeof editedAt === 'string' ? editedAt : '',
  };
}

function takeFormer(): Draft | null {
  const value = parsed(read(browserStorage, FORMER_KEY));
  try {
    localStorage.removeItem(FORMER_KEY);
  } catch {
    // As below.
  }
  return isDraft(value) ? value : null;
}

function parsed(text: string | null): unknown {
  try {
    return JSON.parse(text ?? 'null');
  } catch {
    return null;
  }
}

function storedKeys(): string[] {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(COPY_KEY));
  } catch {
    return [];
  }
}

const browserStorage = () => localStorage;
const tabStorage = () => sessionStorage;

function read(storage: () => Storage, key: string): string | null {
  try {
    return storage().getItem(key);
  } catch {
    // Private windows and blocked cookies throw on access; the page works without memory.
    return null;
  }
}

function write(storage: () => Storage, key: string, value: string): boolean {
  try {
    storage().setItem(key, value);
    return true;
  } catch {
    // As above, or the storage is full.
    return false;
  }
}
