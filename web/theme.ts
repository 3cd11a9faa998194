/**
 * How the page looks: as usual, or for glare. The choice is kept in the browser; without one the device decides, by its wish
 * for more contrast. What is shown stands at the root element, where the style sheets read it.
 */
import { storedTheme, storeTheme } from './site/storage.ts';

export const THEME_CHOICES = ['device', 'light', 'sunlight'] as const;

export type ThemeChoice = (typeof THEME_CHOICES)[number];

export type Theme = Exclude<ThemeChoice, 'device'>;

const moreContrast = () => matchMedia('(prefers-contrast: more)');

/** The theme that a choice comes to on a device. */
export function themeOf(choice: ThemeChoice, wantsContrast: boolean): Theme {
  if (choice === 'device') return wantsContrast ? 'sunlight' : 'light';
  return choice;
}

export function themeChoice(): ThemeChoice {
  return THEME_CHOICES.find((choice) => choice === storedTheme()) ?? 'device';
}

export function chooseTheme(choice: ThemeChoice): void {
  storeTheme(choice);
  show();
}

/** Shows what is chosen, and follows the device from then on. */
export function startTheme(): void {
  moreContrast().addEventListener('change', show);
  show();
}

function show(): void {
  document.documentElement.dataset['theme'] = themeOf(themeChoice(), moreContrast().matches);
}

/** Tells of each change of what is shown. */
export function onThemeShown(tell: () => void): () => void {
  const observer = new MutationObserver(tell);
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
  return () => observer.disconnect();
}
