import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { DEMO_SITE } from '../../model/index.ts';
import { eachSitePage } from './each-site-page.ts';
import { axeFindings } from './page-checks.ts';
import { DESK, eventually, openSitePage, PHONE } from './site-page.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

const stage = eachSitePage();

describe('the demo site', () => {
  test('is judged at once: verdict, four walls, the day and its heat', async () => {
    const { page } = stage.site;
    expect(await stage.site.verdict()).toMatch(/^Use wall "south"/);
    expect(await stage.site.ranked()).toEqual(['south', 'east', 'west', 'north']);
    expect(await page.locator('.finding-fail').allTextContents()).toEqual([expect.stringContaining('Fail')]);
    await page.locator('.day-chart canvas').waitFor();
    expect(await page.locator('.flows-in li').count()).toBeGreaterThan(1);
    expect(await page.locator('.flows-out li').count()).toBeGreaterThan(1);
    expect(await page.locator('.assumptions li').count()).toBeGreaterThan(3);
    expect(await page.locator('.cautions li').count()).toBeGreaterThan(3);
  });

  test('another wall can be chosen for the day', async () => {
    await stage.site.page.getByRole('radio', { name: /west/ }).check();
    const west = stage.site.page.getByRole('heading', { name: /The day on wall “west”/ });
    await west.waitFor();
    await stage.site.page.reload();
    await west.waitFor();
    expect(await stage.site.kept()).not.toContain('"wall":');
  });

  test('the first load without the chart stays below 300 kB', async () => {
    const first = stage.server.fetched().filter((path) => /\.(js|css)$|\/$/.test(path) && !path.includes('day-plot'));
    const size = (path: string) => gzipSync(stage.server.file(path === '/' ? 'index.html' : path)).length;
    expect(first.length).toBeGreaterThanOrEqual(4);
    expect(first.reduce((sum, path) => sum + size(path), 0)).toBeLessThan(300_000);
  });
});

test('a limit on the electronics shows their figure on card, short line and remedies, with the air inside beside it', async () => {
  const { page } = stage.site;
  await stage.site.remember({ ...DEMO_SITE, limits: { ...DEMO_SITE.limits, refersTo: 'componentCase' } });
  const figures = page.locator('.wall-card').first().locator('.wall-figures');
  await eventually(() => figures.textContent()).toMatch(/^Electronics at the peak\d+ °F.*Peak inside\d+ °F at/);
  const electronics = /peak(\d+ °F)/.exec((await figures.textContent()) ?? '')?.[1] ?? '';
  expect(await stage.site.verdict()).toContain(electronics.replace(' ', '\u00a0'));
  expect(await page.locator('.verdict-line').textContent()).toContain(`electronics ${electronics} on south`);
  await stage.site.lookAt('advice');
  await page
    .getByText(new RegExp(`As it stands: electronics at the peak ${electronics}, peak inside`.replaceAll(' ', '\\s')))
    .waitFor();
});

describe('clock time', () => {
  const rows = () => stage.site.page.locator('.day .hours tbody th').allTextContents();

  test('is that of the place, not of the device', async () => {
    await stage.site.page.getByText('The figures by the hour').click();
    expect((await rows())[0]).toBe('00:00');
    expect(await rows()).toHaveLength(24);
    const peakHour = Number(/at (\d+):/.exec((await stage.site.peaks())[0] ?? '')?.[1]);
    expect(peakHour).toBeGreaterThanOrEqual(13);
    expect(peakHour).toBeLessThanOrEqual(18);
  });

  test.each([
    { date: '2026-10-25', hours: 25, twice: ['02:00 (UTC+2)', '02:00 (UTC+1)'] },
    { date: '2026-03-29', hours: 23, twice: [] },
  ])('shows all $hours hours of $date in Zurich', async ({ date, hours, twice }) => {
    const place = { latitudeDeg: 47.4, longitudeDeg: 8.5, timeZone: 'Europe/Zurich' };
    await stage.site.remember({ ...DEMO_SITE, place, climate: { designDay: { date, maxC: 25 } } });
    await stage.site.page.getByText('The figures by the hour').click();
    expect(await rows()).toHaveLength(hours);
    expect((await rows()).filter((row) => row.startsWith('02:00'))).toEqual(twice);
  });
});

describe('reach', () => {
  test('the keyboard alone changes a number and chooses a wall', async () => {
    const { page } = stage.site;
    await stage.site.pressUntil('Tab', '.skip-link');
    await page.keyboard.press('Enter');
    await stage.site.pressUntil('Tab', '#field-box-powerW');
    const before = await stage.site.peaks();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('30');
    await eventually(stage.site.peaks).not.toEqual(before);
    await stage.site.pressUntil('Shift+Tab', '[name="shown-wall"]');
    await page.keyboard.press('ArrowDown');
    await page.getByRole('heading', { name: /The day on wall “(?!south)/ }).waitFor();
  });

  // Unfolded, the page is long, and both the check and the picture go over all of it.
  const long = { timeout: 180_000 };
  test.each([PHONE, DESK])('fits $width px, passes the accessibility check, and is drawn', long, async (viewport) => {
    await stage.site.close();
    stage.site = await openSitePage(stage.browser, stage.server.address, viewport);
    const { page } = stage.site;
    await page.locator('.day-chart canvas').waitFor();
    const sentence = await page.locator('.verdict-sentence').boundingBox();
    expect((sentence?.y ?? 0) + (sentence?.height ?? viewport.height)).toBeLessThan(viewport.height);
    const picture = join(ROOT, `.test-output/site-view-${viewport.width}x${viewport.height}.png`);
    mkdirSync(join(ROOT, '.test-output'), { recursive: true });
    await page.screenshot({ path: picture });
    if (process.env['SHADESIDE_SCREENSHOT'] === '1' && viewport === DESK) {
      // With what is computed after the verdict, as whoever looks at it a little longer sees it.
      await page.locator('.verdict-sentence', { hasText: 'guesses of the inputs' }).waitFor();
      await page.screenshot({ path: join(ROOT, 'web/screenshots/site-view.png') });
    }

    await page.evaluate(() => {
      for (const details of document.querySelectorAll('details')) details.open = true;
    });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
    await page.screenshot({ path: picture.replace('.png', '-unfolded.png'), fullPage: true });
    expect(await axeFindings(page)).toEqual([]);
  });
});
