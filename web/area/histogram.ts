/** Where the bars of a histogram stand, and what it says in words. */
import { toDisplay, type UnitSystem, unitSymbol } from '../../model/index.ts';
import type { Summary } from './api.ts';
import { bandOf } from './margin-bands.ts';
import { counted } from './run-words.ts';

interface Bar {
  readonly x: number;
  readonly width: number;
  readonly height: number;
  readonly count: number;
  /** Class of the bar's middle. */
  readonly band: number;
}

export interface Histogram {
  readonly bars: readonly Bar[];
  /** Borders that carry a figure, in the displayed unit. */
  readonly ticks: readonly { readonly x: number; readonly label: string }[];
  /** Where the limit stands; null where it is off the picture. */
  readonly limitX: number | null;
  readonly most: number;
}

/** Room for a figure below the bars, px. */
const TICK_PX = 44;

/** Bars across `widthPx`, the highest `heightPx` high. */
export function histogram(
  { edgesK, counts }: Summary['marginHistogram'],
  { units, widthPx, heightPx }: { readonly units: UnitSystem; readonly widthPx: number; readonly heightPx: number },
): Histogram {
  const [low, high] = [edgesK[0], edgesK.at(-1)];
  if (low === undefined || high === undefined || high <= low) return { bars: [], ticks: [], limitX: null, most: 0 };
  const x = (marginK: number) => ((marginK - low) / (high - low)) * widthPx;
  const most = Math.max(1, ...counts);
  const bars = counts.map((count, k): Bar => {
    const [from, to] = [edgesK[k] ?? low, edgesK[k + 1] ?? high];
    return {
      x: x(from),
      width: x(to) - x(from),
      height: (count / most) * heightPx,
      count,
      band: bandOf((from + to) / 2, units),
    };
  });
  const every = Math.max(1, Math.ceil((TICK_PX * (edgesK.length - 1)) / widthPx));
  // Counted from the limit, so that it always carries its figure.
  const zero = Math.max(0, edgesK.indexOf(0));
  const ticks = edgesK.flatMap((edge, k) =>
    (k - zero) % every === 0
      ? [{ x: x(edge), label: String(Math.round(toDisplay('temperatureDifference', edge, units))).replace('-', '−') }]
      : [],
  );
  return { bars, ticks, limitX: low <= 0 && high >= 0 ? x(0) : null, most };
}

/** "The fullest step holds 14 addresses of 40: 0 to 5 K below the limit. 12 are over it." */
export function histogramWords({ edgesK, counts }: Summary['marginHistogram'], units: UnitSystem): string {
  const total = counts.reduce((sum, count) => sum + count, 0);
  if (total === 0) return 'No address has a margin yet.';
  const top = counts.indexOf(Math.max(...counts));
  const [from, to] = [edgesK[top] ?? 0, edgesK[top + 1] ?? 0];
  const [near, far] = from >= 0 ? [from, to] : [-to, -from];
  const shown = (marginK: number) => Math.round(toDisplay('temperatureDifference', marginK, units));
  const side = from >= 0 ? 'below' : 'over';
  const span = `${shown(near)} to ${shown(far)}\u00a0${unitSymbol('temperatureDifference', units)} ${side} the limit`;
  const over = counts.reduce((sum, count, k) => ((edgesK[k + 1] ?? 0) <= 0 ? sum + count : sum), 0);
  const overWords = over === 0 ? 'None is' : over === 1 ? '1 is' : `${over} are`;
  return `The fullest step holds ${counted(counts[top] ?? 0, 'address', 'addresses')} of ${total}: ${span}. ${overWords} over it.`;
}
