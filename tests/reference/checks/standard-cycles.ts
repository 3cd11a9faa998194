/** The standard's own induced conditions: closed boxes in the sun of the cycles A1 and A2. */
import { STANDARD_CYCLES } from '../../../model/index.ts';
import { dayOf, FREE, hottestWay, type Trial } from '../boxes.ts';
import { type BandCheck, type Check, once, type Topic } from '../check.ts';

type CycleName = 'mil-std-810h-a1' | 'mil-std-810h-a2';

/** Mean of the wind that the carrier tabulates beside A1, m/s. */
const TABULATED_WIND_MS = 3.5;

const cycleDay = (cycle: CycleName, solarAbsorptance: number, windMs: number): Trial => ({
  climate: { cycle, windMs },
  albedo: 0.2,
  box: { solarAbsorptance },
});
const onWall = (cycle: CycleName, absorptance: number, windMs = 0) =>
  once(() => hottestWay(cycleDay(cycle, absorptance, windMs)));
const free = (cycle: CycleName, absorptance: number, windMs = 0) =>
  once(() => {
    const trial = cycleDay(cycle, absorptance, windMs);
    return dayOf({ ...trial, box: { ...trial.box, ...FREE } });
  });

const A1: CycleName = 'mil-std-810h-a1';
const A2: CycleName = 'mil-std-810h-a2';
const a1Dark = onWall(A1, 0.9);
const a1White = onWall(A1, 0.2);
const a1DarkFree = free(A1, 0.9);

const induced = 'MIL-STD-810 Method 501 and AR 70-38 table 2-1, induced conditions';
const region =
  'from 6 K below to 14 K above the figure: the standard says neither how dark nor how calm its enclosures were';
const dark = 'absorptance 0.9, no heat of its own, 33 N, ground albedo 0.2';

/** The peak inside beside the induced figure. */
function peak(id: string, what: string, value: number, ours: () => number, more: Partial<BandCheck> = {}): BandCheck {
  return {
    id,
    what: `${what}: peak of the air inside; published ${value}`,
    source: induced,
    status: 'from memory',
    unit: 'degC',
    low: value - 6,
    high: value + 14,
    reason: region,
    assumed: dark,
    ours,
    ...more,
  };
}

const localHour = (utc: Date): number => (utc.getTime() / 3_600_000 - 7 + 24) % 24;

const dailySum = (name: CycleName): number =>
  (STANDARD_CYCLES.find((cycle) => cycle.name === name)?.hours ?? []).reduce((sum, { ghiWm2 }) => sum + ghiWm2, 0);

const sums: readonly Check[] = ([A1, A2] as const).map((name) => ({
  id: `1a ${name.slice(-2).toUpperCase()} daily sum`,
  what: `sum of the hours of global irradiance of ${name}`,
  source: 'MIL-HDBK-310, 23 June 1997 (via a data sheet of carpy)',
  status: 'recomputed',
  unit: 'Wh/m2',
  value: 9270,
  ours: () => dailySum(name),
  allowed: 0.5,
  reason: 'the same table',
}));

export const CYCLES: Topic = {
  title: 'Standard cycles',
  text:
    'The carrier tabulates a wind of 3 m/s by night and 4 m/s by day beside A1; the program takes the air as calm unless a wind is ' +
    'entered. A free box stands on a post, far from any wall.',
  checks: [
    ...sums,
    {
      id: '1a A1 peak air',
      what: 'highest outside air of a day in A1',
      source: 'MIL-HDBK-310, 23 June 1997 (via a data sheet of carpy)',
      status: 'verified',
      unit: 'degC',
      value: 49,
      ours: () => a1Dark().peakOutsideAirC,
      allowed: 0.05,
      reason: "straight between the hours, the table's noon laid on the sun's",
    },
    peak('A1 wall, calm', 'A1, hottest of eight brick walls, calm', 71, () => a1Dark().peakInsideAirC),
    peak(
      'A1 wall, wind',
      `A1, hottest of eight brick walls, ${TABULATED_WIND_MS} m/s`,
      71,
      () => onWall(A1, 0.9, TABULATED_WIND_MS)().peakInsideAirC,
    ),
    peak('A1 free, calm', 'A1, free box, calm', 71, () => a1DarkFree().peakInsideAirC),
    peak(
      'A1 free, wind',
      `A1, free box, ${TABULATED_WIND_MS} m/s`,
      71,
      () => free(A1, 0.9, TABULATED_WIND_MS)().peakInsideAirC,
      {
        outside:
          "the whole of the wind sweeps a small box on all six sides; the standard's figure is for what is stored and carried, shelters and vehicles among them, which are large and stand in still air",
      },
    ),
    peak('A2 wall, calm', 'A2, hottest of eight brick walls, calm', 63, () => onWall(A2, 0.9)().peakInsideAirC, {
      outside:
        "the sun of A2 is that of A1, and its moister sky radiates more: in dead calm air a dark box with a sunlit brick wall behind it gets nearly as hot in both, while the standard's figures are 8 K apart; free of the wall it lies within",
    }),
    peak('A2 free, calm', 'A2, free box, calm', 63, () => free(A2, 0.9)().peakInsideAirC),
    {
      id: '8c-4 hour, free',
      what: 'A1, dark free box, calm: hour of the peak inside',
      source: 'expected of a box that stores little: between 13 and 17 h',
      status: 'common practice',
      unit: 'h',
      low: 13,
      high: 17,
      reason: 'as said',
      assumed: dark,
      ours: () => localHour(a1DarkFree().peakAtUtc),
    },
    {
      id: '8c-4 hour, wall',
      what: 'the same on the hottest of eight walls',
      source: 'expected of a box that stores little: between 13 and 17 h',
      status: 'common practice',
      unit: 'h',
      low: 13,
      high: 17,
      reason: 'as said',
      assumed: dark,
      ours: () => localHour(a1Dark().peakAtUtc),
    },
    {
      id: '8c-4 white',
      what: 'A1, white box on its hottest wall, calm: peak inside, between the outside air and 71 degC',
      source: induced,
      status: 'from memory',
      unit: 'degC',
      low: 49,
      high: 71,
      reason: 'dark and white bracket the induced figure',
      assumed: 'absorptance 0.2, otherwise as above',
      ours: () => a1White().peakInsideAirC,
    },
    {
      id: '8c-4 dark over white',
      what: 'the same: dark box over white box',
      source: 'expected: two thirds of the sun more taken in',
      status: 'common practice',
      unit: 'K',
      low: 12,
      high: 30,
      reason: 'a judgement',
      assumed: 'absorptance 0.9 and 0.2, otherwise as above',
      ours: () => a1Dark().peakInsideAirC - a1White().peakInsideAirC,
    },
  ],
};
