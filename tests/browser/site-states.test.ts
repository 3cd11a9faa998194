/** The page in the states that other tests do not check for accessibility, walked through on a phone, by keyboard where it matters. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { eachSitePage } from './each-site-page.ts';
import { axeFindings } from './page-checks.ts';
import { eventually, openSitePage, PHONE } from './site-page.ts';

const stage = eachSitePage();
const OUTPUT = fileURLToPath(new URL('../../.test-output', import.meta.url));

/** What axe calls serious, contrasts below 7:1 among it, in some parts of the page. */
function grave(parts: readonly string[]): Promise<string[]> {
  return axeFindings(stage.site.page, { include: parts, glare: true });
}

const focused = () => stage.site.page.evaluate(() => document.activeElement?.id);
const theme = () => stage.site.page.evaluate(() => document.documentElement.dataset['theme']);

test('problems, no wall within the limit, no wall at all, glare, large text, no network', {
  timeout: 180_000,
}, async () => {
  await stage.site.close();
  stage.site = await openSitePage(stage.browser, stage.server.address, PHONE);
  const { page, field, verdict } = stage.site;
  await page.getByRole('radio', { name: 'Metric' }).check();

  // A cooler wall that is out, the next best one, and how far it holds once nobody types.
  await eventually(verdict).toMatch(/Next best: wall "east", \d\.\d\sK hotter/);
  await eventually(verdict).toMatch(/Wall "north" would be .* cooler, but is out/);
  await eventually(verdict).toMatch(/In (nearly all|all|\d+ of) ?\d* guesses of the inputs wall "south" stays inside/);

  // Nobody permitted the browser to tell the place: it says so, and the place can be typed.
  await page.getByRole('button', { name: 'Use the place of this device' }).click();
  await page.getByText('The browser was told not to give the location.').waitFor();
  await field('place.latitudeDeg').fill('95');
  await page.locator('.problem-list').waitFor();
  expect(await grave(['.verdict', '.problem-list', '.step:first-child'])).toEqual([]);
  await field('place.latitudeDeg').fill('33.2');
  await page.locator('.problem-list').waitFor({ state: 'detached' });

  // Past the limit everywhere: what suffices, and by keyboard to all that would help on that wall.
  await page.locator('.wall-head', { hasText: 'west' }).getByRole('radio').check();
  await page.locator('#field-limits').click();

  // Inside on the design day, past it in October: no green badge beside words that say otherwise.
  await field('limits.maxC').fill('64');
  await eventually(verdict).toMatch(/Mind the season: .* past the limit/);
  await eventually(() => page.locator('.badge-partly').textContent()).toBe('! Within limits on the design day only');
  expect(await page.locator('.verdict-line').textContent()).toMatch(
    /^! inside .* on south: within limits on the design day only$/,
  );
  expect(await page.locator('.badge-good').count()).toBe(0);
  expect(await grave(['.verdict'])).toEqual([]);

  await field('limits.maxC').fill('58');
  await eventually(verdict).toMatch(/What suffices on wall "south" with the least effort: .*inside the limit/);
  const way = page.getByRole('button', { name: 'All that would help' });
  await way.focus();
  await page.keyboard.press('Enter');
  await eventually(focused).toBe('remedies-heading');
  await page.getByRole('heading', { name: 'What would help on wall “south”' }).waitFor();
  await page.locator('.remedies').waitFor();
  await page.locator('.cold-night').waitFor();
  expect(await grave(['.verdict', '.advices'])).toEqual([]);

  await page.locator('#field-constraints').click();
  await field('constraints.maxElectrodeDistanceM').fill('0.5');
  await eventually(verdict).toMatch(/^No wall satisfies the constraints\. /);
  await eventually(verdict).toMatch(/another earth electrode or another cable entry is needed/);
  expect(await grave(['.verdict', '.ranking'])).toEqual([]);

  // Glare: wished for by the device, chosen, kept; the curves are drawn anew.
  const ink = () =>
    page.evaluate(() => (document.querySelector('.day-chart canvas') as HTMLCanvasElement).toDataURL().length);
  const drawn = await ink();
  expect(await theme()).toBe('light');
  await page.emulateMedia({ contrast: 'more', reducedMotion: 'reduce' });
  await eventually(theme).toBe('sunlight');
  await page.emulateMedia({ contrast: 'no-preference', reducedMotion: 'reduce' });
  await eventually(theme).toBe('light');
  await page.getByLabel('Theme').selectOption('Sunlight');
  await eventually(theme).toBe('sunlight');
  await eventually(ink).not.toBe(drawn);
  expect(
    await page.evaluate(
      () =>
        [...document.querySelectorAll('*')].filter((each) => {
          const { transitionDuration, animationName } = getComputedStyle(each);
          return animationName !== 'none' || transitionDuration.split(', ').some((time) => time !== '0s');
        }).length,
    ),
  ).toBe(0);
  await page.reload();
  await page.locator('.wall-card').first().waitFor();
  expect(await theme()).toBe('sunlight');
  mkdirSync(OUTPUT, { recursive: true });
  await page.screenshot({ path: join(OUTPUT, 'site-sunlight-360x740.png') });
  await page.locator('.details').screenshot({ path: join(OUTPUT, 'site-sunlight-details.png') });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
  expect(await grave(['body'])).toEqual([]);

  // Text of twice the size, and no network.
  await page.getByLabel('Theme').selectOption('Light');
  await page.context().setOffline(true);
  await page.getByText('You are offline.').waitFor();
  await page.evaluate(() => document.documentElement.style.setProperty('font-size', '200%'));
  // Tables may be scrolled; what is read and typed may not need it.
  const beyond = await page.evaluate(() =>
    [...document.querySelectorAll('.page-head *, .verdict *, .ranking *, .site-entry :is(p, button, input, label)')]
      .filter((each) => each.getBoundingClientRect().right > innerWidth && each.getBoundingClientRect().width > 1)
      .map(({ outerHTML }) => outerHTML.slice(0, 120)),
  );
  expect(beyond).toEqual([]);
  await page.screenshot({ path: join(OUTPUT, 'site-large-text-360x740.png') });
  expect(await grave(['.page-head', '.offline-notice', '.verdict', '.ranking'])).toEqual([]);
});
