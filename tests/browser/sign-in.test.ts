/** A server that asks for a token: what goes without it, what waits for it, and signing in. */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTokens, type Tokens } from '../../server/access/tokens.ts';
import { openStore, type Store } from '../../server/data/store.ts';
import { launchChromium } from './chromium.ts';
import { axeFindings, lowTargets } from './page-checks.ts';
import { type PageServer, servePage } from './page-server.ts';
import { eventually, PHONE } from './site-page.ts';

const OUTPUT = fileURLToPath(new URL('../../.test-output', import.meta.url));

let folder: string;
let store: Store;
let tokens: Tokens;
let browser: Browser;
let server: PageServer;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'shadeside-sign-in-'));
  store = openStore(folder);
  tokens = openTokens(store);
  [browser, server] = await Promise.all([launchChromium(), servePage({ store, access: { tokens } })]);
});

afterAll(async () => {
  await browser?.close();
  await server?.close();
  store.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Titles of the sites that the server keeps. */
const kept = () =>
  store.db
    .prepare<[], { draft: string }>('SELECT draft FROM site_revision WHERE draft IS NOT NULL ORDER BY seq')
    .all()
    .map(({ draft }) => JSON.parse(draft).title);

test('the page computes without a token; saved sites wait for one, are sent with it, and no reload asks again', async () => {
  const token = tokens.make('yard');
  const context = await browser.newContext({ viewport: PHONE, serviceWorkers: 'block' });
  const page = await context.newPage();
  const form = page.getByRole('form', { name: 'Sign in to the server' });
  const entry = form.getByLabel('Token');
  const field = (path: string) => page.locator(`#field-${path}`);
  const peaks = () => page.locator('.wall-figures div:first-child dd').allTextContents();
  const line = () => page.locator('.sync-line').textContent();
  const open = async (go: () => Promise<unknown>) => {
    await go();
    await page.locator('.wall-card').first().waitFor();
    await page.evaluate(() => {
      for (const details of document.querySelectorAll<HTMLDetailsElement>('.site-entry details')) details.open = true;
    });
  };
  const save = async (title: string) => {
    await field('title').fill(title);
    await page.getByRole('button', { name: 'Save', exact: true }).click();
  };

  // It is asked for at once, can be put away, and nothing else waits for it.
  await open(() => page.goto(server.address));
  await form.waitFor();
  const before = await peaks();
  await field('box-powerW').fill('30');
  await eventually(peaks).not.toEqual(before);
  await form.getByRole('button', { name: 'Not now' }).click();
  expect(await form.count()).toBe(0);

  // What is saved stays here and says why; the form is back.
  await save('Pump house');
  await eventually(line).toBe('1 site waits to be sent: the server asks you to sign in.');
  await form.waitFor();
  expect(kept()).toEqual([]);
  await form.getByRole('button', { name: 'Not now' }).click();
  // The way to it from there ends in the form, which stands at the top of the page.
  await page.locator('.sites').getByRole('button', { name: 'Sign in' }).click();
  await eventually(() => entry.evaluate((input) => input === document.activeElement)).toBe(true);

  // A wrong token is told, each time anew.
  await entry.fill('not-the-token');
  await page.keyboard.press('Enter');
  await eventually(() => form.getByRole('alert').textContent()).toBe('The server does not know this token.');
  expect(await context.cookies()).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
  expect(await lowTargets(form.locator('input, button'))).toEqual([]);
  expect(await axeFindings(page, { include: ['.sign-in'], glare: true, minor: true })).toEqual([]);
  mkdirSync(OUTPUT, { recursive: true });
  await page.screenshot({ path: join(OUTPUT, 'sign-in-360x740.png') });

  // The right one, with the blanks that copying leaves: the site goes by itself. No script sees what stands for the token.
  await entry.fill(` ${token} `);
  await page.keyboard.press('Enter');
  await eventually(() => form.count()).toBe(0);
  await eventually(line).toMatch(/^All sent at /);
  expect(kept()).toEqual(['Pump house']);
  expect(await page.evaluate(() => document.cookie + Object.values(localStorage).join())).not.toContain(token);

  await open(() => page.reload());
  await eventually(line).toMatch(/^All sent at /);
  expect(await form.count()).toBe(0);

  // Once the token is revoked, it is asked for again.
  const { id = 0 } = tokens.list().at(-1) ?? {};
  expect(tokens.revoke(id)).toBe(true);
  await save('Pump house 2');
  await form.waitFor();
  expect(await form.getByRole('alert').textContent()).toBe('');
  await eventually(line).toBe('1 site waits to be sent: the server asks you to sign in.');
  expect(kept()).toEqual(['Pump house']);
  await context.close();
});
