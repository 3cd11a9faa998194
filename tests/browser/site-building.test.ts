import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeEach, describe, expect, test } from 'vitest';
import { DEMO_SITE } from '../../model/index.ts';
import { eachSitePage } from './each-site-page.ts';
import { axeFindings, lowTargets } from './page-checks.ts';
import { eventually, openSitePage, PHONE } from './site-page.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
/** The demo site without its building. */
const BARE = { ...DEMO_SITE, building: null };
const KNOWN = "I know the building's outline";

const stage = eachSitePage();

const invalid = (path: string) => stage.site.field(path).getAttribute('aria-invalid');
const corner = (number: number) => stage.site.field(`building.outlineM.${number}`);
const problems = () => stage.site.page.locator('.problem-list').allTextContents();
const inside = (text: string) => stage.site.page.locator('.section').getByText(text);

/** The stored site, as a reload would find it. */
async function stored() {
  return JSON.parse(await stage.site.kept()) as {
    building?: { outlineM: number[][] };
    walls: { edge?: number; alongM?: number }[];
  };
}

/** Enters a rectangle, in metres. */
async function enterBuilding() {
  await stage.site.page.getByRole('radio', { name: 'Metric' }).check();
  await stage.site.page.getByLabel(KNOWN).check();
  await stage.site.page.locator('#rectangle-lengthM').waitFor();
}

describe('the outline of the building', () => {
  beforeEach(async () => {
    await stage.site.remember(BARE);
    await enterBuilding();
  });

  test('starts as a rectangle that faces the ways of the walls', async () => {
    const { page } = stage.site;
    expect(await page.locator('#rectangle-bearingDeg').inputValue()).toBe('8');
    expect(await page.locator('#rectangle-lengthM').inputValue()).toBe('12');
    expect(await page.locator('#rectangle-widthM').inputValue()).toBe('8');
    await inside('Edge 2, from here to corner 3, faces S, 188°, 12.0 m long.').waitFor();
    expect(await page.getByRole('button', { name: /^Remove corner/ }).count()).toBe(4);
    await page.locator('#field-walls-2').click();
    await inside('Taken: edge 2, faces S, 188°, 12.0 m long.').waitFor();
    await eventually(stage.site.ranked).toHaveLength(4);
    expect(await problems()).toEqual([]);
  });

  test('its length, width and bearing write the corners', async () => {
    const { page, field } = stage.site;
    await page.locator('#rectangle-bearingDeg').fill('N');
    await page.locator('#rectangle-lengthM').fill('14');
    await page.locator('#rectangle-widthM').fill('7,5');
    await eventually(async () => (await stored()).building?.outlineM).toEqual([
      [0, 0],
      [14, 0],
      [14, -7.5],
      [0, -7.5],
    ]);
    await page.locator('#rectangle-widthM').fill('7 ft');
    await inside('no length: a number above 0, in m').waitFor();
    await field('building.heightM').focus();
    expect(await page.locator('#rectangle-widthM').inputValue()).toBe('7.5');
    await page.getByRole('radio', { name: 'US' }).check();
    expect(await page.locator('#rectangle-lengthM').inputValue()).toBe('45.93');
    await page.locator('#rectangle-lengthM').fill('40');
    await eventually(async () => (await stored()).building?.outlineM[1]).toEqual([12.192, 0]);
  });

  test('a wall that no edge faces any more is marked and listed, until its corner is put back', async () => {
    const { page, field } = stage.site;
    const north = field('building.outlineM.1.1');
    const before = await north.inputValue();
    await north.fill('5');
    await eventually(() => invalid('walls.0.azimuthDeg')).toBe('true');
    const [list] = await problems();
    expect(list).toContain("no edge of the building's outline faces that way");
    expect(list).toContain('edge 2 faces 188 deg');
    await page.locator('.problem-list').getByRole('button', { name: 'wall north' }).first().click();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('field-walls-0-azimuthDeg');
    await north.fill(before);
    await eventually(problems).toEqual([]);
    expect(await stage.site.ranked()).toHaveLength(4);
  });

  test('an emptied corner, and an outline that crosses itself, are marked and reached from the list', async () => {
    const { page, field } = stage.site;
    await field('building.outlineM.2.0').fill('');
    await eventually(() => invalid('building.outlineM.2.0')).toBe('true');
    await page.getByRole('button', { name: 'corner 2 of the building, east' }).click();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('field-building-outlineM-2-0');
    // South of the wall that it should lie north of.
    await page.keyboard.type('-30');
    await field('building.outlineM.2.1').fill('-4');
    await field('building.outlineM').getByText('the outline crosses itself').waitFor();
    await page.getByRole('button', { name: 'outline of the building' }).click();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('field-building-outlineM');
    await page.getByRole('button', { name: 'Make the building a rectangle again' }).click();
    await eventually(problems).toEqual([]);
  });

  test('corners come and go, never fewer than three, and a removal can be undone', async () => {
    const { page } = stage.site;
    const remove = (number: number) => page.getByRole('button', { name: `Remove corner ${number}` });
    await page.getByRole('button', { name: 'Add a corner after 3' }).click();
    await stage.site.pressUntil('Tab', '#field-building-outlineM-4-0');
    expect(await problems()).toEqual([]);
    await remove(4).click();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('field-building-outlineM');
    await remove(3).click();
    expect(await corner(2).count()).toBe(1);
    expect(await page.getByRole('button', { name: /^Remove corner/ }).count()).toBe(0);
    await page.getByText('Corner 3 was removed.').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await eventually(async () => (await stored()).building?.outlineM.length).toBe(4);
    await eventually(problems).toEqual([]);
  });
});

describe('a wall of the building', () => {
  test('a wing shades the wall in its corner; the edge is chosen, kept, and goes with the building', async () => {
    const { page, field, peaks } = stage.site;
    const before = await peaks();
    // An L whose wing stands out to the north, west of the corner: edge 4 faces east in front of edge 5, which faces north.
    const outlineM = [
      [0, 0],
      [0, 12],
      [4, 12],
      [4, 4],
      [12, 4],
      [12, 0],
    ];
    const walls = DEMO_SITE.walls.map((wall, index) => ({ ...wall, azimuthDeg: 90 * index }));
    await stage.site.remember({ ...DEMO_SITE, walls, building: { outlineM, heightM: 6 } });
    await eventually(stage.site.ranked).toHaveLength(4);
    expect(await peaks()).not.toEqual(before);
    await page.locator('#field-walls-1').click();
    await inside('Taken: edge 2').waitFor();

    // Whole degrees Fahrenheit would hide what the wing takes off.
    const usual = await peaks();
    await page.getByRole('radio', { name: 'Metric' }).check();
    await eventually(peaks).not.toEqual(usual);
    const free = await peaks();
    await field('walls.1.edge').selectOption({ label: 'edge 4, faces E, 90°, 4.0 m long' });
    await eventually(peaks).not.toEqual(free);
    await page.getByRole('radio', { name: 'US' }).check();
    await stage.site.fillAndSee('walls.1.alongM', '3', async () => [String((await stored()).walls[1]?.alongM)]);
    await field('walls.1.alongM').fill('13');
    await eventually(() => invalid('walls.1.alongM')).toBe('true');
    expect((await problems())[0]).toContain('the box reaches past this edge');
    await field('walls.1.alongM').fill('3');
    await eventually(problems).toEqual([]);

    await field('walls.1.edge').selectOption({ index: 2 });
    await eventually(() => invalid('walls.1.edge')).toBe('true');
    await page.locator('.problem-list').getByRole('button', { name: 'wall east, edge' }).click();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('field-walls-1-edge');
    await field('walls.1.edge').selectOption('4');
    await eventually(problems).toEqual([]);

    await page.getByRole('button', { name: 'Add a corner after 0' }).click();
    expect(await field('walls.1.edge').inputValue()).toBe('5');
    await page.getByRole('button', { name: 'Remove corner 1', exact: true }).click();
    expect(await field('walls.1.edge').inputValue()).toBe('4');

    await page.reload();
    await eventually(stage.site.ranked).toHaveLength(4);
    expect(await field('walls.1.edge').inputValue()).toBe('4');
    expect(await field('walls.1.alongM').inputValue()).toBe('3');
    expect(await page.getByLabel(KNOWN).isChecked()).toBe(true);

    await page.getByLabel(KNOWN).uncheck();
    await page.getByText('The building was taken out.').waitFor();
    await eventually(async () => (await stored()).walls.some((wall) => 'edge' in wall || 'alongM' in wall)).toBe(false);
    expect(await field('walls.1.edge').count()).toBe(0);
    await eventually(() => page.locator('.badge-stale').count()).toBe(0);
    expect(await problems()).toEqual([]);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await field('walls.1.edge').inputValue()).toBe('4');
  });

  test('an edge without a building, as a file may have it, is in sight', async () => {
    const walls = DEMO_SITE.walls.map((wall, index) => (index === 1 ? { ...wall, edge: 3 } : { ...wall, edge: null }));
    await stage.site.remember({ ...BARE, walls });
    await stage.site.page.locator('.problem-list button').first().click();
    expect(await stage.site.page.evaluate(() => document.activeElement?.id)).toBe('field-walls-1-edge');
    await stage.site.field('walls.1.edge').selectOption('');
    await eventually(stage.site.ranked).toHaveLength(4);
  });
});

test('the building fits a phone and passes the accessibility check', { timeout: 180_000 }, async () => {
  await stage.site.close();
  stage.site = await openSitePage(stage.browser, stage.server.address, PHONE);
  const { page, field } = stage.site;
  await stage.site.remember(BARE);
  await page.locator('#field-building').click();
  await enterBuilding();
  await page.getByRole('button', { name: 'Add a corner after 1' }).click();
  await page.locator('#field-walls').click();
  await page.locator('#field-walls-2').click();
  await field('walls.2.edge').waitFor();
  await page.locator('#field-box').click();
  await page.getByLabel('On a post of its own').check();
  await page.getByLabel('A hood shades the box').check();
  await field('box.hood.faces').waitFor();
  await field('building.outlineM.0.0').fill('');
  await eventually(() => invalid('building.outlineM.0.0')).toBe('true');
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
  const targets = page.locator('.site-entry').locator('button, select, input[type=text], label.choice');
  expect(await lowTargets(targets)).toEqual([]);
  mkdirSync(join(ROOT, '.test-output'), { recursive: true });
  await page.screenshot({ path: join(ROOT, '.test-output/site-building-360.png'), fullPage: true });
  expect(await axeFindings(page, { include: ['.site-entry'] })).toEqual([]);
});
