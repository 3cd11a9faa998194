/** The sheet that an installer takes along: from the server as PDF, and printed from the page where there is none. */

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { pagesOf, textOf } from '../server/sheet/pdf-text.ts';
import { eachSitePage } from './each-site-page.ts';
import { lowTargets } from './page-checks.ts';
import { eventually, PHONE } from './site-page.ts';

const stage = eachSitePage();

test('the sheet is saved as PDF of one page, offline the page is printed instead, and paper shows the decision', async () => {
  const { page } = stage.site;
  const decision = await page.locator('.verdict-sentence strong').textContent();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Site sheet (PDF)' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('site-sheet-homestead-in-the-dry-basin-invented.pdf');
  const pdf = readFileSync(await download.path());
  expect(pagesOf(pdf)).toHaveLength(1);
  expect(textOf(pdf)).toContain((decision ?? '').replace(/\s+/g, ' '));
  await page.getByText('The sheet was saved as').waitFor();

  // The line near the verdict leads to the cautions, which name the hours.
  await page.getByRole('button', { name: /^Before you climb: stay away/ }).click();
  await eventually(() => page.evaluate(() => document.activeElement?.id)).toBe('climb-heading');
  expect(await page.locator('.climb').textContent()).toMatch(/Do not work at this wall \d\d:\d\d to \d\d:\d\d/);

  await page.setViewportSize(PHONE);
  expect(await lowTargets(page.locator('.sheet-bar button'))).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
  await page.locator('.sheet-bar').scrollIntoViewIfNeeded();
  await page.screenshot({ path: '.test-output/site-sheet-360.png' });

  await page.context().setOffline(true);
  await page.getByRole('button', { name: 'Print this page' }).waitFor();
  expect(await page.getByRole('button', { name: 'Site sheet (PDF)' }).count()).toBe(0);
  await page.context().setOffline(false);

  await page.emulateMedia({ media: 'print' });
  for (const shown of ['.verdict-sentence', '.day-chart canvas', '.wall-card', '.climb', '.assumptions']) {
    expect(await page.locator(shown).first().isVisible(), shown).toBe(true);
  }
  for (const hidden of ['.site-entry', '.sheet-bar', '.verdict-line']) {
    expect(await page.locator(hidden).isVisible(), hidden).toBe(false);
  }
});
