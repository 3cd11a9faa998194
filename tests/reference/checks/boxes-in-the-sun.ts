/** Boxes in the sun beside measurements and rules of the trade. */
import { dayOf, FREE, HOT_DAY, hottestWay, lidBelowAirK, riseAtPeakK, type Trial } from '../boxes.ts';
import { type BandCheck, byHalf, type Topic } from '../check.ts';

const vegas = { latitudeDeg: 36.2, longitudeDeg: -115.1, altitudeM: 600, timeZone: 'America/Los_Angeles' };
const madrid = { latitudeDeg: 40.4, longitudeDeg: -3.7, altitudeM: 650, timeZone: 'Europe/Madrid' };

const cabinet: Trial = {
  box: { ...FREE, widthM: 0.75, heightM: 1.2, depthM: 0.45, massKg: 80, mountHeightM: 0.7, solarAbsorptance: 0.5 },
  climate: { designDay: { ...HOT_DAY, maxC: 48.9 } },
};
const sealed = (box: Trial['box']): Trial => ({
  box: { solarAbsorptance: 0.5, ...box },
  climate: { designDay: { ...HOT_DAY, maxC: 46 } },
});
const conduit: Trial = {
  box: {
    ...{ ...FREE, widthM: 1, heightM: 0.03, depthM: 0.03, massKg: 1, mountHeightM: 0.9 },
    ...{ solarAbsorptance: 0.7, emittance: 0.28 },
  },
  place: vegas,
  climate: { designDay: { ...HOT_DAY, date: '2026-07-05', maxC: 43, windMs: 2, dewPointC: 2 } },
  albedo: 0.15,
};
const node: Trial = {
  box: { widthM: 0.1, heightM: 0.1, depthM: 0.05, massKg: 0.3, powerW: 0.5, solarAbsorptance: 0.85 },
  place: madrid,
  climate: {
    designDay: { date: '2026-07-15', maxC: 38, dailyRangeK: 17, dewPointC: 9, windMs: 1, linkeTurbidity: 3.5 },
  },
};
const rail: Trial = {
  box: {
    ...{ ...FREE, widthM: 1, heightM: 0.17, depthM: 0.07, massKg: 60, mountHeightM: 0.15 },
    ...{ solarAbsorptance: 0.8, emittance: 0.85 },
  },
  climate: { designDay: { ...HOT_DAY, maxC: 35, dewPointC: 12, windMs: 2 } },
};
const plywood: Trial = {
  box: {
    ...{ ...FREE, widthM: 0.5, heightM: 0.24, depthM: 0.5, massKg: 5, mountHeightM: 0.5 },
    ...{ solarAbsorptance: 0.95, emittance: 0.9 },
  },
  climate: { designDay: { ...HOT_DAY, maxC: 30, dewPointC: 5, windMs: 1 } },
};
const screen = [{ kind: 'front' as const, distanceM: 1.5, heightM: 6, widthM: 40 }];
const west: Trial = { azimuthDeg: 270 };

const small = (solarAbsorptance: number, more: Trial['box'] = {}): Trial => ({ box: { solarAbsorptance, ...more } });

/** Rise of the air inside, at its peak, above the air of that time. */
const rise = (trial: Trial) => (): number => riseAtPeakK(dayOf(trial));
const riseOnHottestWall = (trial: Trial) => (): number => riseAtPeakK(hottestWay(trial));

const summer = 'no heat of its own, 33 N, 21 June, 26 to 40 degC, 1.5 m/s';
const judged = {
  source: 'a judgement from M1, M3 at 0.9 m, M13, E2 and E7',
  status: 'common practice',
  unit: 'K',
  reason: 'as judged, before ours was computed',
} as const;

/** 8c-3: a small sealed box without heat of its own under 800 to 1000 W/m2 and 1 to 2 m/s. */
const judgedBoxes: readonly BandCheck[] = (
  [
    ['light', 0.3, 5, 17],
    ['dark', 0.9, 15, 35],
  ] as const
).flatMap(([name, absorptance, low, high]): BandCheck[] => [
  {
    id: `8c-3 ${name}, free`,
    what: `small sealed box, ${name} finish, on a post: air inside above air`,
    ...judged,
    low,
    high,
    assumed: `absorptance ${absorptance}, ${summer}`,
    ours: rise(small(absorptance, FREE)),
  },
  {
    id: `8c-3 ${name}, wall`,
    what: `the same on the hottest of eight brick walls`,
    ...judged,
    low,
    high,
    assumed: `absorptance ${absorptance}, ${summer}`,
    ours: riseOnHottestWall(small(absorptance)),
    ...(name === 'light' && {
      outside:
        'by less than a tenth of a kelvin, above a band that was judged and not measured: the wind of the lee is taken for every wall, and the hottest of eight is told',
    }),
  },
]);

const trade = {
  source: 'common practice, after GR-487 (46 degC outside, 65 degC inside)',
  status: 'common practice',
  unit: 'K',
} as const;
const aboutHalf = 'said to be about so much: half to one and a half of it';

export const BOXES_IN_THE_SUN: Topic = {
  title: 'Boxes in the sun',
  text:
    'Bands, each with what had to be assumed because the source does not say it. Nothing is fitted: a row outside its band stays ' +
    'there, with the reason.',
  checks: [
    {
      id: 'M1',
      what: 'unventilated metal cabinet, free: air inside above 48.9 degC outside; published about 16.7',
      source: 'Bell System Technical Journal, February 1982, p. 227, abstract (1b)',
      status: 'verified',
      unit: 'K',
      ...byHalf(16.7),
      reason: aboutHalf,
      assumed: '0.75 m by 1.2 m by 0.45 m, 80 kg, absorptance 0.5, no heat of its own, 33 N, 21 June, 1.5 m/s',
      ours: rise(cabinet),
    },
    {
      id: '1b free',
      what: 'sealed box in full sun, free, 46 degC outside: rise; the rule says some 18',
      ...trade,
      ...byHalf(18),
      reason: aboutHalf,
      assumed: 'small box, absorptance 0.5, no heat of its own, 33 N, 21 June, 1.5 m/s',
      ours: rise(sealed(FREE)),
    },
    {
      id: '1b wall',
      what: 'the same on the hottest of eight brick walls',
      ...trade,
      ...byHalf(18),
      reason: aboutHalf,
      assumed: 'as above, at the wall the coefficient of the wind halved',
      ours: riseOnHottestWall(sealed({})),
    },
    {
      id: 'M3',
      what: 'inside of a conduit 0.9 m above a roof in full sun: air inside above air; published about 15',
      source: 'Brender and Lindsey 2008, IEEE Trans. Ind. Appl. 44(6), abstract',
      status: 'verified',
      unit: 'K',
      ...byHalf(15),
      reason: aboutHalf,
      assumed:
        'square tube of 0.03 m, galvanised (absorptance 0.7, emittance 0.28), over dry ground of albedo 0.15 in place of the roof, 36.2 N, 5 July, 43 degC, 2 m/s',
      ours: rise(conduit),
      outside:
        'the program lets the wind run along the metre of a box; across a thin tube it sheds two to three times as much heat for each square metre, and a box is what the program is for',
    },
    {
      id: 'M7',
      what: 'sensor node on a facade in direct sun near Madrid: electronics at the peak; published above 60',
      source: 'TU Graz research note, RELYonIT',
      status: 'verified',
      unit: 'degC',
      low: 60,
      high: 85,
      reason: 'above 60 as published; 85 is where such nodes stop',
      assumed:
        '0.1 m by 0.1 m by 0.05 m, 0.5 W, absorptance 0.85, hottest of eight brick walls, 15 July, 38 degC, 1 m/s',
      ours: () => hottestWay(node).peakElectronicsC,
    },
    {
      id: 'M12',
      what: 'the same box on a west wall in the sun, over one in the shade: air inside at the peak; published for cars 8',
      source: 'Selover and Middel et al. 2016, Vanos 2018: matched pairs of cars',
      status: 'verified',
      unit: 'K',
      low: 0,
      high: 40,
      reason: 'an order: sun over shade',
      assumed: `absorptance 0.9, ${summer}; the shade is a screen 6 m high, 1.5 m before the wall`,
      ours: () => dayOf(west).peakInsideAirC - dayOf({ ...west, wall: { obstructions: screen } }).peakInsideAirC,
    },
    {
      id: 'M13',
      what: 'rail in the sun: peak above the peak of the air; published about 19',
      source: 'Federal Railroad Administration, January 2016, abstract',
      status: 'verified',
      unit: 'K',
      ...byHalf(19),
      reason: aboutHalf,
      assumed:
        'a metre of rail as a closed box of 0.17 m by 0.07 m and 60 kg near the ground, rusty (absorptance 0.8, emittance 0.85), 33 N, 21 June, 35 degC, 2 m/s',
      ours: () => {
        const day = dayOf(rail);
        return day.peakInsideAirC - day.peakOutsideAirC;
      },
    },
    {
      id: '5.9',
      what: 'black lid of an airtight box in a very clear night: lowest against the air; published 3 to 8 below',
      source: 'ASME IMECE2013 vol. 6A, abstract',
      status: 'verified',
      unit: 'K',
      low: -8,
      high: -3,
      reason: 'as published',
      assumed: '0.5 m by 0.5 m by 0.24 m, all of it sheet, free, 16 to 30 degC, dew point 5 degC, 1 m/s',
      ours: () => lidBelowAirK(dayOf(plywood)),
    },
    ...judgedBoxes,
  ],
};
