/** The page without a network, and sites that outlast the tab they were entered in. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchChromium } from './chromium.ts';
import { type PageServer, servePage } from './page-server.ts';
import { eventually, PHONE } from './site-page.ts';

let browser: Browser;
let server: PageServer;

beforeAll(async () => {
  [browser, server] = await Promise.all([launchChromium(), servePage()]);
});

afterAll(async () => {
  await browser?.close();
  await server?.close();
});

const field = (page: Page, path: string) => page.locator(`#field-${path.replaceAll('.', '-')}`);
const state = (page: Page) => page.locator('.sites-state').textContent();
const peaks = (page: Page) => page.locator('.wall-figures div:first-child dd').allTextContents();
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const openList = (page: Page) => page.locator('.site-list-fold > summary').click();

/** A page as it opens, its service worker ready and all of the form unfolded. */
async function openPage(page: Page, address = server.address): Promise<void> {
  await page.goto(address);
  await page.locator('.wall-card').first().waitFor();
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await unfold(page);
}

async function unfold(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll<HTMLDetailsElement>('.site-entry details:not(.site-list-fold)'))
      details.open = true;
  });
}

test('loaded once, the page opens and computes without a network, charts and all', async () => {
  const context = await browser.newContext({ viewport: PHONE });
  const page = await context.newPage();
  await openPage(page);
  const manifest = await page.evaluate(async () => {
    const link = document.querySelector<HTMLLinkElement>('link[rel="manifest"]');
    const { icons, display } = await (await fetch(link?.href ?? '')).json();
    const sizes = await Promise.all(
      icons.map(async ({ src, sizes }: { src: string; sizes: string }) => {
        const image = new Image();
        image.src = new URL(src, link?.href).href;
        await image.decode();
        return sizes === 'any' || sizes === `${image.naturalWidth}x${image.naturalHeight}`;
      }),
    );
    return { display, sizes };
  });
  expect(manifest.display).toBe('standalone');
  expect(manifest.sizes.length).toBeGreaterThanOrEqual(3);
  expect(manifest.sizes.every(Boolean)).toBe(true);

  // Once the page knows that this server keeps no sites: a question on its way would count as fetched without a network.
  await eventually(() => server.fetched()).toContain('/api/health');
  await context.setOffline(true);
  server.forget();
  await page.reload();
  await page.locator('.wall-card').first().waitFor();
  await page.locator('.day-chart canvas').waitFor();
  await page.getByText('You are offline.').waitFor();
  await unfold(page);
  const before = await peaks(page);
  // Text with a unit needs the part that is loaded last.
  await field(page, 'box.powerW').fill('0.03 kW');
  await eventually(() => peaks(page)).not.toEqual(before);
  // Looking for a newer service worker is the browser's own doing, and not stopped by that.
  expect(server.fetched().filter((path) => path !== '/service-worker.js')).toEqual([]);
  await context.close();
});

test('an edit outlives its tab; saved sites are listed, opened, renamed, deleted and brought back', async () => {
  const context = await browser.newContext({ viewport: PHONE });
  const page = await context.newPage();
  await openPage(page);
  await field(page, 'title').fill('Yard <b>one</b>');
  await button(page, 'Save').click();
  await eventually(() => state(page)).toContain('is saved');
  await field(page, 'box.powerW').fill('21');
  expect(await state(page)).toContain('has changes that are not saved');
  // No time to say goodbye: the renderer dies.
  await page.goto('chrome://crash').catch(() => {});
  await page.close();

  const next = await context.newPage();
  await openPage(next);
  expect(await field(next, 'box.powerW').inputValue()).toBe('21');
  expect(await state(next)).toContain('Yard <b>one</b>: has changes that are not saved');
  await button(next, 'Save as a copy').click();
  await eventually(() => state(next)).toContain('Yard <b>one</b> (copy): is saved');
  await openList(next);
  await button(next, 'Open Yard <b>one</b>').click();
  await eventually(() => field(next, 'box.powerW').inputValue()).toBe('14');
  await button(next, 'Rename Yard <b>one</b>').click();
  await next.getByLabel('New name').fill('Yard two');
  await next.keyboard.press('Enter');
  await eventually(() => field(next, 'title').inputValue()).toBe('Yard two');
  expect(await state(next)).toContain('Yard two: is saved');
  await button(next, 'Delete Yard <b>one</b> (copy)').click();
  await eventually(() => next.locator('.site-name').allTextContents()).toEqual([expect.stringContaining('Yard two')]);
  await next.locator('.sites').getByRole('button', { name: 'Undo' }).click();
  await eventually(() => next.locator('.site-name').count()).toBe(2);
  await context.close();
});

test('two tabs with one site show the same, and what another tab saved is not overwritten unseen', async () => {
  const context = await browser.newContext({ viewport: PHONE });
  const [one, two] = [await context.newPage(), await context.newPage()];
  await openPage(one);
  await field(one, 'title').fill('Shed');
  await button(one, 'Save').click();
  await eventually(() => state(one)).toContain('is saved');
  await openPage(two);
  await field(two, 'box.powerW').fill('18');
  await eventually(() => field(one, 'box.powerW').inputValue()).toBe('18');
  await context.close();
});

test('a newer build is told, waits until a person takes it, and no edit is lost', async () => {
  const context = await browser.newContext({ viewport: PHONE });
  const page = await context.newPage();
  const own = await servePage();
  const builds = () => page.evaluate(async () => (await caches.keys()).filter((name) => name.startsWith('shadeside-')));
  const notice = page.locator('.offline-notice').getByText('A new version is ready.');
  await openPage(page, own.address);
  // Once the first build has the page, a newer one cannot be taken for the first.
  await eventually(() => page.evaluate(() => navigator.serviceWorker.controller?.state)).toBe('activated');
  expect(await builds()).toHaveLength(1);
  await field(page, 'box.powerW').fill('21');
  own.update();
  await page.reload();
  await notice.waitFor();
  expect(await builds()).toContain('shadeside-newer');

  // Nobody asked for it: it waits, and what is typed meanwhile stays.
  const waiting = () =>
    page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.waiting?.state ?? null);
  expect(await waiting()).toBe('installed');
  await unfold(page);
  expect(await field(page, 'box.powerW').inputValue()).toBe('21');
  await field(page, 'box.powerW').fill('22');
  await Promise.all([page.waitForEvent('load'), button(page, 'Reload').click()]);
  await page.locator('.wall-card').first().waitFor();
  expect(await waiting()).toBe(null);
  expect(await notice.count()).toBe(0);
  await unfold(page);
  expect(await field(page, 'box.powerW').inputValue()).toBe('22');
  await context.close();
  await own.close();
});
