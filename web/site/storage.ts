/** What the browser keeps between visits: the site in the form and the chosen units. Storage may be full, off or corrupt. */
import type { UnitSystem } from '../../model/index.ts';
import { type Draft, isDraft } from './draft.ts';

const SITE_KEY = 'shadeside.site';
const UNITS_KEY = 'shadeside.units';

export function storedSite(): Draft | null {
  try {
    const value: unknown = JSON.parse(read(SITE_KEY) ?? 'null');
    return isDraft(value) ? value : null;
  } catch {
    // Text that is no JSON was not written by this page.
    return null;
  }
}

export function storeSite(draft: Draft): void {
  write(SITE_KEY, JSON.stringify(draft));
}

export function storedUnits(): UnitSystem | null {
  const value = read(UNITS_KEY);
  return value === 'metric' || value === 'us' ? value : null;
}

export function storeUnits(units: UnitSystem): void {
  write(UNITS_KEY, units);
}

function read(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    // Private windows and blocked cookies throw on access; the page works without memory.
    return null;
  }
}

function write(key: string, value: string): void {
  try {
    localStorage.setItem(key, value);
  } catch {
    // As above, or the storage is full.
  }
}
