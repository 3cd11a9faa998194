/** A region from a table to a site: uploaded, matched, run, stopped, looked at on map and in table, opened, downloaded. */
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openStore } from '../../server/data/store.ts';
import { openScreenings } from '../../server/screenings/jobs.ts';
import { launchChromium } from './chromium.ts';
import { type PageServer, servePage } from './page-server.ts';
import { DESK, eventually, PHONE } from './site-page.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

const folder = mkdtempSync(join(tmpdir(), 'shadeside-area-'));
const store = openStore(folder);
const screenings = openScreenings(store, { workers: 0 });
let browser: Browser;
let server: PageServer;
let page: Page;
const complaints: string[] = [];

beforeAll(async () => {
  [browser, server] = await Promise.all([launchChromium(), servePage({ store, screenings })]);
  const context = await browser.newContext({
    viewport: DESK,
    timezoneId: 'Asia/Kolkata',
    locale: 'de-DE',
    serviceWorkers: 'block',
    hasTouch: true,
  });
  page = await context.newPage();
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('console', (message) => {
    const blocked = message.text().startsWith('Service Worker registration blocked');
    if (message.type() === 'error' && !blocked) complaints.push(message.text());
  });
});

afterAll(async () => {
  await browser?.close();
  await server?.close();
  await screenings.stop();
  store.close();
  rmSync(folder, { recursive: true });
});

/** Semicolons, a column with another name than usual, one that is passed through, and rows that cannot be read. */
const TABLE = [
  'Ref;North;lon;Power (W);district',
  ...Array.from(
    { length: 12 },
    (_, k) => `hut ${k + 1};${33 + k / 10};${-113 - k / 20};${8 + 3 * k};${k % 2 ? 'hill' : 'dale'}`,
  ),
  'hut swapped;-113;33.5;14;hill',
  'hut loud;33.5;-113;much;dale',
].join('\n');

const button = (name: string | RegExp) => page.getByRole('button', { name });
const heading = (name: string | RegExp) => page.getByRole('heading', { name });

/** Looks at a state: nothing beyond the edge, targets for fingers, nothing that axe minds. */
async function look(name: string, viewport = DESK) {
  await page.setViewportSize(viewport);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
  for (const target of await page.locator('main :is(button, select, a.button, label.button):visible').all()) {
    expect((await target.boundingBox())?.height, await target.innerText()).toBeGreaterThanOrEqual(44);
  }
  mkdirSync(join(ROOT, '.test-output'), { recursive: true });
  await page.screenshot({ path: join(ROOT, `.test-output/area-${name}.png`), fullPage: true });
  const { violations } = await new AxeBuilder({ page }).include('main').analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([]);
}

test('a region from a table to a site', { timeout: 120_000 }, async () => {
  await page.goto(`${server.address}#/area`);
  await heading('A list of addresses').waitFor();
  await look('start-phone', PHONE);
  await look('start');

  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles({ name: 'huts.csv', mimeType: 'text/csv', buffer: Buffer.from(TABLE) });
  await heading('What the columns say').waitFor();
  await page.getByText('Nothing can be read without a column for the latitude.').waitFor();
  expect(await button('Screen the table').isDisabled()).toBe(true);
  await page.getByLabel(/latitude/).selectOption('North');
  await page.getByText('2 of the first 14 rows would be rejected.').waitFor();
  expect(await page.locator('.problem-table').innerText()).toMatch(/14\s+North\s+-113\s+.*swapped/);
  expect(await page.locator('.problem-table').innerText()).toMatch(/15\s+Power \(W\)\s+much/);
  await look('matching-phone', PHONE);
  await look('matching');
  await page.getByText('Hot day and box').click();
  await page.getByLabel('The hot day to judge by').selectOption({ index: 2 });
  await button('Screen the table').click();

  await heading('What was found').first().waitFor();
  await eventually(() => page.locator('.run-state').innerText()).toMatch(/done/i);
  await look('results-phone', PHONE);
  await look('results');
});
