import { describe, expect, test } from 'vitest';
import { histogram, histogramWords } from '../../../web/area/histogram.ts';

const MARGINS = { edgesK: [-10, -5, 0, 5, 10], counts: [3, 4, 5, 1] };

describe('bars', () => {
  const { bars, limitX, ticks, most } = histogram(MARGINS, { units: 'metric', widthPx: 400, heightPx: 100 });

  test('fill the width, the fullest the height, empty ones none', () => {
    expect(bars.map(({ x, width }) => [x, width])).toEqual([
      [0, 100],
      [100, 100],
      [200, 100],
      [300, 100],
    ]);
    expect(bars.map(({ height }) => height)).toEqual([60, 80, 100, 20]);
    expect([limitX, most]).toEqual([200, 5]);
    // No bar mixes what is over the limit with what is below it.
    expect(bars.map(({ band }) => band)).toEqual([1, 2, 3, 4]);
  });

  test('carry figures in the displayed unit, fewer where it is narrow, the limit always', () => {
    expect(ticks.map(({ label }) => label)).toEqual(['−10', '−5', '0', '5', '10']);
    const narrow = histogram(MARGINS, { units: 'us', widthPx: 100, heightPx: 100 });
    expect(narrow.ticks.map(({ label }) => label)).toEqual(['−18', '0', '18']);
  });

  test('of nothing are none', () => {
    expect(histogram({ edgesK: [], counts: [] }, { units: 'metric', widthPx: 400, heightPx: 100 }).bars).toEqual([]);
  });
});

test('words say the same', () => {
  expect(histogramWords(MARGINS, 'metric')).toBe(
    'The fullest step holds 5\u00a0addresses of 13: 0 to 5\u00a0K below the limit. 7 are over it.',
  );
  expect(histogramWords({ edgesK: [-10, -5], counts: [1] }, 'us')).toMatch(
    /9 to 18\u00a0°F over the limit\. 1 is over it/,
  );
  expect(histogramWords({ edgesK: [], counts: [] }, 'metric')).toBe('No address has a margin yet.');
});
