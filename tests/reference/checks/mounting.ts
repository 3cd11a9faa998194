/** One-sided against two-sided cooling: flat on the wall, on brackets, on a post, beside module temperatures. */
import { dayOf, FREE, riseAtPeakK } from '../boxes.ts';
import { type Check, once, type Topic } from '../check.ts';

/** A thin, wide box is nearest to a module: a winter sun stands square to a south wall. */
const THIN = { widthM: 0.6, heightM: 0.6, depthM: 0.03, massKg: 6 };
const WINTER = { date: '2026-12-21', maxC: 20, dailyRangeK: 14, dewPointC: 0, windMs: 0, linkeTurbidity: 2.5 };

const riseK = (held: object) =>
  once(() =>
    riseAtPeakK(
      dayOf({ box: { ...THIN, ...held }, climate: { designDay: WINTER }, wall: { construction: 'insulatedRender' } }),
    ),
  );

const flat = riseK({ standOffM: 0 });
const close = riseK({ standOffM: 0.05 });
const far = riseK({ standOffM: 0.3 });
const post = riseK(FREE);

const assumed =
  'box of 0.6 m by 0.6 m by 0.03 m, absorptance 0.9, no heat of its own, calm, 21 December at 33 N, south wall of render on insulation';
const source = 'King et al., SAND2004-3535 (coefficients via pvlib), and U-values of module software (via pvlib)';

const LESS_COUPLED =
  'a laminate is one sheet, cooled from both sides; the back of a box is warmed by its front only through still air and radiation inside, so that it matters less whether it stands free';
const FREE_GAP =
  'modules run on for metres and the air behind them gets warm and slow; up a gap of 0.05 m behind 0.6 m of box it rises as freely as along an open plate, and the sun does not reach the wall behind';

function ratio(id: string, what: string, low: number, high: number, ours: () => number, outside?: string): Check {
  return {
    id,
    what: `rise of the air inside at its peak, ${what}, over that on a post; published ${low} to ${high}`,
    source,
    status: 'recomputed',
    unit: '',
    low,
    high,
    reason: 'from the least to the most of the published ratios in still air',
    assumed,
    ours,
    ...(outside !== undefined && { outside }),
  };
}

export const MOUNTING: Topic = {
  title: 'Mounting',
  text:
    'Modules with an insulated back run 1.9 times as far above the air as on an open rack, close to a roof 1.6 times (M4, calm, 1000 W/m2: ' +
    '60.2, 50.8 and 31.1 K); by U-values 29, 20 and 15 W/(m2 K) it is 1.9 and 1.45 times (M5). A box is not a laminate: its back is coupled to its front ' +
    'through the air inside and by radiation.',
  checks: [
    ratio('M4 flat', 'flat on the wall', 1.6, 2.1, () => flat() / post(), LESS_COUPLED),
    ratio('M4 close', 'on brackets of 0.05 m', 1.45, 1.85, () => close() / post(), FREE_GAP),
    ratio('M5 far', 'on brackets of 0.3 m', 1, 1.45, () => far() / post()),
  ],
};
