/** What the finish does by day and by night: a published order, and black against white. */
import type { DayResult } from '../../../model/index.ts';
import { apartK, dayOf, FREE, lidBelowAirK } from '../boxes.ts';
import { type Check, once, type Topic } from '../check.ts';

/** Absorptance and emittance as the tables of section 6 give them. */
const SURFACES = {
  'glossy white': [0.14, 0.92],
  'flat white': [0.26, 0.9],
  'aluminium foil': [0.21, 0.04],
  'aluminium paint': [0.37, 0.44],
  grey: [0.5, 0.9],
  green: [0.82, 0.9],
  lampblack: [0.96, 0.95],
} as const;

type Name = keyof typeof SURFACES;

const days = Object.fromEntries(
  Object.entries(SURFACES).map(([name, [solarAbsorptance, emittance]]) => [
    name,
    once(() => dayOf({ box: { ...FREE, solarAbsorptance, emittance } })),
  ]),
) as Record<Name, () => DayResult>;

const bms64 = {
  source: 'National Bureau of Standards, BMS 64 (1941), abstract; absorptances and emittances of several tables',
  status: 'verified' as const,
  assumed: 'free box of 0.3 m by 0.35 m by 0.12 m, no heat of its own, 33 N, 21 June, 26 to 40 degC, 1.5 m/s',
};

const lidPeakC = (day: DayResult): number => Math.max(...day.skinC.top);

const hotter = (hot: Name, cool: Name): Check => ({
  id: `BMS 64 ${hot} over ${cool}`,
  what: `${hot} hotter than ${cool}: peak of a level surface in the sun, difference`,
  ...bms64,
  unit: 'K',
  low: 0,
  high: 40,
  reason: 'an order',
  ours: () => lidPeakC(days[hot]()) - lidPeakC(days[cool]()),
});

const belowAir = (name: Name): Check => ({
  id: `BMS 64 night, ${name}`,
  what: `${name}: lid against the air in the clear night, lowest`,
  ...bms64,
  unit: 'K',
  low: -15,
  high: 0,
  reason: 'all were below the air on clear nights',
  ours: () => lidBelowAirK(days[name]()),
});

/** A closed room of one cubic metre with thin walls. */
const room = (solarAbsorptance: number) =>
  once(() =>
    dayOf({
      box: { ...FREE, widthM: 1, heightM: 1, depthM: 1, massKg: 60, mountHeightM: 0.5, solarAbsorptance },
      place: { latitudeDeg: 28.6, longitudeDeg: 77.2, altitudeM: 220, timeZone: 'Asia/Kolkata' },
    }),
  );
const black = room(0.95);
const white = room(0.26);
const m2 = {
  source: 'Bansal, Garg and Kothari 1992, Build. Environ. 27:31, abstract',
  status: 'verified' as const,
  unit: 'K',
  assumed:
    'sheet without insulation, 60 kg, absorptance 0.95 and 0.26, free, 28.6 N, 21 June, 26 to 40 degC, 1.5 m/s; walls and floor of the rooms are not in the abstract',
};

export const FINISHES: Topic = {
  title: 'Finishes by day and by night',
  text: 'Orders that were measured must come out as orders.',
  checks: [
    hotter('flat white', 'glossy white'),
    hotter('aluminium foil', 'flat white'),
    hotter('aluminium paint', 'aluminium foil'),
    hotter('grey', 'aluminium foil'),
    hotter('green', 'grey'),
    hotter('lampblack', 'grey'),
    {
      id: 'BMS 64 foil over white, inside',
      what: 'aluminium foil hotter than flat white, as above: peak of the air inside the whole box, difference',
      ...bms64,
      unit: 'K',
      low: 0,
      high: 40,
      reason: 'the order of the surfaces, asked of a box',
      ours: () => days['aluminium foil']().peakInsideAirC - days['flat white']().peakInsideAirC,
      outside:
        'the order was measured on surfaces; the sides and the bottom of a box look at hot ground, whose long-wave heat bare metal turns away and white paint takes in',
    },
    belowAir('glossy white'),
    belowAir('aluminium foil'),
    belowAir('lampblack'),
    {
      id: 'M2 peak',
      what: 'closed test room of 1 m3, black over white: air inside at the peak; published up to 7',
      ...m2,
      low: 0,
      high: 7,
      reason: 'as published',
      ours: () => apartK(black(), white()).atPeak,
      outside:
        'a test room has a floor and walls with some resistance, which store heat; ours is a box of bare sheet on a post, whose air follows its skins',
    },
    {
      id: 'M2 night',
      what: 'the same in the coldest hour; published equal',
      ...m2,
      low: -1,
      high: 1,
      reason: 'equal within a kelvin',
      ours: () => apartK(black(), white()).atNight,
    },
  ],
};
