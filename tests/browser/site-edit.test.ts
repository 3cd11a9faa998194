/**
 * How soon the verdict follows an edit on a phone of the middle class: at 360x740, the processor slowed down to a quarter.
 *
 * Chromium slows down the main thread only and not the workers: what is asked, 200 ms, is asked of that. The worker's own time is
 * measured beside it, and what the whole would take with that four times as long is printed, not held to anything. A machine that runs other things at the same time, as those of a CI do, would fail that
 * without any fault of the page; so a fixed piece of arithmetic is timed after each edit in the same page, and the bound is
 * stretched by as much as that took longer than it does on a machine at rest, and doubled, since a worker waits for its turn there,
 * too. The figures are printed.
 */
import { expect, test } from 'vitest';
import { eachSitePage } from './each-site-page.ts';
import { openSitePage, PHONE } from './site-page.ts';

const stage = eachSitePage();

/** What is asked, ms, and how much later it may be on a machine that does other things. */
const ASKED_MS = 200;
const BUSY = 2;

/** The slowed processor, and how long the arithmetic takes on it at rest, ms; measured on the machine that this was written on. */
const SLOWED = 4;
const LOOP_AT_REST_MS = 100;

interface Timing {
  /** From the input event to the changed text, ms. */
  readonly wholeMs: number;
  /** From the request to the worker to its answer, ms. */
  readonly workerMs: number;
  /** The arithmetic on the main thread, right after, ms. */
  readonly loopMs: number;
}

/** Notes when the ranking is asked for and answered, before any listener of the page draws. */
function watchWorker() {
  const { Worker: Native } = window;
  Object.assign(window, {
    Worker: class extends Native {
      readonly ranks: boolean;
      constructor(url: string | URL, options?: WorkerOptions) {
        super(url, options);
        this.ranks = String(url).includes('compute.worker');
        this.addEventListener('message', () => this.ranks && Object.assign(window, { answeredAt: performance.now() }));
      }
      override postMessage(message: unknown) {
        if (this.ranks) Object.assign(window, { askedAt: performance.now() });
        super.postMessage(message);
      }
    },
  });
}

/** Types a text into a field and waits until the watched part of the page shows something else. */
function edit({ id, text, watched }: { id: string; text: string; watched: string }): Promise<Timing> {
  const shown = () => document.querySelector(watched)?.textContent;
  const before = shown();
  const input = document.getElementById(id) as HTMLInputElement;
  return new Promise((resolve) => {
    const from = performance.now();
    new MutationObserver((_changes, observer) => {
      if (shown() === before) return;
      observer.disconnect();
      const wholeMs = performance.now() - from;
      const { askedAt, answeredAt } = window as unknown as { askedAt: number; answeredAt: number };
      // Let the page draw what else has changed first.
      setTimeout(() => {
        const loopFrom = performance.now();
        let sum = 0;
        for (let k = 1; k < 2_000_000; k += 1) sum += Math.sqrt(k) / (1 + sum / k);
        const loopMs = sum > 0 ? performance.now() - loopFrom : 0;
        resolve({ wholeMs, workerMs: answeredAt - askedAt, loopMs });
      }, 300);
    }).observe(document.querySelector('main') as Element, { subtree: true, childList: true, characterData: true });
    input.value = text;
    input.dispatchEvent(new InputEvent('input', { bubbles: true }));
  });
}

const middle = (values: number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;

test('the verdict follows an edit within 200 ms of a slowed main thread, on a machine at rest', {
  timeout: 120_000,
}, async () => {
  await stage.site.close();
  stage.site = await openSitePage(stage.browser, stage.server.address, PHONE);
  const { page } = stage.site;
  await page.addInitScript(watchWorker);
  await page.reload();
  await page.getByRole('radio', { name: 'Metric' }).check();
  await page.locator('.day-chart canvas').waitFor();
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
  const median = async (
    id: string,
    watched: string,
    texts: readonly string[],
  ): Promise<Timing & { phoneMs: number }> => {
    const timings: Timing[] = [];
    for (const text of texts) timings.push(await page.evaluate(edit, { id, text, watched }));
    const [wholeMs, workerMs, loopMs] = (['wholeMs', 'workerMs', 'loopMs'] as const).map((key) =>
      Math.round(middle(timings.map((timing) => timing[key]))),
    ) as [number, number, number];
    return { wholeMs, workerMs, loopMs, phoneMs: wholeMs + (SLOWED - 1) * workerMs };
  };
  const power = await median('field-box-powerW', '.verdict-sentence strong', [
    '16',
    '18',
    '20',
    '22',
    '24',
    '26',
    '28',
  ]);
  const place = await median('field-place-latitudeDeg', '.wall-cards', ['34', '35', '36']);
  process.stdout.write(`edit to verdict, ms: power ${JSON.stringify(power)}, latitude ${JSON.stringify(place)}\n`);
  for (const { wholeMs, loopMs } of [power, place]) {
    expect(wholeMs).toBeLessThan(ASKED_MS * BUSY * Math.max(1, loopMs / LOOP_AT_REST_MS));
  }
});
