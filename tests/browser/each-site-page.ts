/**
 * A site view for each test of a file, in one browser and before one server; a page must close without complaint. Where tests only
 * look at what the page computes, which takes seconds, they may share one until a test changes it.
 */
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { launchChromium } from './chromium.ts';
import { type PageServer, servePage } from './page-server.ts';
import { openSitePage, type SitePage } from './site-page.ts';

/** What a test works with; `site` is opened anew for each, or for each after one that changed it. */
export interface Stage {
  browser: Browser;
  server: PageServer;
  site: SitePage;
  /** Says that the test changes the page: the next one gets another. Needed where pages are shared only. */
  change(): void;
}

/** Sets the stage for the tests of the file that calls it. */
export function eachSitePage({ shared = false } = {}): Stage {
  let usable = false;
  const stage = {
    change: () => {
      usable = false;
    },
  } as Stage;
  beforeAll(async () => {
    [stage.browser, stage.server] = await Promise.all([launchChromium(), servePage()]);
  });
  afterAll(async () => {
    await stage.browser?.close();
    await stage.server?.close();
  });
  beforeEach(async () => {
    if (shared && usable) return;
    await stage.site?.close();
    usable = true;
    stage.server.forget();
    stage.site = await openSitePage(stage.browser, stage.server.address);
  });
  afterEach(async () => {
    if (!shared) await stage.site.close();
    expect(stage.site.complaints).toEqual([]);
  });
  return stage;
}
