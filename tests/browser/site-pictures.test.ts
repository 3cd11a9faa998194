/** The pictures of sun and shade: what they show, how they are worked, and what they say in words. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeEach, describe, expect, test } from 'vitest';
import { eachSitePage } from './each-site-page.ts';
import { axeFindings } from './page-checks.ts';
import { DESK, eventually, openSitePage, PHONE } from './site-page.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

const stage = eachSitePage();

beforeEach(() => stage.site.lookAt('pictures'));

const sunWords = async () => (await stage.site.page.locator('.sun-words').textContent()) ?? '';
const roseTable = () => stage.site.page.locator('.rose-table tbody td').allTextContents();

describe('the sun diagram', () => {
  test('shows eight paths, the hot day with its hours, and the eave of the south wall', async () => {
    const { page } = stage.site;
    await page.getByRole('heading', { name: 'Sun and shade on wall “south”' }).waitFor();
    const picture = page.getByRole('img', { name: /^Sun diagram of wall south, which faces S, 188°/ });
    await picture.waitFor();
    expect(await picture.locator('.path').count()).toBe(8);
    expect(await picture.locator('.path-design').count()).toBe(1);
    expect(await picture.locator('.hour-mark').count()).toBeGreaterThan(10);
    expect(await picture.locator('.silhouette-eave').count()).toBe(1);
    await picture.getByText('Jul 21').waitFor();
    // Winter sun reaches below the eave, that of the hot day does not.
    expect(await picture.locator('[data-date$="-12-21"] .sun-most').count()).toBe(1);
    expect(await picture.locator('.path-design .sun-most, .path-design .sun-some').count()).toBe(0);
  });

  test('says the same in words and in a table', async () => {
    const { page } = stage.site;
    const words = page.locator('.path-words li');
    await words.first().waitFor();
    expect(await words.count()).toBe(8);
    expect(await words.first().textContent()).toMatch(
      /the hot day: no sun on the box\. Hidden by .*the eave for [\d.]+ h/,
    );
    expect(await words.last().textContent()).toMatch(
      /^December 21: sun on the box from \d\d:\d\d to \d\d:\d\d, [\d.]+ h\./,
    );
    await page.getByText('The paths in figures').click();
    const hours = page.locator('.sun-diagram tbody td:last-child');
    expect(await hours.count()).toBe(8);
    expect(await hours.last().textContent()).toBe('0.0');
    expect(await page.locator('.sun-diagram desc').textContent()).toContain('the eave');
  });

  test('shows and names what stands before a wall', async () => {
    const { page } = stage.site;
    await page.getByRole('radio', { name: /west/ }).check();
    await stage.site.lookAt('pictures');
    await page.getByRole('heading', { name: 'Sun and shade on wall “west”' }).waitFor();
    await page.locator('#field-walls-3').click();
    await page.locator('#field-walls-3-item').getByRole('button', { name: 'Add a tree' }).click();
    await stage.site.lookAt('pictures');
    await page.locator('.sun-diagram .silhouette-tree').first().waitFor();
    await page
      .locator('.sun-diagram .picture-key')
      .getByText(/the tree, which lets \d+\s% of the sun through/)
      .waitFor();
    await page.locator('.plan .shape-tree.shape-overhead').waitFor();
    await page
      .locator('.plan .picture-key')
      .getByText(/the tree, [\d.]+\sft high/)
      .waitFor();
  });
});

describe('the plan', () => {
  const slider = () => stage.site.page.locator('.hour-choice input');

  /** Where on the screen a place of the plan lies, px east and north of its middle. */
  async function planPoint([east, north]: readonly [number, number]): Promise<[number, number]> {
    const frame = await stage.site.page.locator('.plan-drawing').boundingBox();
    if (frame === null) throw new Error('the plan is not drawn');
    return [frame.x + frame.width / 2 + east, frame.y + frame.height / 2 - north];
  }

  async function dragSun(...places: readonly (readonly [number, number])[]) {
    const { mouse } = stage.site.page;
    const handle = stage.site.page.locator('.sun-grip');
    await handle.scrollIntoViewIfNeeded();
    await handle.hover({ force: true });
    await mouse.down();
    for (const place of places) {
      const [x, y] = await planPoint(place);
      await mouse.move(x, y, { steps: 4 });
    }
    await mouse.up();
  }

  test('starts at the hottest hour; the keyboard moves the sun and the words follow', async () => {
    const { page } = stage.site;
    await slider().waitFor();
    const before = await sunWords();
    expect(before).toMatch(/^1\d:\d0: sun \d+° high in the \w+; none reaches the box, hidden by the \w+/);
    await slider().focus();
    await page.keyboard.press('ArrowLeft');
    await eventually(sunWords).not.toBe(before);
    await page.keyboard.press('Home');
    await eventually(sunWords).toMatch(/^00:00: the sun is below the horizon/);
    expect(await slider().getAttribute('aria-valuetext')).toBe('00:00');
    expect(await page.locator('.ray-lit').count()).toBe(0);
    expect((await slider().boundingBox())?.height).toBeGreaterThanOrEqual(44);
  });

  test('the sun is dragged along the rim, and lit faces are marked', { timeout: 180_000 }, async () => {
    const { page } = stage.site;
    await page.getByRole('radio', { name: /west/ }).check();
    await stage.site.lookAt('pictures');
    await page.getByRole('heading', { name: 'Sun and shade on wall “west”' }).waitFor();
    // What is computed last stands above the plan and would move it.
    await stage.site.lookAt('advice');
    await page.getByText('coolest this often').waitFor({ timeout: 60_000 });
    const grip = await page.locator('.sun-grip').boundingBox();
    expect(Math.min(grip?.width ?? 0, grip?.height ?? 0)).toBeGreaterThanOrEqual(43.9);
    // What is computed late may move the plan on the page under the pointer: then the drag is done again.
    await eventually(async () => {
      await dragSun([0, 150], [-150, 0]);
      return sunWords();
    }).toMatch(/in the W; it reaches the front.* \(\d+\s% of what/);
    expect(await page.locator('.lit-front').count()).toBe(1);
    expect(await page.locator('.ray-lit').count()).toBe(1);
    const chosen = await slider().inputValue();

    // Released, the sun stays where it is.
    const [x, y] = await planPoint([150, 0]);
    await page.mouse.move(x, y, { steps: 4 });
    expect(await slider().inputValue()).toBe(chosen);
  });
});

describe('the rose', () => {
  test('has 36 bearings, the walls, the limit, and the same figures in its table', async () => {
    const { page } = stage.site;
    await page.locator('.rose-drawing').waitFor();
    expect(await page.locator('.rose-point').count()).toBe(36);
    expect(await page.locator('.rose-wall').count()).toBe(4);
    expect(await page.locator('.rose-drawing .limit-ring').count()).toBe(1);
    for (const wall of ['north', 'east', 'south', 'west']) {
      await page.locator('.rose-drawing text', { hasText: wall }).waitFor();
    }
    await page.getByText('The peak for every bearing').click();
    const peaks = (await roseTable()).map(Number.parseFloat);
    expect(peaks).toHaveLength(36);
    const words = (await page.locator('.rose-words').textContent()) ?? '';
    const [, coolest, hottest] = /Coolest .*?: (\d+).*Hottest .*?: (\d+)/.exec(words) ?? [];
    expect(Number(coolest)).toBe(Math.min(...peaks));
    expect(Number(hottest)).toBe(Math.max(...peaks));
    const south = page.locator('.rose-walls li', { hasText: 'south' });
    expect(await south.textContent()).toMatch(/cooler than the bare wall of this bearing/);
    // A wall's peak is the one on its card.
    expect(await south.textContent()).toContain((/\d+/.exec((await stage.site.peaks())[0] ?? '') ?? [''])[0]);
  });

  test('follows an edit', async () => {
    await stage.site.page.locator('.rose-drawing').waitFor();
    const before = await roseTable();
    await stage.site.field('box.powerW').fill('40');
    await stage.site.lookAt('pictures');
    await eventually(roseTable).not.toEqual(before);
    const [watts14, watts40] = [before, await roseTable()].map((column) => Number.parseFloat(column[0] ?? ''));
    expect(watts40).toBeGreaterThan(watts14 ?? Number.NaN);
  });

  test('that takes long shows its progress, can be cancelled, holds up no edit, and is taken up again', async () => {
    const { page } = stage.site;
    // A quarter of a second before each bearing: a rose that takes nine seconds and leaves the processor free.
    await page.route('**/pictures.worker*.js', async (route) => {
      const response = await route.fetch();
      const slow = `const read = MessagePort.prototype.postMessage;
        MessagePort.prototype.postMessage = function (message) { setTimeout(() => read.call(this, message), 250); };`;
      await route.fulfill({ response, body: `${slow}${await response.text()}` });
    });
    await page.reload();
    await stage.site.lookAt('pictures');
    const cancel = page.locator('.rose').getByRole('button', { name: 'Cancel' });
    await cancel.waitFor();
    const progress = page.locator('.rose progress');
    await eventually(async () => Number(await progress.getAttribute('value'))).toBeGreaterThan(0);
    await stage.site.fillAndSee('box.powerW', '40');
    expect(await page.locator('.rose-drawing').count()).toBe(0);
    await stage.site.lookAt('pictures');
    await cancel.click();
    expect(await progress.count()).toBe(0);
    await page.getByText('The rose was cancelled.').waitFor();
    await page.getByRole('button', { name: 'Compute the rose' }).click();
    await cancel.waitFor();
    await page.locator('.rose-drawing').waitFor();
  });
});

test.each([PHONE, DESK])('the pictures fit $width px and are accessible', { timeout: 180_000 }, async (viewport) => {
  await stage.site.close();
  stage.site = await openSitePage(stage.browser, stage.server.address, viewport);
  const { page } = stage.site;
  await stage.site.lookAt('pictures');
  await page.locator('.rose-drawing').waitFor();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
  const letters = await page.locator('.picture svg text').evaluateAll((texts) =>
    texts.map((text) => {
      const svg = (text as SVGTextElement).ownerSVGElement as SVGSVGElement;
      return Number.parseFloat(getComputedStyle(text).fontSize) * (svg.getScreenCTM()?.a ?? 0);
    }),
  );
  expect(letters.length).toBeGreaterThan(30);
  expect(Math.min(...letters)).toBeGreaterThanOrEqual(12);
  mkdirSync(join(ROOT, '.test-output'), { recursive: true });
  const path = join(ROOT, `.test-output/site-pictures-${viewport.width}x${viewport.height}.png`);
  // The verdict sticks to the top and would lie over the picture.
  await page.locator('.verdict').evaluate((verdict) => {
    verdict.style.position = 'static';
  });
  await page.locator('.pictures').screenshot({ path });
  await page.evaluate(() => {
    for (const details of document.querySelectorAll<HTMLDetailsElement>('.pictures details')) details.open = true;
  });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
  expect(await axeFindings(page, { include: ['.pictures'] })).toEqual([]);
});
