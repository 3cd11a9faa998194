import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { DEMO_SITE } from '../../model/index.ts';
import { eachSitePage } from './each-site-page.ts';
import { axeFindings } from './page-checks.ts';
import { DESK, eventually, openSitePage, PHONE } from './site-page.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

const stage = eachSitePage();

const invalid = (path: string) => stage.site.field(path).getAttribute('aria-invalid');
const focused = () => stage.site.page.evaluate(() => document.activeElement?.id);
const problems = () => stage.site.page.locator('.problem-list').allTextContents();

/** Opens a group of the form's fields by its heading. */
const unfold = (title: string) => stage.site.page.locator('.more > summary', { hasText: title }).first().click();

/** Peak as a number, by the name of the wall. */
async function peakOf(wall: string): Promise<number> {
  const [names, peaks] = await Promise.all([stage.site.ranked(), stage.site.peaks()]);
  return Number.parseFloat(peaks[names.indexOf(wall)] ?? '');
}

/** Does something and waits until the peaks have followed. */
async function andSee(act: () => Promise<unknown>) {
  const before = await stage.site.peaks();
  await act();
  await eventually(stage.site.peaks).not.toEqual(before);
}

describe('the finish', () => {
  test('takes the place of the entered figures, says what it gives, and can be undone', async () => {
    const { page, field } = stage.site;
    const grey = await peakOf('west');
    await unfold('Finish');
    expect(await field('box.solarAbsorptance').inputValue()).toBe('0.5');
    await andSee(() => field('box.finish').selectOption({ label: 'white paint or white plastic' }));
    expect(await peakOf('west')).toBeLessThan(grey);
    expect(await field('box.solarAbsorptance').inputValue()).toBe('');
    expect(await field('box.solarAbsorptance').getAttribute('placeholder')).toBe('0.35');
    await page.getByText('Absorbs 0.2 of the sun new, 0.35 weathered.').waitFor();
    await page.locator('.site-entry').getByText('Source: ').waitFor();

    await andSee(() => field('box.finishState').selectOption('new'));
    expect(await field('box.solarAbsorptance').getAttribute('placeholder')).toBe('0.2');
    await andSee(() => field('box.solarAbsorptance').fill('0.95'));
    expect(await peakOf('west')).toBeGreaterThan(grey);
    await andSee(() => field('box.finish').selectOption('bareAluminium'));
    expect(await field('box.emittance').getAttribute('placeholder')).toBe('0.08');
    await page.getByText('Absorptance and emittance now come from the finish.').waitFor();
    await andSee(() => page.getByRole('button', { name: 'Undo' }).click());
    expect(await field('box.finish').inputValue()).toBe('whitePaint');
    expect(await field('box.solarAbsorptance').inputValue()).toBe('0.95');
  });

  test('of a word that a file made up is marked and reached from the list', async () => {
    const box = { ...DEMO_SITE.box, finish: 'whitePant', finishState: 'old', material: 'wood', duty: 'always' };
    await stage.site.remember({ ...DEMO_SITE, box });
    for (const [subject, key] of [
      ['finish', 'finish'],
      ['finish state', 'finishState'],
      ['outer skin', 'material'],
      ['heat through the day', 'duty'],
    ] as const) {
      await stage.site.page.locator('.problem-list').getByRole('button', { name: subject, exact: true }).click();
      expect(await focused()).toBe(`field-box-${key}`);
      expect(await invalid(`box.${key}`)).toBe('true');
    }
    await stage.site.field('box.finish').selectOption('whitePaint');
    await stage.site.field('box.finishState').selectOption('weathered');
    await stage.site.field('box.material').selectOption('plastic');
    await stage.site.field('box.duty').selectOption('dayAndNight');
    await eventually(problems).toEqual([]);
  });
});

describe('what is in the box', () => {
  test('vents lower the peak of the west wall, and closing them brings it back', async () => {
    const { page, field } = stage.site;
    const closed = await peakOf('west');
    await unfold('Vents');
    const vents = page.getByLabel('The box has openings, low and high');
    await andSee(() => vents.check());
    expect(await peakOf('west')).toBeLessThan(closed);
    await page.locator('.site-entry').getByText('Openings let in dust, insects and water').waitFor();
    expect(await field('box.vents.lowAreaM2').inputValue()).toBe('6.2');
    // Four fifths of the height of the box.
    expect(await field('box.vents.heightM').getAttribute('placeholder')).toBe('10.71');
    await page.getByRole('radio', { name: 'Metric' }).check();
    expect(await field('box.vents.highAreaM2').inputValue()).toBe('40');

    await field('box.vents.heightM').fill('500');
    await eventually(() => invalid('box.vents.heightM')).toBe('true');
    await page.locator('.problem-list button').first().click();
    expect(await focused()).toBe('field-box-vents-heightM');
    await field('box.vents.heightM').fill('');
    await field('box.vents.highAreaM2').fill('');
    await eventually(() => invalid('box.vents.highAreaM2')).toBe('true');
    await vents.uncheck();
    await eventually(problems).toEqual([]);
    await page.getByRole('radio', { name: 'US' }).check();
    await eventually(() => peakOf('west')).toBe(closed);
  });

  test('a battery, two rooms and the clock change the peaks and are kept', async () => {
    const { page, field } = stage.site;
    await unfold('Inside');
    await andSee(() => field('box.duty').selectOption('chargingAfterOutage'));
    await page.getByLabel('A battery in the box').check();
    await andSee(() => field('box.battery.powerW').fill('3'));
    await andSee(() => page.getByLabel('Two rooms, one above the other').check());
    await page.getByText('a battery in the lower one.').waitFor();
    await andSee(() => field('box.compartments.lowerPowerW').fill('9'));
    await andSee(() => field('box.compartments.lowerShare').fill('0.6'));
    await page.getByText(/The air in the lower room reaches \d+.°F. The battery reaches \d+.°F/).waitFor();
    expect((await page.locator('.day .hours thead th').allTextContents()).slice(4, 6)).toEqual([
      'Lower room',
      'Battery',
    ]);

    await field('box.compartments.lowerPowerW').fill('20');
    await eventually(() => invalid('box.compartments.lowerPowerW')).toBe('true');
    await field('box.compartments.lowerPowerW').fill('9');
    await field('box.battery.massKg').fill('400 kg');
    await eventually(() => invalid('box.battery.massKg')).toBe('true');
    await page.locator('.problem-list button').first().click();
    expect(await focused()).toBe('field-box-battery-massKg');
    await field('box.battery.massKg').fill('4 kg');
    await eventually(problems).toEqual([]);
    const kept = await stage.site.peaks();
    await page.reload();
    await eventually(stage.site.peaks).toEqual(kept);
    expect(await field('box.compartments.lowerPowerW').inputValue()).toBe('9');
  });

  test('a part that is no part is marked where it is ticked', async () => {
    const parts = { vents: 'yes', battery: 7, compartments: [1] };
    const coldNight = 'cold';
    const climate = { ...DEMO_SITE.climate, coldNight };
    await stage.site.remember({ ...DEMO_SITE, climate, box: { ...DEMO_SITE.box, ...parts } });
    for (const path of ['box.vents', 'box.battery', 'box.compartments', 'climate.coldNight']) {
      await eventually(() => invalid(path)).toBe('true');
    }
    for (const button of await stage.site.page.locator('.problem-list .link-button').all()) {
      await button.click();
      expect(await focused()).toMatch(/^field-(box-(vents|battery|compartments)|climate-coldNight)$/);
    }
  });
});

describe('wind and cold', () => {
  test("the wind's direction and a wall's own share of it change the peaks", async () => {
    const { page, field } = stage.site;
    await andSee(() => field('climate.windFromDeg').fill('W'));
    await page.locator('#field-walls-3').click();
    await page.locator('#field-walls-3-item').getByText('More about this wall').click();
    const [south, west] = await Promise.all(['south', 'west'].map(peakOf));
    await andSee(() => field('walls.3.windShelter').fill('0'));
    expect(await peakOf('west')).toBeGreaterThan(west ?? Number.NaN);
    expect(await peakOf('south')).toBe(south);
    await field('walls.3.windShelter').fill('2');
    await eventually(() => invalid('walls.3.windShelter')).toBe('true');
    await field('walls.3.windShelter').fill('');
    await field('climate.windFromDeg').fill('uphill');
    await eventually(() => invalid('climate.windFromDeg')).toBe('true');
  });

  test('a cold night is kept when another kind of hot day is chosen, and its problems are marked', async () => {
    const { page, field } = stage.site;
    await page.getByRole('radio', { name: 'Metric' }).check();
    await field('climate.windFromDeg').fill('90');
    await page.getByLabel('I know the coldest night').check();
    await field('climate.coldNight.minC').fill('-22');
    await page.getByLabel('My own figures').check();
    expect(await field('climate.coldNight.minC').inputValue()).toBe('-22');
    expect(await field('climate.windFromDeg').inputValue()).toBe('90');
    await eventually(problems).toEqual([]);
    await field('climate.coldNight.dewPointC').fill('-5');
    await eventually(() => invalid('climate.coldNight.dewPointC')).toBe('true');
    await page.locator('.problem-list button').first().click();
    expect(await focused()).toBe('field-climate-coldNight-dewPointC');
    await field('climate.coldNight.dewPointC').fill('-30');
    await field('climate.coldNight.minC').fill('');
    await eventually(() => invalid('climate.coldNight.minC')).toBe('true');
  });
});

test.each([PHONE, DESK])(
  'the unfolded form fits $width px and is accessible',
  { timeout: 180_000 },
  async (viewport) => {
    await stage.site.close();
    stage.site = await openSitePage(stage.browser, stage.server.address, viewport);
    const { page } = stage.site;
    if (viewport === PHONE) for (const part of ['climate', 'box']) await page.locator(`#field-${part}`).click();
    for (const title of ['Finish', 'Inside', 'Vents']) await unfold(title);
    await stage.site.field('box.finish').selectOption('galvanisedSteel');
    await page.getByLabel('The box has openings, low and high').check();
    await page.getByLabel('A battery in the box').check();
    await page.getByLabel('Two rooms, one above the other').check();
    await page.getByLabel('I know the coldest night').check();
    await stage.site.field('climate.coldNight.minC').waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
    mkdirSync(join(ROOT, '.test-output'), { recursive: true });
    const path = join(ROOT, `.test-output/site-box-${viewport.width}.png`);
    await page.locator('.site-entry').screenshot({ path });
    expect(await axeFindings(page, { include: ['.site-entry'] })).toEqual([]);
  },
);
