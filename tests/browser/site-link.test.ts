/** A link made on one machine opens the same site on another, and never over what somebody typed. */
import { expect, test } from 'vitest';
import { DEMO_SITE, siteLinkFragment } from '../../model/index.ts';
import { eachSitePage } from './each-site-page.ts';
import { eventually, openSitePage } from './site-page.ts';

const stage = eachSitePage();

test('a link carries the site as it stands, text as text; Undo goes back; a harmed one is refused', async () => {
  const { page, field } = stage.site;
  const title = '<img src=x onerror="document.title=1"> Süd 东墙';
  await field('title').fill(title);
  await page.getByRole('button', { name: 'Copy a link' }).click();
  const link = await page.getByLabel(/whole site/).inputValue();

  const other = await openSitePage(stage.browser, link);
  await eventually(() => other.field('title').inputValue()).toBe(title);
  expect(await other.page.locator('img[src="x"]').count()).toBe(0);
  expect(other.page.url()).toMatch(/#\/site$/);

  const edited = { ...DEMO_SITE, title: 'From a link' };
  await other.field('title').fill('Typed by hand');
  await other.page.evaluate((fragment) => location.assign(`#${fragment}`), siteLinkFragment(edited));
  await eventually(() => other.field('title').inputValue()).toBe('From a link');
  await other.page.getByRole('button', { name: 'Undo' }).click();
  expect(await other.field('title').inputValue()).toBe('Typed by hand');

  await other.page.evaluate(() => location.assign('#site=1.broken'));
  await other.page.getByText(/cut short or changed on its way/).waitFor();
  expect(await other.field('title').inputValue()).toBe('Typed by hand');
  expect(other.complaints).toEqual([]);
  await other.close();
});
