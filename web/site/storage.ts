/** What the browser keeps between visits beside the sites: the chosen units and theme. Storage may be full or off. */
import type { UnitSystem } from '../../model/index.ts';

const UNITS_KEY = 'shadeside.units';

export function storedUnits(): UnitSystem | null {
  const value = read(UNITS_KEY);
  return value === 'metric' || value === 'us' ? value : null;
}

export function storeUnits(units: UnitSystem): void {
  write(UNITS_KEY, units);
}

const THEME_KEY = 'shadeside.theme';

export function storedTheme(): string | null {
  return read(THEME_KEY);
}

export function storeTheme(theme: string): void {
  write(THEME_KEY, theme);
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
