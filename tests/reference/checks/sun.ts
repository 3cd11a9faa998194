/** The sun's place, sunrise, air mass and pressure. */
import { extraterrestrialNormal, type SunPosition, sunPosition } from '../../../model/index.ts';
import { degrees } from '../../../model/solar/angles.ts';
import { pressureAtAltitude, relativeAirMass } from '../../../model/solar/atmosphere.ts';
import { equationOfTimeMin } from '../../../model/solar/extraterrestrial.ts';
import { cosIncidence } from '../../../model/solar/transposition.ts';
import { type Check, shareOf, type Topic } from '../check.ts';
import { astronomyEngine, CEILING_DEG, compareSun, INSTANTS, nrelSpa } from '../sun-comparison.ts';
import { SUNRISE_APPARENT_DEG } from '../sunrise.ts';
import { SUNRISE_CHECKS } from './sunrise.ts';

const spa = (): SunPosition => sunPosition(new Date('2003-10-17T19:30:30Z'), 39.742476, -105.1786);
const spaCommon = {
  source: 'Reda and Andreas, NREL/TP-560-34302, table A5.1 (via tests of pvlib)',
  status: 'verified',
} as const;
const spaFromMemory = { source: 'Reda and Andreas, NREL/TP-560-34302', status: 'from memory' } as const;
const refraction = 'refraction there for 820 hPa and 11 degC, ours for 1010 hPa and 10 degC';

const airMasses: readonly [id: string, elevationDeg: number, value: number, status: 'verified' | 'recomputed'][] = [
  ['2.10', 30, 1.99429, 'verified'],
  ['2.10', 45, 1.4126, 'verified'],
  ['2.10', 60, 1.15399, 'verified'],
  ['2.10', 90, 0.99971, 'verified'],
  ['3.6', 0.1, 36.467, 'verified'],
  ['3.6', 10, 5.586, 'verified'],
  ['3.7', 0, 37.92, 'recomputed'],
  ['3.7', 5, 10.306, 'recomputed'],
  ['3.7', 20, 2.903, 'recomputed'],
];

const EXTRATERRESTRIAL = [1410, 1397, 1378, 1354, 1334, 1323, 1324, 1336, 1357, 1380, 1400, 1411];

/** Extremes of the year and a worked example, minutes. */
const equations: readonly [
  date: string,
  value: number,
  source: string,
  status: 'verified' | 'recomputed' | 'from memory',
][] = [
  ['2003-10-17', 14.64, spaCommon.source, 'verified'],
  ['2026-07-21', -6.35, 'ASHRAE Handbook of Fundamentals 2009, chapter 14, Atlanta (2.13)', 'recomputed'],
  ['2026-02-11', -14.2, 'almanac', 'from memory'],
  ['2026-05-14', 3.7, 'almanac', 'from memory'],
  ['2026-07-26', -6.5, 'almanac', 'from memory'],
  ['2026-11-03', 16.4, 'almanac', 'from memory'],
];

const atlanta = (): SunPosition => sunPosition(new Date('2009-07-21T19:00:00Z'), 33.64, -84.43);
const atlantaCommon = {
  source: 'ASHRAE Handbook of Fundamentals 2009, chapter 14, worked example (2.13)',
  status: 'recomputed',
  unit: 'deg',
} as const;

export const SUN: Topic = {
  title: 'Sun position, sunrise, air mass',
  text:
    'Elevations are apparent, refraction in them. Sunrise and sunset are found by halving intervals of `sunPosition`, for a centre of ' +
    "the sun 0.833 degrees below the horizon (34 minutes of arc of refraction and 16 of the sun's half breadth, the almanac's convention); " +
    `ours adds a constant refraction there, so that the height looked for is an apparent ${SUNRISE_APPARENT_DEG} degrees.`,
  checks: [
    {
      id: '3.1 elevation',
      what: 'worked example, 2003-10-17 12:30:30 at UTC-7, 39.742476 N 105.1786 W: apparent elevation',
      ...spaCommon,
      unit: 'deg',
      value: 39.888378,
      ours: () => spa().elevationDeg,
      allowed: CEILING_DEG,
      reason: refraction,
    },
    {
      id: '3.1 azimuth',
      what: 'the same: azimuth',
      ...spaCommon,
      unit: 'deg',
      value: 194.34024,
      ours: () => spa().azimuthDeg,
      allowed: CEILING_DEG,
      reason: "a twenty-fifth of the sun's breadth",
    },
    {
      id: '3.2 incidence',
      what: 'the same on a slope of 30 degrees turned 10 degrees east of south: angle of incidence',
      ...spaFromMemory,
      unit: 'deg',
      value: 25.187,
      ours: () => degrees(Math.acos(cosIncidence(spa(), 30, 170))),
      allowed: CEILING_DEG,
      reason: refraction,
    },
    ...SUNRISE_CHECKS,
    {
      id: '2.13 elevation',
      what: 'Atlanta, 33.64 N 84.43 W, 21 July 14:00 EST: elevation',
      ...atlantaCommon,
      value: 68.8,
      ours: () => atlanta().elevationDeg,
      allowed: 0.3,
      reason: 'declination there from a sine of the date; hour angle taken a minute early',
    },
    {
      id: '2.13 azimuth',
      what: 'the same: azimuth',
      ...atlantaCommon,
      value: 180 + 56.3,
      ours: () => atlanta().azimuthDeg,
      allowed: 0.6,
      reason: 'as above; at this height a minute of time turns the sun by 0.5 degrees',
    },
    {
      id: '2.13 incidence',
      what: 'the same: angle of incidence on a south wall',
      ...atlantaCommon,
      value: 78.4,
      ours: () => degrees(Math.acos(cosIncidence(atlanta(), 90, 180))),
      allowed: 0.3,
      reason: 'as above',
    },
    ...equations.map(
      ([date, value, source, status]): Check => ({
        id: `equation of time ${date}`,
        what: `equation of time on ${date}`,
        source,
        status,
        unit: 'min',
        value,
        ours: () => equationOfTimeMin(new Date(`${date}T12:00:00Z`)),
        allowed: 0.6,
        reason: "what Spencer's series is good for; a tenth of a degree",
      }),
    ),
    ...(
      [
        ['the NREL solar position algorithm (nrel-spa)', nrelSpa],
        ['astronomy-engine', astronomyEngine],
      ] as const
    ).map(
      ([name, algorithm]): Check => ({
        id: `random suns, ${name.includes('NREL') ? 'nrel-spa' : name}`,
        what: `largest angle between our sun and that of ${name}, ${INSTANTS} random instants 1990 to 2060 above 5 degrees`,
        source: 'the package, run beside ours',
        status: 'recomputed',
        unit: 'deg',
        value: 0,
        ours: () => compareSun(algorithm).largestDeg,
        allowed: CEILING_DEG,
        reason: "a twenty-fifth of the sun's breadth",
      }),
    ),
    ...airMasses.map(
      ([id, elevationDeg, value, status]): Check => ({
        id: `${id} at ${elevationDeg}`,
        what: `relative air mass at an elevation of ${elevationDeg} degrees`,
        source:
          id === '2.10'
            ? 'Kasten and Young 1989 (via tests of pyclearsky)'
            : 'Kasten and Young 1989 (via tests of pvlib)',
        status,
        unit: '',
        value,
        ours: () => relativeAirMass(elevationDeg),
        allowed: shareOf(value, 0.0005),
        reason: 'last printed figure',
      }),
    ),
    ...(
      [
        [0, 101_325],
        [1000, 89_875],
        [8000, 35_600],
      ] as const
    ).map(
      ([altitudeM, value]): Check => ({
        id: `3.8 at ${altitudeM} m`,
        what: `pressure of the standard atmosphere at ${altitudeM} m`,
        source: 'US Standard Atmosphere (via tests of pvlib)',
        status: 'verified',
        unit: 'Pa',
        value,
        ours: () => pressureAtAltitude(altitudeM),
        allowed: shareOf(value, 0.002),
        reason: 'round figures; moves an air mass by no more',
      }),
    ),
    ...EXTRATERRESTRIAL.map((value, month): Check => {
      const date = `2026-${String(month + 1).padStart(2, '0')}-21`;
      return {
        id: `2.9 month ${month + 1}`,
        what: `extraterrestrial irradiance normal to the sun on ${date}`,
        source: 'ASHRAE Handbook of Fundamentals 2009, chapter 14, table 2 (via tests of pyclearsky)',
        status: 'verified',
        unit: 'W/m2',
        value,
        ours: () => extraterrestrialNormal(new Date(`${date}T12:00:00Z`)),
        allowed: shareOf(value, 0.006),
        reason: 'solar constant there 1367, ours 1366.1, and one term of the series against four',
      };
    }),
  ],
};
