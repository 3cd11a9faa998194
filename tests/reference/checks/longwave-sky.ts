/** Long-wave radiation of the sky: the worked example, the coefficients, and all correlations beside ours. */
import { skyLongwave } from '../../../model/index.ts';
import { SIGMA } from '../../../model/physical-constants.ts';
import { pressureAtAltitude } from '../../../model/solar/atmosphere.ts';
import type { Check, Topic } from '../check.ts';
import { PUBLISHED_SKIES, type SkyAir } from '../published-skies.ts';

const blackWm2 = (airC: number): number => SIGMA * (airC + 273.15) ** 4;

function oursEmissivity({ airC, dewPointC, pressureHPa }: SkyAir): number {
  return skyLongwave({ airC, dewPointC, pressurePa: pressureHPa * 100 }) / blackWm2(airC);
}

const SEA_LEVEL_HPA = 1013.25;
const at2000m = pressureAtAltitude(2000) / 100;

const skies: readonly (readonly [id: string, air: SkyAir])[] = [
  ['Td -10', { airC: 20, dewPointC: -10, pressureHPa: SEA_LEVEL_HPA }],
  ['Td 0', { airC: 20, dewPointC: 0, pressureHPa: SEA_LEVEL_HPA }],
  ['Td 10', { airC: 20, dewPointC: 10, pressureHPa: SEA_LEVEL_HPA }],
  ['Td 20', { airC: 30, dewPointC: 20, pressureHPa: SEA_LEVEL_HPA }],
  ['cold dry night', { airC: -20, dewPointC: -30, pressureHPa: SEA_LEVEL_HPA }],
  ['2000 m', { airC: 20, dewPointC: 0, pressureHPa: at2000m }],
];

const wording = ({ airC, dewPointC, pressureHPa }: SkyAir): string =>
  `air ${airC} degC, dew point ${dewPointC} degC, ${pressureHPa === SEA_LEVEL_HPA ? 'sea level' : '2000 m'}`;

function beside([id, air]: (typeof skies)[number]): Check {
  const fluxes = PUBLISHED_SKIES.map(({ emissivity }) => emissivity(air) * blackWm2(air.airC));
  return {
    id: `5.1-5.7 ${id}`,
    what: `sky long-wave, clear, ${wording(air)}`,
    source: 'the correlations of the table below (formulas verified in EnergyPlus and other code)',
    status: 'recomputed',
    unit: 'W/m2',
    low: Math.min(...fluxes),
    high: Math.max(...fluxes),
    reason: 'from the least to the most of the published ones',
    ours: () => oursEmissivity(air) * blackWm2(air.airC),
  };
}

const liRows: readonly (readonly [dewPointC: number, emissivity: number])[] = [
  [-10, 0.71215],
  [0, 0.758],
  [10, 0.81635],
  [20, 0.8872],
];

/** Cloudy sky after the codes of 5.8: what share of the gap to a black sky they close. */
const closing: readonly ((clear: number, cover: number) => number)[] = [
  (clear, c) => clear * (1 - 0.84 * c) + 0.84 * c,
  ...[0.467, 0.784, 0.9].map((k) => (clear: number, c: number) => clear + (1 - clear) * k * c),
];

function cloudy(cover: number): Check {
  const air = { airC: 20, dewPointC: 10 };
  const clear = skyLongwave(air) / blackWm2(20);
  const published = closing.map((close) => close(clear, cover));
  return {
    id: `5.8 cover ${cover}`,
    what: `emissivity of a sky with a cloud cover of ${cover}, air 20 degC, dew point 10 degC`,
    source: 'Campbell and Norman; three other codes',
    status: 'verified',
    unit: '',
    low: Math.min(...published),
    high: Math.max(...published),
    reason: 'from the least to the most of the four, on our clear sky',
    ours: () => skyLongwave({ ...air, cloudFraction: cover }) / blackWm2(20),
  };
}

function correlationTable(): string {
  const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  const figures = (name: string, rmse: string, of: (air: SkyAir) => number): string =>
    row([name, rmse, ...skies.map(([, air]) => of(air).toFixed(3))]);
  return [
    'Emissivity of the clear sky after each author:',
    '',
    row(['correlation', 'RMSE, W/m2', ...skies.map(([, air]) => wording(air))]),
    row(['---', '---', ...skies.map(() => '---')]),
    ...PUBLISHED_SKIES.map(({ name, rmseWm2, emissivity }) =>
      figures(name, rmseWm2 === undefined ? '-' : rmseWm2.toFixed(1), emissivity),
    ),
    figures('**ours**: Berdahl and Martin, Li et al. 2017 (5.7)', '13.2', oursEmissivity),
    '',
    'RMSE as Li, Jiang and Coimbra 2017 report it for seven stations; it is why ours is the one that it is.',
  ].join('\n');
}

export const LONGWAVE_SKY: Topic = {
  title: 'Long-wave sky',
  text: 'The sky decides how far a box cools below the air at night and how much a lid sheds by day.',
  checks: [
    {
      id: '5.1',
      what: 'air 20 degC, dew point 10 degC, clear',
      source: 'EnergyPlus, worked example of Clark and Allen',
      status: 'verified',
      unit: 'W/m2',
      value: 340.6,
      ours: () => skyLongwave({ airC: 20, dewPointC: 10 }),
      allowed: 0.005 * 340.6,
      reason: '0.5 %: ours is another fit',
    },
    ...liRows.map(
      ([dewPointC, value]): Check => ({
        id: `5.7 Td ${dewPointC}`,
        what: `emissivity at a dew point of ${dewPointC} degC`,
        source: 'Li, Jiang and Coimbra 2017 (coefficients via EnergyPlus)',
        status: 'recomputed',
        unit: '',
        value,
        ours: () => skyLongwave({ airC: 30, dewPointC }) / blackWm2(30),
        allowed: 0.00005,
        reason: 'the same formula',
      }),
    ),
    ...skies.map(beside),
    ...[0.5, 1].map(cloudy),
  ],
  table: correlationTable,
};
