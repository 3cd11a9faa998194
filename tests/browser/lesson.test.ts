/** A lesson as a trainer gives it: guessed, compared, played, explained, printed; on a projector and on a phone. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { answerQuestion, LESSON_NAMES, type LessonQuestion, shippedLesson } from '../../model/index.ts';
import { launchChromium } from './chromium.ts';
import { axeFindings, lowTargets } from './page-checks.ts';
import { type PageServer, servePage } from './page-server.ts';
import { eventually, PHONE } from './site-page.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const PROJECTOR = { width: 1920, height: 1080 };
/** A4 less its margins, at 96 px to the inch. */
const PRINTED = { width: 718, height: 1009 };
/** What can be read from the back row. */
const LEAST_PROJECTED_PX = 22;

let browser: Browser;
let server: PageServer;

beforeAll(async () => {
  [browser, server] = await Promise.all([launchChromium(), servePage()]);
});

afterAll(async () => {
  await browser?.close();
  await server?.close();
});

const lesson = shippedLesson(LESSON_NAMES[0] ?? '');
const question = (kind: LessonQuestion['kind']) => {
  const found = lesson.questions.find((one) => one.kind === kind);
  if (found === undefined) throw new Error(`the lesson asks no ${kind}`);
  return found;
};

async function openLessons(viewport: { width: number; height: number }) {
  const context = await browser.newContext({ viewport, timezoneId: 'Asia/Kolkata', locale: 'de-DE' });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  await page.goto(`${server.address}#/lesson`);
  await page
    .getByRole('button', { name: /^Begin/ })
    .first()
    .waitFor();
  return { context, page, complaints };
}

async function shoot(page: Page, name: string) {
  const { width, height } = page.viewportSize() ?? PHONE;
  mkdirSync(join(ROOT, '.test-output'), { recursive: true });
  await page.screenshot({ path: join(ROOT, `.test-output/lesson-${name}-${width}x${height}.png`) });
}

/** No sideways scrolling, targets for fingers, letters for the back row, nothing that axe finds grave; and a picture. */
async function look(page: Page, name: string) {
  const { width } = page.viewportSize() ?? PHONE;
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  const pressed =
    '.lesson button, .lesson select, dialog button, dialog select, .lesson label.button, .lesson input[type=range]';
  expect(await lowTargets(page.locator(pressed))).toEqual([]);
  if (width === PROJECTOR.width) {
    const fonts = await page.evaluate(() =>
      [...document.querySelectorAll('.lesson *, dialog *')]
        // Indices of a formula are small by nature.
        .filter((element) => !element.matches('math *'))
        .filter((element) => [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim()))
        .map((element) => Number.parseFloat(getComputedStyle(element).fontSize)),
    );
    expect(Math.min(...fonts)).toBeGreaterThanOrEqual(LEAST_PROJECTED_PX);
  }
  await shoot(page, name);
  // The sheet holds twenty equations of hundreds of signs each; they are made as those of the dialog are.
  expect(await axeFindings(page, { exclude: ['.sheet-equation'] })).toEqual([]);
}

/** Brings the whole of the player onto the screen. */
const toPlayer = (page: Page) =>
  page.locator('.player').evaluate((element) => scrollBy(0, element.getBoundingClientRect().top));

/** How much of a region's content is out of sight to the side, px. */
const hiddenPx = (region: Locator) =>
  region.evaluate(({ scrollWidth, clientWidth }: Element) => scrollWidth - clientWidth);

/** Presses Tab until the focus lies on what a role and a name say. */
async function tabTo(page: Page, role: Parameters<Page['getByRole']>[0], name: string | RegExp) {
  const target = page.getByRole(role, { name }).first();
  await target.waitFor();
  for (let step = 0; step < 120; step += 1) {
    if (await target.evaluate((element) => element === document.activeElement)) return target;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab does not reach ${role} ${name}`);
}

async function press(page: Page, role: Parameters<Page['getByRole']>[0], name: string | RegExp) {
  await tabTo(page, role, name);
  await page.keyboard.press('Enter');
}

const plain = async (text: Promise<string | null>) => ((await text) ?? '').replaceAll('\u00a0', ' ');

test('a lesson by keyboard: guesses, two boxes, the day played, equations, handout', { timeout: 120_000 }, async () => {
  const { context, page, complaints } = await openLessons(PROJECTOR);
  await page.getByRole('radio', { name: 'Metric' }).check();
  await look(page, 'start');
  await press(page, 'button', `Begin “${lesson.title}”`);

  // A wrong guess. Nothing is drawn and nothing computed before it.
  const chart = page.locator('.lesson-chart');
  await page.getByRole('heading', { name: 'On which wall does the air inside the box get hottest' }).waitFor();
  expect(await chart.count()).toBe(0);
  await press(page, 'button', 'That is my guess');
  await page.getByText('Choose one first.').waitFor();
  await look(page, 'question');
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Space');
  await press(page, 'button', 'That is my guess');
  await page.getByRole('heading', { name: 'Not this time.' }).waitFor();
  expect(await plain(page.locator('.answer-verdict').textContent())).toContain(
    `Computed: ${answerQuestion(lesson, question('hottestWall')).computed.metric}`,
  );
  expect(await chart.locator('.curve-key li').count()).toBe(5);
  expect(await page.locator('.statements li').count()).toBeGreaterThan(1);
  expect(await page.locator('[aria-live="polite"] .answer').count()).toBe(1);
  await look(page, 'answer');

  // A right guess, on the slider of hours; the hour comes from the model.
  await press(page, 'button', 'Next question');
  const target = answerQuestion(lesson, question('peakHour')).target;
  if (target.type !== 'time') throw new Error('an hour has a time');
  await tabTo(page, 'slider', /Time of the day/);
  await page.keyboard.press('Home');
  for (let k = 0; k < Math.round(target.value * 4); k += 1) await page.keyboard.press('ArrowRight');
  await press(page, 'button', 'That is my guess');
  await page.getByRole('heading', { name: 'Right.' }).waitFor();
  expect(await chart.locator('.mark-guess, .mark-answer').count()).toBe(2);
  expect(await page.locator('.lesson-score').textContent()).toBe('1 right, 0 near, 1 wrong; 2 of 8 questions.');

  // Shown without a guess; and a number that is none.
  await press(page, 'button', 'Next question');
  await press(page, 'button', 'Show without a guess');
  await page.getByRole('heading', { name: 'The answer' }).waitFor();
  await press(page, 'button', `Question ${lesson.questions.indexOf(question('hoursOverLimit')) + 1}`);
  await tabTo(page, 'textbox', /Your guess/);
  await page.keyboard.type('many');
  await page.keyboard.press('Enter');
  await page.getByText('“many” is no guess; allowed: a number from 0 to 24 (h).').waitFor();
  expect(await page.locator('.answer').count()).toBe(0);

  // Two boxes, one difference.
  await press(page, 'button', /^An eave/);
  await page.locator('.player').waitFor();
  expect(await page.locator('.comparison-top path.curve:not(.curve-sample path)').count()).toBe(3);
  const [peakA, peakB, apart] = await page
    .getByRole('row', { name: /^Air inside at its peak/ })
    .getByRole('cell')
    .allTextContents();
  expect(Number.parseFloat(peakB ?? '') - Number.parseFloat(peakA ?? '')).toBeCloseTo(
    Number.parseFloat((apart ?? '').replace('−', '-')),
    0,
  );
  await shoot(page, 'comparison');

  // Played: run, paused, scrubbed, stepped.
  const time = page.locator('.player-time');
  const first = await time.textContent();
  await press(page, 'button', 'Play the day');
  await eventually(() => time.textContent()).not.toBe(first);
  await press(page, 'button', 'Pause');
  await tabTo(page, 'slider', 'Time of the day');
  await page.keyboard.press('Home');
  expect(await time.textContent()).toBe('00:00');
  expect(await page.locator('.lesson-sun').count()).toBe(0);
  await page.keyboard.press('Shift+Tab');
  for (let hour = 0; hour < 17; hour += 1) await page.keyboard.press('Enter');
  expect(await time.textContent()).toBe('17:00');
  expect(await page.locator('.lesson-sun').count()).toBe(4);
  expect(await page.locator('.played-box .heat-in').count()).toBeGreaterThan(1);
  await toPlayer(page);
  await look(page, 'player');
  if (process.env['SHADESIDE_SCREENSHOT'] === '1') {
    await page.screenshot({ path: join(ROOT, 'web/screenshots/lesson.png') });
  }

  // The balance closes as it is written.
  const balance = page.locator('table.balance');
  const watts = async (name: RegExp) =>
    Number.parseFloat(
      (await plain(balance.getByRole('row', { name }).getByRole('cell').first().textContent())).replace('−', '-'),
    );
  const [into, out, stored, left] = [
    await watts(/^All that goes in/),
    await watts(/^less all that goes out/),
    await watts(/^less what the box stores/),
    await watts(/^leaves/),
  ];
  expect(Math.abs(left)).toBeLessThan(0.05);
  expect(Math.abs(into - out - stored)).toBeLessThan(0.2);
  const ways = await balance.locator('tbody td:nth-of-type(1)').allTextContents();
  const sum = ways.map((text) => Number.parseFloat(text.replace('−', '-'))).reduce((a, b) => a + b, 0);
  expect(Math.abs(sum - stored)).toBeLessThan(0.05 * (ways.length + 1));
  expect(await page.locator('.story p').count()).toBe(4);

  // Each figure opens its equation, and takes the focus back.
  const figure = await tabTo(page, 'button', (await ways[0]) ?? '');
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog');
  await dialog.locator('math').first().waitFor();
  expect(await plain(dialog.textContent())).toMatch(/17:00.*Source: /s);
  expect(await dialog.locator('tbody tr').count()).toBeGreaterThan(1);
  await look(page, 'explain');
  await page.keyboard.press('Escape');
  await eventually(() => dialog.count()).toBe(0);
  expect(await figure.evaluate((element) => element === document.activeElement)).toBe(true);

  // Where motion is not wanted, nothing runs.
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await eventually(() => page.getByRole('button', { name: 'Play the day' }).count()).toBe(0);
  await page.emulateMedia({ reducedMotion: 'no-preference' });

  // The handout: a page for each comparison, and solutions on a page of their own.
  // What takes long says so and can be stopped; the request is held back to have the time.
  await page.evaluate(() => {
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function (this: Worker, message: { task?: string }) {
      if (message.task !== 'handout' || 'hurry' in window) post.call(this, message);
    };
  });
  await press(page, 'button', 'Handout');
  await page.getByRole('progressbar', { name: 'Computing the handout' }).waitFor();
  await press(page, 'button', 'Cancel');
  await page.evaluate(() => Object.assign(window, { hurry: true }));
  await press(page, 'button', 'Compute the handout');
  await page.getByRole('button', { name: 'Print the handout' }).waitFor();
  const pages = page.locator('.handout-page');
  expect(await pages.count()).toBe(lesson.comparisons.length + 3);
  expect(await pages.locator('math').count()).toBeGreaterThan(20);
  const pdf = (await page.pdf({ format: 'A4', margin: { top: '1.5cm', bottom: '1.5cm' } })).toString('latin1');
  const printed = pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
  expect(printed).toBeGreaterThanOrEqual(lesson.comparisons.length + 3);
  expect(printed).toBeLessThanOrEqual(lesson.comparisons.length + 9);
  await look(page, 'handout');
  // What is printed is the handout alone, and each comparison fits on its page.
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize(PRINTED);
  const heights = await pages.evaluateAll((all) => all.map((element) => element.clientHeight));
  for (const height of heights.slice(0, lesson.comparisons.length)) expect(height).toBeLessThan(PRINTED.height);
  expect(await page.getByRole('button').count()).toBe(0);
  await context.close();
  expect(complaints).toEqual([]);
});

test('on a phone: an own lesson good and bad, US units, the site of the other view, without a network', async () => {
  const { context, page, complaints } = await openLessons(PHONE);
  const open = (text: string) =>
    page
      .locator('input[type="file"]')
      .setInputFiles({ name: 'own.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await open('{ "title": ');
  await page.getByText(/^own\.json was not opened: .*JSON/).waitFor();
  await open(
    JSON.stringify({
      title: '',
      questions: [
        { id: 'a', kind: 'peakHour', wall: 'attic' },
        { id: '2', kind: 'riddle' },
      ],
    }),
  );
  const problems = page.getByRole('alert').filter({ hasText: 'own.json was not opened' });
  await eventually(() => problems.locator('li').count()).toBeGreaterThanOrEqual(2);
  await look(page, 'refused');

  // Loaded once, the rest goes without a network.
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.reload();
  await context.setOffline(true);
  await page.reload();
  await page
    .getByRole('button', { name: /^Begin/ })
    .first()
    .waitFor();
  await open(
    JSON.stringify({
      title: 'Own',
      comparisons: [{ id: 'lamp', wall: 'west', difference: { kind: 'power', powerW: '30 W' } }],
      questions: [
        { id: 'paint', kind: 'kelvinsSaved', wall: 'west', difference: { kind: 'finish', to: 'whitePaint' } },
      ],
    }),
  );
  await page.getByRole('textbox', { name: 'Your guess, °F' }).fill('9');
  await page.getByRole('button', { name: 'That is my guess' }).click();
  await page.locator('.answer').waitFor();
  expect(await page.locator('.mark-guess, .mark-answer').count()).toBe(2);
  expect(await page.locator('.answer').textContent()).toMatch(/°F/);
  await look(page, 'answer');
  await page.getByRole('button', { name: 'Next: two boxes side by side' }).click();
  await page.locator('.player').waitFor();
  await shoot(page, 'comparison');
  // In the sun: the faces have colours of their own there.
  const darkest = () =>
    page
      .locator('.face-key .taken-5')
      .first()
      .evaluate((face) => getComputedStyle(face).fill);
  const usual = await darkest();
  await page.getByLabel('Theme').selectOption('Sunlight');
  await eventually(darkest).not.toBe(usual);
  await toPlayer(page);
  await look(page, 'player');

  // Tables fit the phone; what is wider says that it goes on.
  for (const table of ['Figures of both boxes', /^Heat balance at/]) {
    expect(await hiddenPx(page.getByRole('region', { name: table }))).toBeLessThanOrEqual(1);
  }
  await page.locator('.comparison-figures').scrollIntoViewIfNeeded();
  await shoot(page, 'figures');
  await page.locator('table.balance .figure-button').first().click();
  const dialog = page.getByRole('dialog');
  await dialog.locator('math').first().waitFor();
  expect(await hiddenPx(dialog.getByRole('region', { name: 'Values in the equation' }))).toBeLessThanOrEqual(1);
  const equation = dialog.getByRole('region', { name: /^Equation/ });
  if ((await hiddenPx(equation)) > 1) {
    expect(await dialog.getByText('It goes on to the right').count()).toBe(1);
    await equation.focus();
    await page.keyboard.press('ArrowRight');
    await eventually(() => equation.evaluate(({ scrollLeft }) => scrollLeft)).toBeGreaterThan(0);
  }
  await look(page, 'explain');
  await page.keyboard.press('Escape');

  await page.getByRole('button', { name: 'Other lessons' }).click();
  await page.getByRole('button', { name: 'Compare two boxes freely' }).click();
  await page.getByLabel('Box B has').selectOption('climate');
  await page.getByRole('heading', { level: 2, name: /climate/ }).waitFor();
  expect(await page.locator('.curve-outside').count()).toBe(3);
  await look(page, 'free');
  await context.close();
  expect(complaints).toEqual([]);
});

test('place, guesses and score come back after another climate, another view and a reload; a lesson starts again', async () => {
  const { context, page, complaints } = await openLessons(PHONE);
  const score = page.locator('.lesson-score');
  const heading = () => page.evaluate(() => document.activeElement?.tagName);
  await page.getByRole('button', { name: `Begin “${lesson.title}”` }).click();
  await page.getByRole('radio', { name: /^west/ }).check();
  await page.getByRole('button', { name: 'That is my guess' }).click();
  await eventually(() => score.textContent()).toMatch(/1 of 8 questions/);
  const told = await score.textContent();
  await page.getByRole('button', { name: 'Question 5' }).click();
  await page.getByRole('heading', { name: /most sun at 09:00/ }).waitFor();
  await page.getByRole('button', { name: 'Show without a guess' }).click();
  await page.locator('.answer .mark-asked').waitFor();
  expect(await plain(page.locator('.statements').textContent())).toMatch(/At 09:00 the sun stands in the E.*"east"/);
  await look(page, 'asked-hour');
  await eventually(() => score.textContent()).toMatch(/2 of 8 questions/);

  // Each climate has a score of its own.
  await page.getByLabel('Climate').selectOption('continental');
  await eventually(() => score.textContent()).toBe('No guess yet; 8 questions.');
  await page.getByLabel('Climate').selectOption('');
  await eventually(() => score.textContent()).toMatch(/2 of 8 questions/);

  // Another view and back, by the buttons of the browser, and a reload; the answer is computed anew.
  await page.getByRole('link', { name: 'One site' }).click();
  await page.locator('.lesson').waitFor({ state: 'detached' });
  for (const come of [() => page.goBack(), () => page.reload()]) {
    await come();
    await page.locator('.answer .mark-asked').waitFor();
    await page.getByRole('heading', { name: /most sun at 09:00/ }).waitFor();
    expect(await score.textContent()).toMatch(/2 of 8 questions/);
    expect(await heading()).toMatch(/^H[1-3]$/);
  }
  await page.goForward();
  await page.locator('.lesson').waitFor({ state: 'detached' });
  await eventually(heading).toMatch(/^H[1-3]$/);
  await page.goBack();
  await page.locator('.answer').waitFor();

  await page.getByRole('button', { name: 'Start again' }).click();
  expect(await score.textContent()).toBe('No guess yet; 8 questions.');
  await page.getByRole('heading', { name: 'On which wall does the air inside the box get hottest' }).waitFor();
  expect(await page.getByRole('radio', { checked: true }).count()).toBe(1); // the units alone
  expect(told).not.toBe('');
  await context.close();
  expect(complaints).toEqual([]);
});
