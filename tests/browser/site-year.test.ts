/** A year of weather from a file: read, refused, reckoned, drawn, stopped. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { DEMO_SITE } from '../../model/index.ts';
import { epwLines, textOf } from '../model/climate/weather/invented-files.ts';
import { eachSitePage } from './each-site-page.ts';
import { axeFindings, lowTargets } from './page-checks.ts';
import { DESK, eventually, openSitePage, PHONE } from './site-page.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

const stage = eachSitePage();

/** An invented clear year near the demo site, 12 K hotter than that of the readers' tests, with a hole of two hours. */
const HOT_YEAR = epwLines({
  change(row, index) {
    row.airC = (Number(row.airC) + 12).toFixed(1);
    if (index === 4000 || index === 4001) row.airC = '99.9';
  },
});

const epw = (lines: readonly string[], name = 'invented-wells.epw') => ({
  name,
  mimeType: 'text/plain',
  buffer: Buffer.from(textOf(lines)),
});

const section = () => stage.site.page.locator('section.year');
const choose = (file: ReturnType<typeof epw>) => section().locator('input[type="file"]').setInputFiles(file);
const reckon = () => section().getByRole('button', { name: /^Compute the year/ });
const walls = () => section().locator('.year-walls');

/** Drops a file on the page as a person does. */
async function drop({ name, buffer }: ReturnType<typeof epw>) {
  const files = await stage.site.page.evaluateHandle(
    ([text, title]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([text], title));
      return transfer;
    },
    [buffer.toString(), name] as const,
  );
  await section().locator('.file-drop').dispatchEvent('drop', { dataTransfer: files });
}

async function draw(name: string, width: number) {
  const { page } = stage.site;
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
  expect(await lowTargets(section().locator('button, select, label.button'))).toEqual([]);
  mkdirSync(join(ROOT, '.test-output'), { recursive: true });
  await section().screenshot({ path: join(ROOT, `.test-output/site-year-${name}.png`) });
  expect(await axeFindings(page, { include: ['section.year'] })).toEqual([]);
}

test('a year from a file: refused, read, stopped, reckoned, drawn, out of date', { timeout: 240_000 }, async () => {
  await stage.site.close();
  stage.site = await openSitePage(stage.browser, stage.server.address, PHONE);
  const { page } = stage.site;
  const sent: string[] = [];
  page.on('request', (request) => {
    if (request.method() !== 'GET' || request.postData() !== null) sent.push(request.url());
  });
  await stage.site.remember({ ...DEMO_SITE, walls: DEMO_SITE.walls.filter(({ name }) => /south|west/.test(name)) });
  await page.getByRole('radio', { name: 'Metric' }).check();
  await section().waitFor();

  await reckon().click();
  await walls().waitFor({ timeout: 60_000 });
  expect(await section().textContent()).toMatch(/synthetic year 1 of the invented climate dry-basin/);
  await section().getByRole('button', { name: 'Take another invented year' }).click();
  await section().getByText('synthetic year 2 of the invented climate dry-basin').waitFor();

  const torn = HOT_YEAR.map((line, k) => (k === 4999 ? line.replace(/,60,[^,]*,[^,]*,/, ',60,?9,warm,') : line));
  await choose(epw(torn, 'torn.epw'));
  await section()
    .getByText(/torn\.epw cannot be used: line 5000: .*"warm" is not a number/)
    .waitFor();
  expect(await reckon().isDisabled()).toBe(true);

  await drop(epw(HOT_YEAR));
  const told = section().locator('.weather-told');
  await told.getByText('sums over the hour before the label', { exact: true }).waitFor();
  expect(await told.textContent()).toMatch(/30.min before the label.*0\.0 W\/m².*interpolated: 2 hours in 1 gap/);
  expect(await section().getByText('cannot be used').count()).toBe(0);
  expect(await section().textContent()).toContain('never leaves it');

  // The march is held back, so that there is time to stop it.
  await page.evaluate(() => {
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function (this: Worker, message: object) {
      if (!('weather' in message && 'site' in message) || 'hurry' in window) post.call(this, message);
    };
  });
  await reckon().click();
  await section().getByText('Wall 1 of 2').waitFor();
  await section().getByRole('button', { name: 'Cancel the year' }).click();
  await section().getByText('It was stopped.').waitFor();
  await page.evaluate(() => Object.assign(window, { hurry: true }));
  await reckon().click();
  await walls().waitFor({ timeout: 60_000 });

  await section().getByLabel('The year on wall', { exact: true }).selectOption('west');
  await section()
    .getByText(/The air inside the box is over the limit of 65\.0.°C for \d+.h, \d+.K·h in all: from \w+ to \w+/)
    .first()
    .waitFor();
  expect(await section().locator('.worst-days li').first().textContent()).toMatch(
    /^\d+ \w+ at 1[5-8]:00: \d\d\.\d.°C, \d+\.\d.K over the limit$/,
  );
  expect(await walls().locator('thead th').allTextContents()).toEqual(['What', 'south', 'west']);
  const ageing = walls()
    .getByRole('row', { name: /Ageing against the wall where it is slowest/ })
    .getByRole('cell');
  const factors = (await ageing.allTextContents()).map(Number.parseFloat);
  expect(Math.min(...factors)).toBe(1);
  expect(factors[1]).toBeGreaterThan(1.05);

  // What the map shows, the bars and the table say, too.
  const overLimit = Number.parseFloat(
    (await walls()
      .getByRole('row', { name: /^Over the limit/ })
      .getByRole('cell')
      .nth(1)
      .textContent()) ?? '',
  );
  expect(overLimit).toBeGreaterThan(20);
  const july = section().locator('.year-months tbody tr').nth(6);
  expect(await july.locator('.month-bar').count()).toBe(2);
  await section().getByText('The figures by month and hour of the day').click();
  const hours = section().getByRole('region', { name: 'Hours over the limit' }).locator('td');
  const sum = (await hours.allTextContents()).map((text) => Number(text.replace('<', ''))).reduce((a, b) => a + b, 0);
  expect(Math.abs(sum - overLimit)).toBeLessThan(0.15 * overLimit);
  expect(await section().locator('.year-map .frame').count()).toBe(2);
  const classes = await section()
    .locator('.year-map .margin')
    .evaluateAll((paths) => paths.map((path) => path.classList.value));
  expect(classes.some((name) => /margin-[0-3]$/.test(name))).toBe(true);
  expect(await section().locator('.margin-key li').count()).toBe(classes.length);
  expect(await section().getByRole('img').locator('desc').textContent()).toMatch(
    /over the limit of .*The hottest days: /,
  );
  await draw('360x740', PHONE.width);

  await page.setViewportSize(DESK);
  await eventually(() => section().locator('.year-map .frame').count()).toBe(1);
  await section()
    .locator('.year-map')
    .hover({ position: { x: 300, y: 100 } });
  await eventually(() => section().locator('.pointed').textContent()).toMatch(
    /^\d+ \w+, \d\d:00 to \d\d:00: .* limit$/,
  );
  await page.getByLabel('Theme').selectOption('Sunlight');
  await draw('1280x800', DESK.width);

  await page.getByRole('radio', { name: 'US' }).check();
  await eventually(() => walls().textContent()).toMatch(/°F·h/);
  expect(await walls().textContent()).not.toMatch(/\dK|\d.°C/);
  expect(await section().getByText('Out of date').count()).toBe(0);
  await page.evaluate(() => {
    for (const details of document.querySelectorAll<HTMLDetailsElement>('.site-entry details')) details.open = true;
  });
  await stage.site.fillAndSee('box.powerW', '20');
  await section().getByText('Out of date: of the site before the last change').waitFor();
  expect(sent).toEqual([]);
});
