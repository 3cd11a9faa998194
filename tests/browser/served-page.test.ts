/** The page runs under the server's content security policy and asks no other server for anything. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createApp } from '../../server/app.ts';
import { WEB_BUILD } from '../../server/bin/prepare.mjs';
import { type Listening, listenOnFirst } from '../../server/listen.ts';
import { launchChromium } from './chromium.ts';

let listening: Listening;
let browser: Browser;

beforeAll(async () => {
  listening = await listenOnFirst(createApp({ webDir: WEB_BUILD }), { host: '127.0.0.1', ports: [0] });
  browser = await launchChromium();
});

afterAll(async () => {
  await browser?.close();
  await listening?.stop();
});

test('no violation of the policy, no error, no foreign request', async () => {
  const page = await browser.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('requestfailed', (request) => complaints.push(`${request.url()} failed`));
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(listening.url) && !/^(data|blob):/.test(url)) complaints.push(`${url} is foreign`);
  });
  await page.goto(listening.url, { waitUntil: 'networkidle' });
  // The page starts with the built-in site: its best wall shows that the worker ran.
  await page.getByText(/south/i).first().waitFor();
  expect(await page.title()).toMatch(/Shadeside/);
  expect(complaints).toEqual([]);
});
