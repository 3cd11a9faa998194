/** The way of a person at the wall through the steps of the form, on a phone and at a desk. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { eachSitePage } from './each-site-page.ts';
import { axeFindings } from './page-checks.ts';
import { DESK, eventually, openSitePage, PHONE } from './site-page.ts';

const stage = eachSitePage();

type Hold = (headingDeg: number, elevationDeg: number) => Promise<void>;

/**
 * Gives a page the orientation sensor of a device. It is then held with its upper edge towards a bearing, clockwise from
 * magnetic north, and an elevation: Rz(-heading) Rx(elevation) as a quaternion. The browser tells of changes only.
 */
async function deviceOf(page: Page): Promise<Hold> {
  const devtools = await page.context().newCDPSession(page);
  const type = 'absolute-orientation';
  await devtools.send('Emulation.setSensorOverrideEnabled', { enabled: true, type, metadata: { available: true } });
  return async (headingDeg, elevationDeg) => {
    const [turn, tilt] = [-headingDeg, elevationDeg].map((deg) => (deg * Math.PI) / 360) as [number, number];
    const quaternion = {
      x: Math.cos(turn) * Math.sin(tilt),
      y: Math.sin(turn) * Math.sin(tilt),
      z: Math.sin(turn) * Math.cos(tilt),
      w: Math.cos(turn) * Math.cos(tilt),
    };
    await devtools.send('Emulation.setSensorOverrideReadings', { type, reading: { quaternion } });
  };
}

const MARKUP = '<img src=x onerror="window.hit=1">';

test.each([PHONE, DESK])(
  'step by step at $width px: the place of the device, one bearing, an eave by its picture, a usual box, the verdict',
  {
    timeout: 120_000,
  },
  async (viewport) => {
    await stage.site.close();
    stage.site = await openSitePage(stage.browser, stage.server.address, viewport);
    const { page } = stage.site;
    await page.context().grantPermissions(['geolocation', 'accelerometer', 'gyroscope', 'magnetometer']);
    await page.context().setGeolocation({ latitude: 31.5, longitude: -110.25, accuracy: 12 });
    const hold = await deviceOf(page);
    const next = (name: string) => page.getByRole('button', { name, exact: true });
    const grave = () => axeFindings(page, { include: ['.site-entry'] });

    // The verdict stands there before anything is entered, and stays in sight.
    expect(await stage.site.verdict()).toContain('south');
    await page.getByRole('button', { name: 'Use the place of this device' }).click();
    await page.getByText(/^Found, to within/).waitFor();
    await eventually(() => stage.site.field('place.latitudeDeg').inputValue()).toBe('31.5');

    await next('Next: Climate').click();
    await eventually(() => page.evaluate(() => document.activeElement?.id)).toBe('field-climate');
    // A narrow page folds the step that is done; a wide one has room.
    expect(await stage.site.field('place.latitudeDeg').isVisible()).toBe(viewport === DESK);
    await next('Next: Building').click();
    await page.getByText('Take it with a compass or by the sun').first().click();
    const magnetic = page.getByLabel('bearing on a magnetic compass').first();
    await eventually(() => magnetic.isEnabled()).toBe(true);
    await magnetic.fill('80');
    // The World Magnetic Model has some 8 degrees east there.
    await page
      .getByText(/magnetic 80.*declination.*\+?[78]\.\d.*true 8[78]/i)
      .first()
      .waitFor();
    if (viewport === DESK) {
      // Without a place there is no declination, and that of the place before is none.
      await stage.site.field('place.latitudeDeg').fill('');
      await page.getByText('Enter latitude and longitude first').first().waitFor();
      await stage.site.field('place.latitudeDeg').fill('31.5');
      await page
        .getByText(/magnetic 80.*declination/i)
        .first()
        .waitFor();
    }
    if (viewport === PHONE) {
      await page.getByRole('button', { name: 'Read the device’s compass' }).first().click();
      await hold(90, 0);
      await page.getByText('90° E magnetic').waitFor();
      await page.getByRole('button', { name: 'Take this bearing' }).click();
      expect(await magnetic.inputValue()).toBe('90');
      const [, trueDeg] = /magnetic 90°, declination \+[78]\.\d°, true (9[78]\.?\d?)°/.exec(
        (await page.locator('.conversion').first().textContent()) ?? '',
      ) ?? ['', 'none'];
      expect(await page.locator('#rectangle-bearingDeg').inputValue()).toBe(trueDeg);
    }

    await next('Next: Walls').click();
    await page.locator('#field-walls-3').click();
    const west = page.locator('.wall-editor').nth(3);
    const before = await stage.site.peaks();
    await west.getByRole('button', { name: 'Add an eave' }).click();
    await eventually(() => page.evaluate(() => document.activeElement?.id)).toBe('field-walls-3-eave-depthM');
    await eventually(stage.site.peaks).not.toEqual(before);
    expect(await west.getByRole('button', { name: 'Add an eave' }).count()).toBe(0);
    if (viewport === PHONE) {
      // The same device sights a point of the skyline, by the true bearing as well.
      await west.getByRole('button', { name: 'Sight a point with the device' }).click();
      let trembling = 0;
      await eventually(async () => {
        // The page leaves out what follows too fast; a hand never holds still, so that more comes.
        trembling = 0.3 - trembling;
        await hold(90, 25 + trembling);
        return west.locator('.reading').textContent();
      }).toMatch(/^25° high, bearing 9[78]\.?\d?° E$/);
      await west.getByRole('button', { name: 'Take this point' }).click();
      await west.getByText(/^Point added\. magnetic 90°, declination \+[78]\.\d°, true 9[78]/).waitFor();
      await eventually(() => stage.site.field('walls.3.horizon.0.1').inputValue()).toBe('25');
      expect(await stage.site.field('walls.3.horizon.0.0').inputValue()).toMatch(/^9[78](\.\d)?$/);
    }
    expect(await grave()).toEqual([]);

    await next('Next: Box').click();
    const box = page.locator('.box-class').last();
    await box.click();
    await eventually(() => box.getAttribute('aria-pressed')).toBe('true');
    await next('Next: Limits').click();
    await next('Next: What the wall must allow').click();
    await next('Next: Ground').click();
    await next('To the verdict').click();
    await eventually(() =>
      page.evaluate(() => {
        const { top, bottom } = document.querySelector('.verdict-sentence')?.getBoundingClientRect() ?? new DOMRect();
        return bottom > 0 && top < innerHeight;
      }),
    ).toBe(true);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
  },
);

test('text that looks like markup stays text, wherever it is typed', async () => {
  const { page } = stage.site;
  await page.evaluate(() => {
    for (const details of document.querySelectorAll<HTMLDetailsElement>('.site-entry details')) details.open = true;
  });
  const typed = await page.evaluate((markup) => {
    const fields = [...document.querySelectorAll<HTMLInputElement>('.site-entry input')].filter(
      ({ type, disabled, offsetParent }) => type === 'text' && !disabled && offsetParent !== null,
    );
    for (const field of fields) {
      field.value = markup;
      field.dispatchEvent(new InputEvent('input', { bubbles: true }));
      field.dispatchEvent(new Event('change', { bubbles: true }));
    }
    return fields.length;
  }, MARKUP);
  expect(typed).toBeGreaterThan(30);
  await eventually(() => page.locator('.problem-list').textContent()).toContain('img');
  expect(await page.locator('img[src="x"]').count()).toBe(0);
  expect(await page.evaluate(() => 'hit' in window)).toBe(false);
});
