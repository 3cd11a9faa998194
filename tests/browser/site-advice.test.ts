import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { DEMO_SITE } from '../../model/index.ts';
import { eachSitePage } from './each-site-page.ts';
import { axeFindings, lowTargets } from './page-checks.ts';
import { DESK, eventually, openSitePage, PHONE } from './site-page.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

const stage = eachSitePage({ shared: true });

const advice = (heading: RegExp) =>
  stage.site.page.locator('.advice').filter({ has: stage.site.page.getByRole('heading', { level: 2, name: heading }) });
const remedies = (wall: string) => advice(new RegExp(`What would help on wall “${wall}”`));
const howSure = () => advice(/How sure/);
const coldNight = () => advice(/The coldest night/);
const listed = (wall: string) => remedies(wall).locator('.remedies > li');
const card = (wall: string, id: string) => listed(wall).locator(`[data-remedy="${id}"]`);
const gains = (wall: string) => listed(wall).locator('.remedy-gain b').allTextContents();
const kelvins = (text: string) => Number.parseFloat(text.replace('−', '-'));

/** Shows a wall in metric units, and waits for what follows from its day. */
async function show(wall: string) {
  const { page } = stage.site;
  await page.getByRole('radio', { name: 'Metric' }).check();
  await page.locator('.wall-head', { hasText: wall }).getByRole('radio').check();
  await stage.site.lookAt('advice');
  await listed(wall).first().waitFor();
  await coldNight().getByRole('table').waitFor();
  await howSure().locator('.share-bars').nth(1).waitFor();
}

describe('what would help on the west wall', () => {
  test('lists each remedy with what it gains, the most useful first and what cannot be done marked', async () => {
    await show('west');
    const ids = await listed('west')
      .locator('.remedy')
      .evaluateAll((cards) => cards.map((each) => each.getAttribute('data-remedy')));
    expect(ids.indexOf('whiteHood')).toBeGreaterThanOrEqual(0);
    expect(ids.indexOf('whiteHood')).toBeLessThan(ids.indexOf('darkHood'));

    const permitted = listed('west').filter({ hasNotText: 'not permitted' }).locator('.remedy-gain b');
    const sizes = (await permitted.allTextContents()).map(kelvins);
    expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
    await card('west', 'wall:north').getByText('not permitted by the constraints').waitFor();
    await card('west', 'wall:south').getByText('within the limit with it').waitFor();
    await card('west', 'brackets').getByText('past the limit with it').waitFor();
    await card('west', 'vents').getByText('Openings let in dust, insects and water').waitFor();
    expect(await card('west', 'awning').textContent()).toMatch(/Work: 4\sh, building work/);
    await remedies('west').getByText('Hours and parts are orders of magnitude').waitFor();
  });

  test('names the best pair on top, which gains more than the best one alone', async () => {
    await show('west');
    const pair = remedies('west').locator('.best-pair:not(.least-pair)');
    await pair.getByRole('heading', { name: 'The best two together' }).waitFor();
    const pairGain = kelvins((await pair.locator('.remedy-gain b').textContent()) ?? '');
    const bestAlone = kelvins((await gains('west'))[0] ?? '');
    expect(pairGain).toBeGreaterThan(bestAlone);
    await pair.getByText('within the limit with it').waitFor();
  });

  test('marks what makes it worse, last', async () => {
    await show('south');
    const worse = card('south', 'wall:west');
    await worse.getByText('makes it worse').waitFor();
    expect(await worse.locator('.remedy-gain b').textContent()).toMatch(/^−\d/);
    expect(await listed('south').last().textContent()).toContain('makes it worse');
    expect(await listed('south').first().textContent()).not.toContain('makes it worse');
  });

  test('speaks the units of the reader and follows a change of the site', { timeout: 120_000 }, async () => {
    stage.change();
    await show('west');
    const before = await gains('west');
    expect(before[0]).toMatch(/^\+\d+\.\d K$/);
    await stage.site.page.getByRole('radio', { name: 'US' }).check();
    await stage.site.lookAt('advice');
    await eventually(async () => (await gains('west'))[0]).toMatch(/^\+\d+ °F$/);
    expect(await remedies('west').textContent()).not.toMatch(/\d\s(K|mm|m|cm²)\b/);
    await eventually(() => howSure().textContent()).not.toMatch(/\d\sK\b/);
    await stage.site.page.getByRole('radio', { name: 'Metric' }).check();
    await stage.site.lookAt('advice');
    await eventually(() => gains('west')).toEqual(before);
    await stage.site.page.getByLabel('A hood shades the box').check();
    await stage.site.lookAt('advice');
    await eventually(() => card('west', 'whiteHood').count()).toBe(0);
    expect(await gains('west')).not.toEqual(before);
  });
});

describe('how sure it is', () => {
  test('shows three peaks in order, a chance in words and percent, the band, and the weights', async () => {
    await show('west');
    const peaks = await howSure().locator('.advice-figures dd').allTextContents();
    const [p10, p50, p90] = peaks.map(Number.parseFloat) as [number, number, number];
    expect(p10).toBeLessThan(p50);
    expect(p50).toBeLessThan(p90);
    expect(await howSure().locator('.chance').textContent()).toMatch(/passes 65\.0.°C: \d+ %, (in all|very likely)/);
    expect(await howSure().getByRole('img').getAttribute('aria-label')).toContain('eight of ten cases');
    expect(await howSure().locator('.band-area').getAttribute('d')).toMatch(/^M[\d. L]+Z$/);
    const weights = howSure().locator('.share-bars').first().locator('li');
    expect(await weights.count()).toBe(9);
    const sizes = (await weights.locator('b').allTextContents()).map((text) => Math.abs(kelvins(text)));
    expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
    await howSure().getByText('The ranges are common practice, no source.').waitFor();
  });

  test('tells how often each permitted wall stays the coolest, a hundred percent in all', async () => {
    await show('west');
    const walls = howSure().locator('.share-bars').nth(1).locator('li');
    expect(await walls.first().textContent()).toMatch(/^south/);
    expect((await walls.allTextContents()).join()).not.toContain('north');
    const shares = (await walls.locator('b').allTextContents()).map(Number.parseFloat);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBe(100);
  });
});

test('limits on outside air: no line of theirs beside the air inside, and gains are told as what they cool', {
  timeout: 120_000,
}, async () => {
  stage.change();
  await show('west');
  await howSure().getByText('eight of ten cases lie in it.', { exact: false }).last().waitFor();
  expect(await howSure().locator('.band-limit').count()).toBe(1);
  await remedies('west').getByRole('heading', { name: 'Each alone: margin gained' }).waitFor();

  const limits = { minC: -40, maxC: 55, refersTo: 'outsideAir' } as const;
  await stage.site.remember({ ...DEMO_SITE, limits });
  await show('west');
  expect(await howSure().locator('.band-limit').count()).toBe(0);
  expect(await howSure().locator('figcaption').textContent()).toMatch(
    /The limit of 55\.0.°C is not drawn: it refers to the outside air, not to the air inside\.$/,
  );
  await remedies('west').getByRole('heading', { name: 'Each alone: air inside cooler by' }).waitFor();
  expect(await remedies('west').textContent()).not.toMatch(/margin gained/i);
});

test('two together that the verdict recommends are in the list, too', { timeout: 120_000 }, async () => {
  stage.change();
  const far = DEMO_SITE.walls.map((wall) => (wall.name === 'west' ? wall : { ...wall, electrodeDistanceM: 30 }));
  await stage.site.remember({ ...DEMO_SITE, walls: far });
  await show('west');
  const pair = remedies('west').locator('.least-pair');
  await pair
    .getByRole('heading', { name: 'What suffices without openings in the box, with the least effort' })
    .waitFor();
  await pair.getByText('within the limit with it').waitFor();
  const told = (await pair.locator('.remedy-text').textContent()) ?? '';
  await eventually(() => stage.site.page.locator('.way-out').textContent()).toContain(told.slice(1));
});

describe('cold, water and burns', () => {
  test('the coldest night: running, after an outage, room to the lower limit', async () => {
    stage.change();
    await show('west');
    expect(await coldNight().locator('thead th').allTextContents()).toEqual(['What', 'Running', 'Cold start']);
    const inside = (await coldNight().locator('tbody tr').first().locator('td').allTextContents()).map(
      Number.parseFloat,
    );
    expect(inside[0]).toBeGreaterThan(inside[1] ?? Number.NaN);
    await coldNight().getByText('stays above the lower limit of -40.0 °C, running or after an outage').waitFor();

    await stage.site.page.getByLabel('I know the coldest night').check();
    await stage.site.field('climate.coldNight.minC').fill('-44');
    await stage.site.lookAt('advice');
    await coldNight().getByText('a start is a cold start').waitFor();
    await coldNight().getByText('after an outage, the skin of the box lies below the dew point').waitFor();
  });

  test('water on the hot day, and a box too hot to touch', async () => {
    stage.change();
    await show('west');
    await stage.site.page
      .locator('.touch-note')
      .getByText(/touching it for 1 second may burn/)
      .waitFor();
    // A damp night, and a box that gives off next to nothing.
    const designDay = { date: '2026-07-05', maxC: 25, dailyRangeK: 14, dewPointC: 11 };
    await stage.site.remember({ ...DEMO_SITE, climate: { designDay }, box: { ...DEMO_SITE.box, powerW: 0 } });
    await show('south');
    await coldNight()
      .getByText(/On the hot day itself the skin is wet for/)
      .waitFor();
    expect(await stage.site.page.locator('.touch-note').count()).toBe(0);
  });
});

test('what takes long shows how far it is, can be stopped and taken up again', async () => {
  stage.change();
  const { page } = stage.site;
  await show('west');
  await page.evaluate(() => {
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function (this: Worker, message: unknown) {
      const late = typeof message === 'object' && message !== null && 'site' in message && !('hurry' in window);
      setTimeout(() => post.call(this, message), late ? 60_000 : 0);
    };
  });
  await stage.site.fillAndSee('box.powerW', '20');
  await stage.site.lookAt('advice');
  await page.getByRole('button', { name: 'Cancel the advice' }).click();
  await remedies('west').getByText('Out of date: of the site before the last change').waitFor();
  await page.evaluate(() => Object.assign(window, { hurry: true }));
  await page.getByRole('button', { name: 'Compute the advice' }).click();
  await remedies('west').getByText('Out of date').waitFor({ state: 'detached' });
  await eventually(() => page.getByRole('button', { name: /the advice$/ }).count()).toBe(0);
});

test.each([PHONE, DESK])('fits $width px, is accessible, and is drawn', { timeout: 180_000 }, async (viewport) => {
  stage.change();
  await stage.site.close();
  stage.site = await openSitePage(stage.browser, stage.server.address, viewport);
  const { page } = stage.site;
  await page.locator('.wall-head', { hasText: 'west' }).getByRole('radio').check();
  await stage.site.lookAt('advice');
  await listed('west').first().waitFor();
  await howSure().locator('.share-bars').nth(1).waitFor();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
  expect(await lowTargets(page.locator('.advice button'))).toEqual([]);
  mkdirSync(join(ROOT, '.test-output'), { recursive: true });
  const path = join(ROOT, `.test-output/site-advice-${viewport.width}x${viewport.height}.png`);
  await page.locator('.details').screenshot({ path });
  expect(await axeFindings(page, { include: ['.details'] })).toEqual([]);
});
