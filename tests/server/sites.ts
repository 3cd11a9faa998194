/** Invented sites that the server is tested with. */
import { DEMO_SITE, type SiteInput } from '../../model/index.ts';

const box = { widthM: 0.3, heightM: 0.35, depthM: 0.12, powerW: 15 };

/** A small site; what is left out is filled in by the model. */
export const SMALL_SITE: SiteInput = {
  title: 'Two walls',
  place: { latitudeDeg: 51.5, longitudeDeg: -0.1 },
  climate: { designDay: { date: '2026-07-05', maxC: 32 } },
  box,
  walls: [
    { name: 'north', azimuthDeg: 0 },
    { name: 'south', azimuthDeg: 180 },
  ],
};

/** A box on a post with all that may be inside, in air so moist that water settles on it. */
export const FULL_BOX: SiteInput = {
  ...SMALL_SITE,
  climate: { designDay: { date: '2026-07-05', maxC: 32, dewPointC: 19.5 }, coldNight: { minC: -12 } },
  box: { ...box, powerW: 0.1, mount: 'post', battery: { massKg: 6, powerW: 0 }, compartments: {} },
};

/** Sites whose answers must not depend on the way they come in. */
export const SITES: [title: string, site: SiteInput][] = [
  ['the built-in example', DEMO_SITE],
  ['a small site with defaults', SMALL_SITE],
  ['a box on a post, with battery and two rooms', FULL_BOX],
  [
    'text with units',
    {
      ...SMALL_SITE,
      place: { latitudeDeg: '33.2 deg', longitudeDeg: -113.4, altitudeM: '1083 ft' },
      box: { widthM: '12 in', heightM: '14 in', depthM: '5 in', powerW: '0.015 kW', massKg: '7 lb' },
      limits: { maxC: '149 degF' },
      walls: [{ name: 'carport', azimuthDeg: 'SW', horizon: [['W', '12 deg']] }],
    },
  ],
  [
    'a standard cycle south of the equator',
    {
      ...SMALL_SITE,
      place: { latitudeDeg: -33.9, longitudeDeg: 18.4, timeZone: 'Africa/Johannesburg' },
      climate: { cycle: 'mil-std-810h-a1', date: '2026-01-15' },
    },
  ],
  [
    'the day the clock changes',
    {
      ...SMALL_SITE,
      place: { latitudeDeg: 52.5, longitudeDeg: 13.4, timeZone: 'Europe/Berlin' },
      climate: { designDay: { date: '2026-03-29', maxC: 24 } },
    },
  ],
];
