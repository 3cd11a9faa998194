/** What each view has to pass in each of its states. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Locator, Page } from 'playwright-core';

export interface AxeScope {
  /** Parts to look at; all of the page when left out. */
  readonly include?: readonly string[];
  readonly exclude?: readonly string[];
  /** Whether contrasts below 7:1 count, too. */
  readonly glare?: boolean;
  /** Whether findings count that axe takes for moderate or minor. */
  readonly minor?: boolean;
}

/** What axe-core finds, one line a rule with the elements that break it. */
export async function axeFindings(page: Page, scope: AxeScope = {}): Promise<string[]> {
  // The other mode opens another page for the findings, which takes longer than finding them; it is for frames of other origins.
  const axe = new AxeBuilder({ page }).setLegacyMode(true).exclude('datalist');
  for (const part of scope.include ?? []) axe.include(part);
  for (const part of scope.exclude ?? []) axe.exclude(part);
  axe.options({
    // What passes is not asked for in full: carrying it over takes as long as finding it.
    resultTypes: ['violations'],
    rules: scope.glare ? { 'color-contrast-enhanced': { enabled: true } } : {},
  });
  const { violations } = await axe.analyze();
  return violations
    .filter(({ impact }) => scope.minor || impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}

/** What is to be pressed and lower than 44 px; what a fold hides does not count. */
export function lowTargets(targets: Locator): Promise<string[]> {
  return targets.evaluateAll((elements) =>
    elements
      .filter((element) => element.checkVisibility())
      .map((element) => ({ element, height: element.getBoundingClientRect().height }))
      .filter(({ height }) => height > 0 && height < 43.99)
      .map(({ element, height }) => `${height} px: ${element.outerHTML.slice(0, 200)}`),
  );
}
