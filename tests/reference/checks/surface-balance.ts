/** Heat balances of surfaces with one right answer. */
import { KELVIN } from '../../../model/physical-constants.ts';
import { createNetwork } from '../../../model/thermal/network.ts';
import type { Check, Status, Topic } from '../check.ts';
import { type Plate, plateC } from '../plate-balance.ts';

type Row = readonly [id: string, what: string, value: number, plate: Plate, source: string, status: Status];

const holman = { emittance: 0.9, radiantC: 25 };
const roof = { emittance: 0.9, radiantC: 291 - KELVIN, h: 8, airC: 35 };
const inSpace = { emittance: 1, radiantC: 50 - KELVIN, h: 10, airC: 300 - KELVIN };

const kreith = 'Kreith, example 1.13 (via a textbook companion; the book rounds 302.5 K to 303 K)';
const plates: readonly Row[] = [
  [
    'E1 white',
    'radiation alone, 700 W/m2, absorptance 0.12',
    39.5,
    { ...holman, absorbedWm2: 84 },
    'Holman, example 8-20 (inputs verified)',
    'recomputed',
  ],
  [
    'E1 black',
    'the same, absorptance 0.96, emittance 0.95',
    104.8,
    { ...holman, absorbedWm2: 672, emittance: 0.95 },
    'Holman, example 8-20 (inputs verified)',
    'recomputed',
  ],
  [
    'E2 white',
    'with convection of 10 W/(m2 K), white',
    30.4,
    { ...holman, absorbedWm2: 84, h: 10 },
    'Holman, example 8-21 (inputs verified)',
    'recomputed',
  ],
  [
    'E2 black',
    'with convection of 10 W/(m2 K), black',
    64.7,
    { ...holman, absorbedWm2: 672, emittance: 0.95, h: 10 },
    'Holman, example 8-21 (inputs verified)',
    'recomputed',
  ],
  [
    'E3 black',
    'barn roof, 600 W/m2, sky of 291 K, absorptance 0.9',
    64.99,
    { ...roof, absorbedWm2: 540 },
    'Lienhard, example 10.12 (via a textbook companion)',
    'verified',
  ],
  [
    'E3 white',
    'the same, white acrylic paint',
    39.45,
    { ...roof, absorbedWm2: 156 },
    'Lienhard, example 10.12 (via a textbook companion)',
    'verified',
  ],
  [
    'E5',
    'plate with a combined coefficient of 50 W/(m2 K)',
    33.4,
    { emittance: 0, radiantC: 25, absorbedWm2: 420, h: 50 },
    'Cengel, example 1-13 (inputs verified)',
    'recomputed',
  ],
  [
    'E8 day',
    'roof under space of 50 K, 500 W/m2',
    302.5 - KELVIN,
    { ...inSpace, absorbedWm2: 500 },
    kreith,
    'verified',
  ],
  ['E8 night', 'the same at night', 270 - KELVIN, { ...inSpace, absorbedWm2: 0 }, kreith, 'verified'],
];

const e1980: readonly (readonly [h: number, black: number, white: number])[] = [
  [5, 103.7, 49.3],
  [12, 82.5, 44.6],
  [30, 61.1, 40.8],
];

const standardPlates: readonly Row[] = e1980.flatMap(([h, black, white]) =>
  (
    [
      ['black', 0.95, black],
      ['white', 0.2, white],
    ] as const
  ).map(
    ([name, absorptance, value]): Row => [
      `E7 ${name}, h ${h}`,
      `1000 W/m2, air 310 K, sky 300 K, ${name}, ${h} W/(m2 K)`,
      value,
      { absorbedWm2: absorptance * 1000, emittance: 0.9, radiantC: 300 - KELVIN, h, airC: 310 - KELVIN },
      'ASTM E1980 standard conditions (black and white from memory)',
      'recomputed',
    ],
  ),
);

function selectivePlateGainW(): number {
  const h = (surfaceK: number, airK: number) => 0.22 * Math.cbrt(surfaceK - airK);
  const network = createNetwork({
    capacitiesJK: { plate: 1 },
    boundaries: ['sky', 'air'],
    links: [
      { kind: 'radiation', from: 'plate', to: 'sky', exchangeAreaM2: 0.1 },
      { kind: 'convection', from: 'plate', to: 'air', areaM2: 1, coefficient: h },
    ],
  });
  const gain = new Float64Array(1);
  const t = Float64Array.of(120 + KELVIN, -10 + KELVIN, 30 + KELVIN);
  network.netHeatW(t, Float64Array.of(0.95 * 750), 0, gain);
  return gain[0] as number;
}

function slabInSpace(): { outsideK: number; outwardW: number } {
  const network = createNetwork({
    capacitiesJK: { outside: 1 },
    boundaries: ['inside', 'space'],
    links: [
      { kind: 'conduction', from: 'inside', to: 'outside', conductanceWK: 1.2 / 0.06 },
      { kind: 'radiation', from: 'outside', to: 'space', exchangeAreaM2: 0.85 },
    ],
  });
  const t = Float64Array.of(280, 300, 0);
  network.settle(t, Float64Array.of(0.26 * 800), 0);
  return { outsideK: t[0] as number, outwardW: network.linkFlowW(0, t, 0) };
}

const incropera = { source: 'Incropera, example 12.11 (via a textbook companion)', status: 'verified' } as const;
const cengel = { source: 'Cengel, example 2-14 (inputs verified)', status: 'recomputed' } as const;

export const SURFACE_BALANCE: Topic = {
  title: 'Surface balances',
  text: 'One square metre, settled by the network that marches the box. Temperatures in degC where not said otherwise.',
  checks: [
    ...[...plates, ...standardPlates].map(
      ([id, what, value, plate, source, status]): Check => ({
        id,
        what,
        source,
        status,
        unit: 'degC',
        value,
        ours: () => plateC(plate),
        allowed: 0.2,
        reason: 'books take 25 degC as 298 K and older values of sigma',
      }),
    ),
    {
      id: 'E4 gain',
      what: 'selective plate at 120 degC, 750 W/m2: net gain of one square metre',
      ...incropera,
      unit: 'W',
      value: 515.5,
      ours: selectivePlateGainW,
      allowed: 1,
      reason: 'editions print 515 and 516',
    },
    {
      id: 'E4 efficiency',
      what: 'the same: gain over sun',
      ...incropera,
      unit: '',
      value: 0.69,
      ours: () => selectivePlateGainW() / 750,
      allowed: 0.005,
      reason: 'last printed figure',
    },
    {
      id: 'E6 temperature',
      what: 'slab of 0.06 m in space, inside 300 K, 800 W/m2: outer side, K',
      ...cengel,
      unit: 'K',
      value: 292.7,
      ours: () => slabInSpace().outsideK,
      allowed: 0.05,
      reason: 'last printed figure',
    },
    {
      id: 'E6 heat',
      what: 'the same: heat outward',
      ...cengel,
      unit: 'W',
      value: 146,
      ours: () => slabInSpace().outwardW,
      allowed: 1,
      reason: 'last printed figure',
    },
  ],
};
