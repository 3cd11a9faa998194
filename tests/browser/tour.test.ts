/** The tour goes from part to part by keyboard, each part is there, and it ends where it began. */
import { expect, test } from 'vitest';
import { TOUR_STEPS } from '../../web/tour/tour-steps.ts';
import { eachSitePage } from './each-site-page.ts';
import { axeFindings, lowTargets } from './page-checks.ts';
import { eventually, openSitePage, PHONE } from './site-page.ts';

const stage = eachSitePage();

test('on a phone, by keyboard, from the verdict to the lesson', { timeout: 120_000 }, async () => {
  await stage.site.close();
  stage.site = await openSitePage(stage.browser, stage.server.address, PHONE);
  const { page } = stage.site;
  const panel = page.getByRole('region', { name: /^\d of \d/ });
  await page.getByRole('button', { name: 'Tour' }).focus();
  await page.keyboard.press('Enter');
  for (const [k, { title, hash, target }] of TOUR_STEPS.entries()) {
    await panel.getByRole('heading', { name: `${k + 1} of ${TOUR_STEPS.length} ${title}` }).waitFor();
    await page.locator(`${target}[data-tour]`).waitFor();
    expect(await page.locator('[data-tour]').count()).toBe(1);
    expect(new URL(page.url()).hash).toBe(hash);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('tour-heading');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
    // The part stands above the panel, so that it is seen.
    await eventually(async () => {
      const part = await page.locator('[data-tour]').boundingBox();
      const foot = await panel.boundingBox();
      return (part?.y ?? 1e9) < (foot?.y ?? 0);
    }).toBe(true);
    if (k === 0) {
      await page.screenshot({ path: '.test-output/tour-360.png' });
      expect(await axeFindings(page, { include: ['.tour'], minor: true })).toEqual([]);
      expect(await lowTargets(panel.getByRole('button'))).toEqual([]);
    }
    const forward = panel.getByRole('button', { name: k === TOUR_STEPS.length - 1 ? 'Done' : 'Next' });
    await forward.focus();
    await page.keyboard.press('Enter');
  }
  expect(await panel.count()).toBe(0);
  // The mark is taken away once the page without the panel has been painted.
  await eventually(() => page.locator('[data-tour]').count()).toBe(0);
  await eventually(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Tour');

  await page.keyboard.press('Enter');
  await panel.waitFor();
  await page.keyboard.press('Escape');
  expect(await panel.count()).toBe(0);
});
