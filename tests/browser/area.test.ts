/** A region from a table to a site: uploaded, matched, run, stopped, looked at on map and in table, opened, downloaded. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { CLIMATE_SAMPLES } from '../../model/index.ts';
import { openStore } from '../../server/data/store.ts';
import { openScreenings } from '../../server/screenings/jobs.ts';
import { frameFor, placed } from '../../web/area/map/frame.ts';
import { launchChromium } from './chromium.ts';
import { axeFindings, lowTargets } from './page-checks.ts';
import { type PageServer, servePage } from './page-server.ts';
import { DESK, eventually, PHONE } from './site-page.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

const folder = mkdtempSync(join(tmpdir(), 'shadeside-area-'));
const store = openStore(folder);
const screenings = openScreenings(store, { workers: 1 });
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

const HUTS = {
  latitudeDeg: Array.from({ length: 12 }, (_, k) => 33 + k / 10),
  longitudeDeg: Array.from({ length: 12 }, (_, k) => -113 - k / 20),
};

/** Semicolons, a column with another name than usual, one that is passed through, and rows that cannot be read. */
const TABLE = [
  'Ref;North;lon;Power (W);district',
  ...HUTS.latitudeDeg.map(
    (lat, k) => `hut ${k + 1};${lat};${HUTS.longitudeDeg[k]};${8 + 3 * k};${k % 2 === 1 ? 'hill' : 'dale'}`,
  ),
  'hut swapped;-113;33.5;14;hill',
  'hut loud;33.5;-113;much;dale',
].join('\n');

const button = (name: string | RegExp) => page.getByRole('button', { name });
const heading = (name: string | RegExp) => page.getByRole('heading', { name });

/** Looks at a state on a phone and on a desk: nothing beyond the edge, targets for fingers, nothing that axe minds. */
async function look(name: string) {
  mkdirSync(join(ROOT, '.test-output'), { recursive: true });
  for (const [size, viewport] of [
    ['phone', PHONE],
    ['desk', DESK],
  ] as const) {
    await page.setViewportSize(viewport);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
    expect(await lowTargets(page.locator('main :is(button, select, a.button, label.button, summary)'))).toEqual([]);
    await page.screenshot({ path: join(ROOT, `.test-output/area-${name}-${size}.png`), fullPage: true });
  }
  await passAxe();
}

async function passAxe() {
  expect(await axeFindings(page, { include: ['main'], minor: true })).toEqual([]);
}

const statusOf = () => page.locator('.run-state .badge').textContent();

/** Where a hut stands on the map, in px of the page. */
async function onMap(index: number) {
  const box = await page.locator('.map-holder canvas').boundingBox();
  if (box === null) throw new Error('there is no map');
  const { x, y } = placed(frameFor(HUTS, box.width, box.height), HUTS);
  return [box.x + (x[index] ?? 0), box.y + (y[index] ?? 0)] as const;
}

async function downloaded(name: string): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name }).click()]);
  return readFileSync(await download.path(), 'utf8');
}

test('a table: matched, problems seen, run, looked at, a point opened as a site', { timeout: 120_000 }, async () => {
  await page.goto(`${server.address}#/area`);
  await heading('A list of addresses').waitFor();
  await look('start');

  const file = { name: 'huts.csv', mimeType: 'text/csv', buffer: Buffer.from(TABLE) };
  await page.locator('input[type="file"]').first().setInputFiles(file);
  await page.getByText('Nothing can be read without a column for the latitude.').waitFor();
  expect(await button('Screen the table').isDisabled()).toBe(true);
  await page.getByLabel(/latitude/).selectOption('North');
  await page.getByText('2 of the first 14 rows would be rejected.').waitFor();
  const problems = await page.locator('.problem-table tbody tr').allTextContents();
  expect(problems).toEqual([
    expect.stringMatching(/^14North-113.*swapped/),
    expect.stringMatching(/^15Power \(W\)much/),
  ]);
  await look('matching');
  await page.getByText('Hot day and box').click();
  await page.getByLabel('The hot day to judge by').selectOption({ label: CLIMATE_SAMPLES[0]?.title ?? '' });
  await button('Screen the table').click();

  await heading('What was found').waitFor();
  await eventually(statusOf).toBe('done');
  expect(await page.locator('.found').textContent()).toMatch(/^\d+ of 12\saddresses stay /);
  // Map, words beside it, kit and table tell the same.
  const counts = (await page.locator('.band-key b').allTextContents()).map(Number);
  expect(counts.reduce((sum, count) => sum + count, 0)).toBe(12);
  const margins = () => page.locator('.rows-table tbody tr td:nth-child(3)').allTextContents();
  await eventually(async () => (await margins()).length).toBe(12);
  const over = (await margins()).filter((text) => text.startsWith('−')).length;
  expect(counts.slice(0, 3).reduce((sum, count) => sum + count, 0)).toBe(over);
  expect(await page.locator('.groundwork li').count()).toBeGreaterThan(5);
  await look('results');
  await page.getByLabel('Theme').selectOption('Sunlight');
  await passAxe();
  await page.screenshot({ path: join(ROOT, '.test-output/area-results-sunlight.png'), fullPage: true });
  await page.getByLabel('Theme').selectOption('Light');

  await page.locator('.map-holder').scrollIntoViewIfNeeded();
  await page.mouse.click(...(await onMap(6)));
  await page.locator('.point-card').getByText('hut 7').waitFor();
  await eventually(() => page.locator('.point-card').textContent()).toMatch(/Best wall/);
  const figures = await page.locator('.point-card').textContent();
  expect(figures).toMatch(/33\.6000, -113\.3000/);
  expect(figures).toMatch(/districtdale/);

  await page.getByLabel('Text in the row').fill('HILL');
  await eventually(async () => (await margins()).length).toBe(6);
  const head = page.getByRole('columnheader', { name: /^Margin/ });
  expect(await head.getAttribute('aria-sort')).toBe('ascending');
  const worst = (await margins())[0] ?? '';
  await head.getByRole('button').click();
  await eventually(async () => (await margins()).at(-1)).toBe(worst);
  expect(await head.getAttribute('aria-sort')).toBe('descending');
  await page.getByRole('radio', { name: 'US' }).check();
  await eventually(async () => (await margins()).at(-1)).toMatch(/°F$/);
  await page.getByRole('radio', { name: 'Metric' }).check();

  expect((await downloaded('Results as CSV')).trim().split('\n')).toHaveLength(13);
  expect(JSON.parse(await downloaded('Results as GeoJSON')).features).toHaveLength(12);
  expect(await downloaded('Rejected rows')).toContain('swapped');

  await button('Open hut 7 as a site').click();
  await eventually(() => page.locator('#field-title').inputValue()).toBe('huts.csv, row 8: hut 7');
  await page.goBack();
  await heading('What was found').waitFor();
});

test('a grid: counted, run, kept through a reload, stopped, gone on with, deleted', { timeout: 120_000 }, async () => {
  await page.goto(`${server.address}#/area`);
  // Two corners on the map, by keys: the middle of the world, and a place beside it.
  const map = page.getByRole('group', { name: /^Map/ });
  await map.focus();
  await page.keyboard.press('Enter');
  await page.getByText('One corner is set.').waitFor();
  for (const key of ['+', '+', 'ArrowRight', 'ArrowUp', 'Enter']) await page.keyboard.press(key);
  const drawn = (label: string) => page.getByLabel(label, { exact: true }).inputValue();
  expect([await drawn('South'), await drawn('West')]).toEqual(['0', '0']);
  expect(Number(await drawn('North'))).toBeGreaterThan(1);
  expect(Number(await drawn('East'))).toBeGreaterThan(1);
  for (const [label, text] of Object.entries({ South: '33', North: '34', West: '-114', East: '-113', Step: '0,02' })) {
    await page.getByLabel(label, { exact: true }).fill(text);
  }
  await page.getByText(/^2\s601\spoints$/).waitFor();
  await button('Screen the grid').click();
  await eventually(statusOf).toBe('running');
  await eventually(() => page.locator('.run-figures').textContent()).toMatch(/^[1-9]\d* of 2\s601/);
  await page.reload();
  await eventually(statusOf).toBe('running');
  await page.getByText('What was found so far').waitFor();
  await button('Stop the screening').click();
  await eventually(statusOf).toBe('stopped');
  await button('Go on').click();
  await eventually(statusOf).toBe('running');
  await button('Stop the screening').click();
  await eventually(statusOf).toBe('stopped');

  await page.getByRole('link', { name: 'All screenings' }).click();
  const entries = page.locator('.screening-list li');
  await eventually(() => entries.count()).toBe(2);
  await button('Delete Grid').click();
  await button('Keep').click();
  await button('Delete Grid').click();
  await button('Delete for good').click();
  await eventually(() => entries.allTextContents()).toEqual([expect.stringContaining('huts.csv')]);
  expect(complaints).toEqual([]);
});

test('a server that keeps nothing says so, and so does one that is gone', async () => {
  const bare = await servePage();
  await page.goto(`${bare.address}#/area`);
  await page.getByText('This server keeps nothing').waitFor();
  await page.goto(`${server.address}#/site`);
  await page.route('**/api/**', (route) => route.abort());
  await page.getByRole('link', { name: 'A region' }).click();
  await page.getByText('The server cannot be reached').waitFor();
  await page.unroute('**/api/**');
  await button('Try again').click();
  await heading('A list of addresses').waitFor();
  await bare.close();

  if (process.env['SHADESIDE_SCREENSHOT'] !== '1') return;
  await button('Try with an example').click();
  await button('Screen the table').click();
  await eventually(statusOf).toBe('done');
  await page.locator('.worst button').first().click();
  await page.evaluate(() => scrollBy(0, (document.querySelector('.results')?.getBoundingClientRect().top ?? 0) - 8));
  await page.screenshot({ path: join(ROOT, 'web/screenshots/area.png') });
}, 120_000);
