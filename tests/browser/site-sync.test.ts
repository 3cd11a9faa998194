/** Saved sites between two browsers and a server that keeps them: sent, waiting without a network, in conflict, decided. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openStore, type Store } from '../../server/data/store.ts';
import { launchChromium } from './chromium.ts';
import { axeFindings } from './page-checks.ts';
import { type PageServer, servePage } from './page-server.ts';
import { eventually, PHONE } from './site-page.ts';

let folder: string;
let store: Store;
let browser: Browser;
let server: PageServer;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'shadeside-sync-'));
  store = openStore(folder);
  [browser, server] = await Promise.all([launchChromium(), servePage({ store })]);
});

afterAll(async () => {
  await browser?.close();
  await server?.close();
  store.close();
  rmSync(folder, { recursive: true, force: true });
});

const field = (page: Page, path: string) => page.locator(`#field-${path.replaceAll('.', '-')}`);
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true });
const line = (page: Page) => page.locator('.sync-line').textContent();
const focused = (page: Page) => page.evaluate(() => document.activeElement?.textContent ?? '');
const listed = (page: Page) => page.locator('.site-name').allTextContents();

async function openPage(): Promise<Page> {
  const context = await browser.newContext({ viewport: PHONE, serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.goto(server.address);
  await page.locator('.wall-card').first().waitFor();
  await page.evaluate(() => {
    for (const details of document.querySelectorAll<HTMLDetailsElement>('.site-entry details')) details.open = true;
  });
  return page;
}

async function save(page: Page, path: string, text: string): Promise<void> {
  await field(page, path).fill(text);
  await button(page, 'Save').click();
}

/** Opens the list of saved sites, which is there once one is. */
async function openList(page: Page): Promise<void> {
  await page.locator('.site-list-fold').waitFor();
  await page.evaluate(() => {
    const list = document.querySelector<HTMLDetailsElement>('.site-list-fold');
    if (list) list.open = true;
  });
}

/** Current drafts in the database, by title. */
function kept(): { revision: number; draft: { title?: string; box?: { powerW?: unknown } } | null }[] {
  return store.db
    .prepare<[], { revision: number; draft: string | null }>(
      'SELECT revision, draft FROM site_revision JOIN site USING (revision) WHERE site.id = site_id ORDER BY seq',
    )
    .all()
    .map(({ revision, draft }) => ({ revision, draft: draft === null ? null : JSON.parse(draft) }));
}

test('what is saved reaches the server and other browsers; two states are shown and nothing is overwritten', async () => {
  const one = await openPage();
  await eventually(() => line(one)).toBe('What you save is sent to the server as well.');
  await save(one, 'title', 'Yard <i>one</i>');
  await eventually(() => line(one)).toMatch(/^All sent at /);
  expect(kept()).toMatchObject([{ revision: 1, draft: { title: 'Yard <i>one</i>' } }]);

  // Another browser gets it at its start, and changes it while the first has no network.
  const two = await openPage();
  await openList(two);
  await button(two, 'Open Yard <i>one</i>').click();
  await one.context().setOffline(true);
  await save(one, 'box.powerW', '21');
  await eventually(() => line(one)).toBe('1 site waits to be sent; you are offline.');
  await save(two, 'box.powerW', '33');
  await eventually(kept).toMatchObject([{ revision: 2, draft: { box: { powerW: 33 } } }]);

  // Back online: both states are there to choose from.
  await one.context().setOffline(false);
  const conflict = one.getByRole('region', { name: 'Two states of Yard <i>one</i>' });
  await conflict.waitFor();
  expect(await line(one)).toBe('1 site has two states: choose one.');
  expect(await conflict.locator('tbody tr').allTextContents()).toEqual([expect.stringMatching(/21\sW.*33\sW/)]);
  expect(await field(one, 'box.powerW').inputValue()).toBe('21');
  expect(kept()).toMatchObject([{ revision: 2, draft: { box: { powerW: 33 } } }]);
  expect(await axeFindings(one, { include: ['.sites'], minor: true })).toEqual([]);
  expect(await one.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width);
  if (process.env['SYNC_PICTURES']) {
    await conflict.screenshot({ path: `${process.env['SYNC_PICTURES']}/conflict.png` });
    await one.locator('.sites').screenshot({ path: `${process.env['SYNC_PICTURES']}/sites.png` });
  }

  // Kept both: theirs under its id, mine as a site of its own, sent as well; the focus stays in the panel.
  await conflict.getByRole('button', { name: 'Keep both' }).focus();
  await one.keyboard.press('Enter');
  await eventually(() => line(one)).toMatch(/^All sent at /);
  await eventually(() => field(one, 'title').inputValue()).toBe('Yard <i>one</i> (copy)');
  expect(kept().map(({ draft }) => draft?.box?.powerW)).toEqual([33, 21]);
  expect(await focused(one)).toContain('Yard <i>one</i> (copy)');

  // The second browser deletes what the first changes; the first wins it back.
  await openList(two);
  await openList(one);
  await button(one, 'Open Yard <i>one</i>').click();
  await eventually(() => field(one, 'box.powerW').inputValue()).toBe('33');
  // The copy comes in without a reload.
  await two.evaluate(() => dispatchEvent(new Event('online')));
  await eventually(() => listed(two)).toHaveLength(2);
  await button(two, 'Delete Yard <i>one</i>').focus();
  await two.keyboard.press('Enter');
  await eventually(() => listed(two)).toHaveLength(1);
  await eventually(() => focused(two)).toContain('Yard <i>one</i> (copy)');
  await eventually(() => kept().filter(({ draft }) => draft === null)).toHaveLength(1);
  await save(one, 'box.powerW', '44');
  await one.getByText('was changed here and deleted on the server').waitFor();
  await button(one, 'Keep mine').click();
  await eventually(() => kept().at(-1)).toMatchObject({ revision: 4, draft: { box: { powerW: 44 } } });

  // Every revision can be had again, as a new site.
  await openList(one);
  await button(one, 'Revisions of Yard <i>one</i>').click();
  await eventually(() => one.locator('.site-history li').count()).toBe(4);
  if (process.env['SYNC_PICTURES'])
    await one.locator('.sites').screenshot({ path: `${process.env['SYNC_PICTURES']}/revisions.png` });
  await button(one, 'Open revision 1 of Yard <i>one</i> as a copy').click();
  await eventually(() => field(one, 'title').inputValue()).toBe('Yard <i>one</i> (revision 1)');

  // The focus stays close to what was renamed, or comes back.
  await button(one, 'Rename Yard <i>one</i> (copy)').focus();
  await one.keyboard.press('Enter');
  await one.getByLabel('New name').fill('Shed');
  await one.keyboard.press('Enter');
  await eventually(() => focused(one)).toContain('Shed');
  await button(one, 'Delete Shed').focus();
  await one.keyboard.press('Enter');
  await eventually(() => focused(one)).toContain('Yard <i>one</i>');
  await one.locator('.sites').getByRole('button', { name: 'Undo' }).focus();
  await one.keyboard.press('Enter');
  await eventually(() => focused(one)).toContain('Shed');
  await eventually(() => kept().map(({ draft }) => draft?.title)).toEqual(['Yard <i>one</i>', 'Shed']);
});
