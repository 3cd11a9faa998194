/** The site view as a test drives it: opened in a browser whose clock and language are not those of the place. */
import type { Browser, Locator, Page } from 'playwright-core';
import { expect } from 'vitest';

export const PHONE = { width: 360, height: 740 };
export const DESK = { width: 1280, height: 800 };

/** Waits for what the page will show; a busy machine takes its time. */
export function eventually<Value>(read: () => Value | Promise<Value>) {
  return expect.poll(read, { timeout: 20_000 });
}

/** What the driver itself says where it blocks the service worker. */
const BLOCKED = 'Service Worker registration blocked by Playwright';

export interface SitePage {
  readonly page: Page;
  /** Errors and warnings of the page so far. */
  readonly complaints: string[];
  verdict(): Promise<string>;
  field(path: string): Locator;
  /** Peak temperatures as written on the wall cards, in the order of the ranking. */
  peaks(): Promise<string[]>;
  /** Wall names in the order of the ranking. */
  ranked(): Promise<string[]>;
  /** Fills a field and waits until what `watched` reads has changed. */
  fillAndSee(path: string, text: string, watched?: () => Promise<string[]>): Promise<void>;
  /** Puts a site into the page's memory, where a reload finds it. */
  remember(site: unknown): Promise<void>;
  /** The site in the form as JSON, as a reload would find it. */
  kept(): Promise<string>;
  /** Presses a key until the element that `selector` names has the focus. */
  pressUntil(key: string, selector: string): Promise<void>;
  /** Scrolls to what is computed only when somebody looks at it. */
  lookAt(part: 'advice' | 'pictures'): Promise<void>;
  close(): Promise<void>;
}

export async function openSitePage(browser: Browser, address: string, viewport = DESK): Promise<SitePage> {
  const context = await browser.newContext({
    viewport,
    timezoneId: 'Asia/Kolkata',
    locale: 'de-DE',
    // It would fetch the whole build beside each test; tests/browser/site-saving.test.ts has one.
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('console', (message) => {
    if (message.type() !== 'error' && message.type() !== 'warning') return;
    if (message.text() === BLOCKED) return;
    complaints.push(`${message.text()} ${message.location().url}`);
  });
  await page.goto(address);
  await page.locator('.wall-card').first().waitFor();

  const field = (path: string) => page.locator(`#field-${path.replaceAll('.', '-')}`);
  const peaks = () => page.locator('.wall-figures div:first-child dd').allTextContents();
  return {
    page,
    complaints,
    field,
    peaks,
    verdict: async () => (await page.locator('.verdict-sentence').textContent()) ?? '',
    ranked: () => page.locator('.wall-name').allTextContents(),
    async fillAndSee(path, text, watched = peaks) {
      const before = await watched();
      await field(path).fill(text);
      await eventually(watched).not.toEqual(before);
    },
    async remember(site) {
      await page.evaluate((text) => localStorage.setItem('shadeside.site', text), JSON.stringify(site));
      await page.reload();
    },
    kept: () =>
      page.evaluate(() => {
        const id = sessionStorage.getItem('shadeside.current');
        const copy = JSON.parse(localStorage.getItem(`shadeside.draft.${id}`) ?? '{"draft":{}}');
        return JSON.stringify(copy.draft);
      }),
    async pressUntil(key, selector) {
      for (let step = 0; step < 200; step += 1) {
        if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return;
        await page.keyboard.press(key);
      }
      throw new Error(`${key} does not reach ${selector}`);
    },
    lookAt: (part) => page.locator({ advice: '.advices', pictures: '.pictures' }[part]).scrollIntoViewIfNeeded(),
    close: () => context.close(),
  };
}
