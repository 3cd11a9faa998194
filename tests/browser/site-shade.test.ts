import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { DEMO_SITE } from '../../model/index.ts';
import { eachSitePage } from './each-site-page.ts';
import { axeFindings, lowTargets } from './page-checks.ts';
import { eventually, openSitePage, PHONE } from './site-page.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

const stage = eachSitePage();

const KINDS = ['side wall', 'fence', 'block', 'tree'];

/** The demo's west wall in the form. */
const west = () => stage.site.page.locator('#field-walls-3-item');
const add = (noun: string) =>
  west()
    .getByRole('button', { name: `Add a ${noun}` })
    .click();

/** Peaks as numbers, by the name of the wall. */
async function peakOf(wall: string): Promise<number> {
  const [names, peaks] = await Promise.all([stage.site.ranked(), stage.site.peaks()]);
  return Number.parseFloat(peaks[names.indexOf(wall)] ?? '');
}

describe('what stands before a wall', () => {
  test('a fence before the west wall lowers its peak, and taking it away brings it back', async () => {
    const bare = await peakOf('west');
    const south = await peakOf('south');
    await stage.site.page.locator('#field-walls-3').click();
    await add('fence');
    await stage.site.pressUntil('Tab', '#field-walls-3-obstructions-0-distanceM');
    await stage.site.field('walls.3.obstructions.0.heightM').fill('4 m');
    await eventually(() => peakOf('west')).toBeLessThan(bare);
    expect(await peakOf('south')).toBe(south);
    await west().getByRole('button', { name: 'Remove the fence' }).click();
    await eventually(() => peakOf('west')).toBe(bare);
    expect(await stage.site.field('walls.3.obstructions.0').count()).toBe(0);
    expect(await stage.site.page.evaluate(() => document.activeElement?.id)).toBe('field-walls-3-obstructions');
  });

  test.each(['Metric', 'US'])('whatever is added is complete and clear of a large box, in %s units', async (units) => {
    await stage.site.remember({
      ...DEMO_SITE,
      box: { ...DEMO_SITE.box, widthM: 3, depthM: 2, standOffM: 1, heightM: 1 },
    });
    await stage.site.page.getByRole('radio', { name: units }).check();
    await stage.site.page.locator('#field-walls-3').click();
    await eventually(stage.site.ranked).toHaveLength(4);
    expect(await stage.site.page.locator('.problem-list').allTextContents()).toEqual([]);
    const bare = await stage.site.peaks();
    for (const noun of KINDS) {
      await add(noun);
      await eventually(stage.site.peaks).not.toEqual(bare);
      expect(await stage.site.page.locator('.problem-list').allTextContents()).toEqual([]);
      await west()
        .getByRole('button', { name: `Remove the ${noun}` })
        .click();
      await eventually(stage.site.peaks).toEqual(bare);
    }
  });

  test('a field that is emptied or wrong is marked, and the list of problems leads to it', async () => {
    const { page, field } = stage.site;
    await page.locator('#field-walls-3').click();
    await add('block');
    await field('walls.3.obstructions.0.widthM').fill('');
    await eventually(() => field('walls.3.obstructions.0.widthM').getAttribute('aria-invalid')).toBe('true');
    await field('walls.3.obstructions.0.widthM').fill('3');
    await field('walls.3.obstructions.0.outM').fill('0');
    await eventually(() => field('walls.3.obstructions.0.outM').getAttribute('aria-invalid')).toBe('true');
    await page.locator('.problem-list button').first().click();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('field-walls-3-obstructions-0-outM');
  });

  test('a thing of an unknown kind in a file can be told or taken away', async () => {
    const walls = DEMO_SITE.walls.map((wall, index) =>
      index === 3 ? { ...wall, obstructions: [{ kind: 'balloon' }] } : wall,
    );
    await stage.site.remember({ ...DEMO_SITE, walls });
    await stage.site.page.locator('.problem-list button').first().click();
    expect(await stage.site.field('walls.3.obstructions.0.kind').getAttribute('aria-invalid')).toBe('true');
    await west().getByRole('button', { name: 'Remove the unknown thing' }).click();
    await eventually(stage.site.ranked).toHaveLength(4);
  });

  test('months in leaf are kept', async () => {
    await stage.site.page.locator('#field-walls-3').click();
    await add('tree');
    await stage.site.field('walls.3.obstructions.0.leafOnMonths.0').selectOption('May');
    await eventually(stage.site.kept).toContain('[5,10]');
    await stage.site.page.reload();
    await stage.site.page.locator('#field-walls-3').click();
    expect(await stage.site.field('walls.3.obstructions.0.leafOnMonths.0').inputValue()).toBe('5');
    expect(await stage.site.field('walls.3.obstructions.0.leafOnMonths.1').inputValue()).toBe('10');
    await eventually(stage.site.ranked).toHaveLength(4);
  });

  test('everything fits a phone and passes the accessibility check', { timeout: 180_000 }, async () => {
    await stage.site.close();
    stage.site = await openSitePage(stage.browser, stage.server.address, PHONE);
    const { page } = stage.site;
    await page.locator('#field-walls').click();
    await page.locator('#field-walls-3').click();
    for (const noun of KINDS) await add(noun);
    await page.locator('#field-box').click();
    await page.getByLabel('A hood shades the box').check();
    await stage.site.field('box.hood.faces').waitFor();
    await west().getByRole('button', { name: 'Remove the tree' }).waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
    expect(await lowTargets(west().getByRole('button'))).toEqual([]);
    mkdirSync(join(ROOT, '.test-output'), { recursive: true });
    await page.screenshot({ path: join(ROOT, '.test-output/site-shade-360.png'), fullPage: true });
    expect(await axeFindings(page, { include: ['.site-entry'] })).toEqual([]);
  });
});

describe('a box on a post', () => {
  test('stands as far from the wall as entered, and has other peaks', async () => {
    const { page, field, peaks } = stage.site;
    const onWall = await peaks();
    const gap = await field('box.standOffM').inputValue();
    expect(await field('box.postDistanceM').count()).toBe(0);
    await page.getByLabel('On a post of its own').check();
    await eventually(peaks).not.toEqual(onWall);
    expect(await field('box.standOffM').count()).toBe(0);
    await stage.site.fillAndSee('box.postDistanceM', '1');

    const onPost = await peaks();
    await page.reload();
    await eventually(peaks).toEqual(onPost);
    expect(await page.getByLabel('On a post of its own').isChecked()).toBe(true);
    expect(await field('box.postDistanceM').inputValue()).toBe('1');
    await page.getByLabel('On the wall, flat').check();
    await eventually(peaks).toEqual(onWall);
    expect(await field('box.standOffM').inputValue()).toBe(gap);
  });

  test('has a back for its hood, which a box on a wall has not', async () => {
    const { page, field, peaks } = stage.site;
    let before = await peaks();
    /** What was just done has reached the peaks. */
    const told = async () => {
      await eventually(peaks).not.toEqual(before);
      before = await peaks();
    };
    await page.getByLabel('A hood shades the box').check();
    await told();
    const back = field('box.hood.faces').getByLabel('back');
    expect(await back.count()).toBe(0);
    await page.getByLabel('On a post of its own').check();
    await told();
    await back.check();
    await told();

    await page.getByLabel('On the wall, flat').check();
    await field('box.hood.faces').getByText('the back of a box on a post only').waitFor();
    await page.locator('.problem-list button').first().click();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('field-box-hood-faces');
    // It goes as it is unticked.
    await back.click();
    await page.locator('.problem-list').waitFor({ state: 'detached' });
    expect(await back.count()).toBe(0);
  });
});

test('a slatted eave lets sun onto its wall and no other', async () => {
  const [south, west] = await Promise.all(['south', 'west'].map(peakOf));
  await stage.site.page.locator('#field-walls-2').click();
  await stage.site.field('walls.2.eave.transmittance').fill('0.5');
  await eventually(() => peakOf('south')).toBeGreaterThan(south ?? Number.NaN);
  expect(await peakOf('west')).toBe(west);
  await stage.site.field('walls.2.eave.transmittance').fill('1.5');
  await eventually(() => stage.site.field('walls.2.eave.transmittance').getAttribute('aria-invalid')).toBe('true');
});

describe('a hood', () => {
  test('lowers the peaks, and keeps what is entered about it', async () => {
    const { page, field } = stage.site;
    const bare = await Promise.all(['east', 'west'].map(peakOf));
    await page.getByLabel('A hood shades the box').check();
    await eventually(() => peakOf('west')).toBeLessThan(bare[1] ?? 0);
    expect(await peakOf('east')).toBeLessThan(bare[0] ?? 0);
    expect(await page.getByLabel('Air can leave at the top').isChecked()).toBe(true);

    const open = await stage.site.peaks();
    await page.getByLabel('Air can leave at the top').uncheck();
    await eventually(stage.site.peaks).not.toEqual(open);

    const faces = field('box.hood.faces');
    for (const face of ['front', 'left', 'right', 'top']) await faces.getByLabel(face).uncheck();
    await faces.getByText('at least one face').waitFor();
    await faces.getByLabel('front').check();
    await page.locator('.problem-list').waitFor({ state: 'detached' });

    await page.getByLabel('A hood shades the box').uncheck();
    await eventually(() => peakOf('west')).toBe(bare[1]);
  });
});
