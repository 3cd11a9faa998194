/** A fresh site view for each test of a file, in one browser and before one server; a page must close without complaint. */
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { launchChromium } from './chromium.ts';
import { type PageServer, servePage } from './page-server.ts';
import { openSitePage, type SitePage } from './site-page.ts';

/** What a test works with; `site` is opened anew for each. */
export interface Stage {
  browser: Browser;
  server: PageServer;
  site: SitePage;
}

/** Sets the stage for the tests of the file that calls it. */
export function eachSitePage(): Stage {
  const stage = {} as Stage;
  beforeAll(async () => {
    [stage.browser, stage.server] = await Promise.all([launchChromium(), servePage()]);
  });
  afterAll(async () => {
    await stage.browser?.close();
    await stage.server?.close();
  });
  beforeEach(async () => {
    stage.server.forget();
    stage.site = await openSitePage(stage.browser, stage.server.address);
  });
  afterEach(async () => {
    await stage.site.close();
    expect(stage.site.complaints).toEqual([]);
  });
  return stage;
}
