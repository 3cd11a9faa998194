import { describe, expect, test } from 'vitest';
import { DEMO_SITE } from '../../model/index.ts';
import { eachSitePage } from './each-site-page.ts';
import { eventually } from './site-page.ts';

const stage = eachSitePage();

describe('typing', () => {
  test('more power makes every wall hotter and turns the verdict', async () => {
    await stage.site.fillAndSee('box.powerW', '60');
    await eventually(stage.site.verdict).toMatch(/^No permitted wall stays within/);
  });

  test('a longer permitted electrode run and a small eave change the ranking', async () => {
    await stage.site.field('constraints.maxElectrodeDistanceM').fill('100');
    await stage.site.page.locator('#field-walls-2').click();
    await stage.site.field('walls.2.eave.depthM').fill('0.3');
    await eventually(async () => (await stage.site.ranked())[0]).toBe('north');
  });

  test('a unit is read, and its library fetched only then', async () => {
    const holdsUnits = (path: string) => path.endsWith('.js') && stage.server.file(path).includes('electronvolt');
    await stage.site.page.locator('.day-chart canvas').waitFor();
    expect(stage.server.fetched().filter(holdsUnits)).toEqual([]);
    await stage.site.fillAndSee('box.widthM', '24 in');
    expect(stage.server.fetched().filter(holdsUnits)).toHaveLength(1);
    expect(await stage.site.page.locator('.field-problem').count()).toBe(0);
  });

  test('a plain number is in the unit on show, and switching units leaves the stage.site alone', async () => {
    const { page, field } = stage.site;
    const before = await stage.site.peaks();
    expect(await field('box.widthM').inputValue()).toBe('11.02');
    await page.getByRole('radio', { name: 'Metric' }).check();
    expect(await field('box.widthM').inputValue()).toBe('280');
    await eventually(stage.site.verdict).toContain('°C');
    await page.getByRole('radio', { name: 'US' }).check();
    await eventually(stage.site.peaks).toEqual(before);
    await field('box.widthM').fill('12');
    await page.getByRole('radio', { name: 'Metric' }).check();
    expect(await field('box.widthM').inputValue()).toBe('304.8');
  });

  test('a bad latitude is marked, listed and linked; the last good result stays, marked', async () => {
    const { page } = stage.site;
    const latitude = stage.site.field('place.latitudeDeg');
    const good = await stage.site.verdict();
    await latitude.fill('95');
    await page.locator('.problem-list').waitFor();
    expect(await latitude.getAttribute('aria-invalid')).toBe('true');
    const described = (await latitude.getAttribute('aria-describedby')) ?? '';
    expect(await page.locator(`#${described.split(' ')[0]}`).textContent()).toContain('95° is above 90°');
    // How sure it is comes and goes beside it.
    expect(await stage.site.verdict()).toContain(good.split('. ')[0]);
    expect(await page.locator('.badge-stale').textContent()).toMatch(/^Out of date/);
    await page.locator('.problem-list').getByRole('button', { name: 'latitude' }).click();
    await stage.site.pressUntil('Tab', '#field-place-latitudeDeg');
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('33.2');
    await page.locator('.problem-list').waitFor({ state: 'detached' });
    expect(await page.locator('.badge-stale').count()).toBe(0);
  });

  test('markup in names stays text', async () => {
    const markup = '<img src=x onerror="document.title=\'owned\'">';
    await stage.site.field('title').fill(markup);
    await stage.site.page.locator('#field-walls-2').click();
    await stage.site.field('walls.2.name').fill(markup);
    await eventually(stage.site.verdict).toContain('<img');
    expect(await stage.site.page.locator('main img').count()).toBe(0);
    expect(await stage.site.page.title()).not.toBe('owned');
  });

  test('walls come and go', async () => {
    const { page } = stage.site;
    await page.getByRole('button', { name: 'Add a wall' }).click();
    await page.locator('.problem-list').waitFor();
    await stage.site.pressUntil('Tab', '#field-walls-4-azimuthDeg');
    await page.keyboard.type('E');
    await eventually(stage.site.ranked).toContain('wall 5');
    await page.getByRole('button', { name: 'Remove wall 5' }).click();
    await eventually(stage.site.ranked).not.toContain('wall 5');
    await page.getByRole('button', { name: 'Undo' }).click();
    await eventually(stage.site.ranked).toContain('wall 5');
  });

  test('a long computation can be stopped, asked for again, and overtaken by a newer input', async () => {
    const { page } = stage.site;
    // Requests reach the worker late, as if it computed for long.
    await page.evaluate(() => {
      const post = Worker.prototype.postMessage;
      Worker.prototype.postMessage = function (this: Worker, message: unknown) {
        setTimeout(() => post.call(this, message), 'hurry' in window ? 0 : 5000);
      };
    });
    await stage.site.field('box.powerW').fill('19');
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByRole('button', { name: 'Compute again' }).click();
    await page.getByRole('button', { name: 'Stop' }).waitFor();
    await page.evaluate(() => Object.assign(window, { hurry: true }));
    await stage.site.field('box.powerW').fill('14.5');
    await eventually(stage.site.ranked).toHaveLength(4);
    await page.getByRole('button', { name: 'Stop' }).waitFor({ state: 'detached' });
  });
});

describe('keeping the site', () => {
  test('a reload loses nothing; the demo can be had back, and that undone', async () => {
    const { page, field } = stage.site;
    await stage.site.fillAndSee('box.powerW', '21');
    await page.reload();
    await page.locator('.wall-card').first().waitFor();
    expect(await field('box.powerW').inputValue()).toBe('21');
    await page.getByRole('button', { name: 'Back to the demo site' }).click();
    expect(await field('box.powerW').inputValue()).toBe('14');
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await field('box.powerW').inputValue()).toBe('21');
  });

  test('memory that holds no stage.site does no harm', async () => {
    const { page } = stage.site;
    for (const text of ['{"box":', '[]', '"site"', '{"walls":7,"box":null}']) {
      await page.evaluate((stored) => localStorage.setItem('shadeside.site', stored), text);
      await page.reload();
      await page.getByRole('button', { name: 'Back to the demo site' }).click();
      await eventually(stage.site.ranked).toHaveLength(4);
    }
  });

  test('a saved file opens again, and a file that is no stage.site is refused', async () => {
    const { page, field } = stage.site;
    await stage.site.fillAndSee('box.powerW', '17');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as a file' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('homestead-in-the-dry-basin-invented.json');
    await page.getByRole('button', { name: 'Back to the demo site' }).click();
    await page.getByLabel('Open a file').setInputFiles(await download.path());
    await eventually(() => field('box.powerW').inputValue()).toBe('17');
    await page
      .getByLabel('Open a file')
      .setInputFiles({ name: 'notes.json', mimeType: 'application/json', buffer: Buffer.from('[1, 2]') });
    await page.getByText('notes.json was not opened').waitFor();
    expect(await field('box.powerW').inputValue()).toBe('17');
  });

  test('a field that the form does not know can be taken out of an opened file', async () => {
    const { page } = stage.site;
    await stage.site.remember({ ...DEMO_SITE, colour: 'white' });
    await page.getByText('unknown field').waitFor();
    await page.getByRole('button', { name: 'Take it out' }).click();
    await eventually(stage.site.ranked).toHaveLength(4);
  });
});
