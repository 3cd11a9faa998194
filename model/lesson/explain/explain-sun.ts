/** Where the sun stands, what the clear sky sends, and what of it falls on a face. */
import { resolvedClearDay } from '../../climate/design-climate.ts';
import type { Face } from '../../faces.ts';
import { KELVIN, SIGMA } from '../../physical-constants.ts';
import type { PlayedDay } from '../../siting/played-day.ts';
import { pressureAtAltitude, SEA_LEVEL_PRESSURE_PA } from '../../solar/atmosphere.ts';
import { sunPosition } from '../../solar/sun-position.ts';
import { type Explanation, explanation, type Given } from './explanation.ts';
import { call, difference, type Formula, minus, power, product, quotient, sum } from './formula.ts';
import { nodeName } from './node-names.ts';

const at = ({ result }: PlayedDay, step: number): Date => result.stepsUtc[step] as Date;

const sunUp = ({ suns }: PlayedDay, step: number): boolean => (suns[step]?.elevationDeg ?? 0) > 0;

/** Hours that the sun stands from its noon, as an angle. */
const hourAngleDeg = ({ solarHours }: PlayedDay, step: number): number => 15 * ((solarHours[step] as number) - 12);

/**
 * Height of the sun by the triangle of pole, zenith and sun. The declination is read off suncalc as the sun's height seen
 * from the pole on whose side it stands.
 */
export function explainSunHeight(played: PlayedDay, step: number): Explanation {
  const utc = at(played, step);
  const fromNorth = sunPosition(utc, 90, 0).elevationDeg;
  const declinationDeg = fromNorth > 0 ? fromNorth : -sunPosition(utc, -90, 0).elevationDeg;
  const { latitudeDeg } = played.site.place;
  return explanation({
    what: 'sunHeight',
    title: 'Height of the sun',
    symbol: 'h',
    formula: call(
      'asin',
      sum(product(call('sin', 'φ'), call('sin', 'δ')), product(call('cos', 'φ'), call('cos', 'δ'), call('cos', 'ω'))),
    ),
    given: {
      φ: ['latitude, north positive', latitudeDeg, '°'],
      δ: ['declination of the sun', declinationDeg, '°'],
      ω: ['hour angle: 15° for each hour from the noon of the sun', hourAngleDeg(played, step), '°'],
    },
    value: played.suns[step]?.elevationDeg ?? 0,
    unit: '°',
    quantity: 'angle',
    source:
      'Meeus, Astronomical Algorithms (2nd ed. 1998), eq. 13.6; the value itself is suncalc 2 after chapters 12, 16 and 25',
    note: 'The equation leaves out refraction, which lifts the sun by half a degree at the horizon and by less than a tenth above 10°; the equation of time is Spencer 1971, that of noon all day, within 0.6 minutes.',
    atUtc: utc,
    within: 0.8,
  });
}

/** Direct sun of a clear sky; null at night and on a tabulated day. */
export function explainDirect(played: PlayedDay, step: number): Explanation | null {
  const clear = clearTerms(played, step);
  if (clear === null) return null;
  const { given, f1 } = clear;
  const beam = product(
    sum(0.664, quotient(0.163, 'f_1')),
    'I_0',
    call('exp', product(-0.09, 'm', difference('T_L', 1))),
  );
  const share = quotient(difference(0.1, product(0.2, call('exp', minus('T_L')))), sum(0.1, quotient(0.882, 'f_1')));
  const cap = quotient(product('G', difference(1, share)), call('sin', 'h'));
  return explanation({
    what: 'direct',
    title: 'Direct sun, normal to it',
    symbol: 'I_b',
    formula: call('min', beam, cap),
    given: {
      I_0: given.I_0,
      m: given.m,
      T_L: given.T_L,
      f_1: f1,
      G: ['global irradiance on the horizontal', played.weather[step]?.ghi ?? 0, 'W/m²', 'global'],
      h: given.h,
    },
    value: played.weather[step]?.dni ?? 0,
    unit: 'W/m²',
    quantity: 'irradiance',
    source: SKY_SOURCE,
    atUtc: at(played, step),
    within: 2e-3 * (played.weather[step]?.dni ?? 0) + 0.5,
  });
}

/** Global irradiance of a clear sky; null at night and on a tabulated day. */
export function explainGlobal(played: PlayedDay, step: number): Explanation | null {
  const clear = clearTerms(played, step);
  if (clear === null) return null;
  const { given, f1, f2 } = clear;
  const formula: Formula = product(
    sum(product(5.09e-5, 'z'), 0.868),
    'I_0',
    call('sin', 'h'),
    call(
      'exp',
      product(minus(sum(product(3.92e-5, 'z'), 0.0387)), 'm', sum('f_1', product('f_2', difference('T_L', 1)))),
    ),
  );
  return explanation({
    what: 'global',
    title: 'Sun and sky on the horizontal',
    symbol: 'G',
    formula,
    given: { ...given, f_1: f1, f_2: f2, z: ['altitude above the sea', played.site.place.altitudeM, 'm'] },
    value: played.weather[step]?.ghi ?? 0,
    unit: 'W/m²',
    quantity: 'irradiance',
    source: SKY_SOURCE,
    atUtc: at(played, step),
    within: 2e-3 * (played.weather[step]?.ghi ?? 0) + 0.1,
  });
}

const SKY_SOURCE =
  'Ineichen and Perez 2002, Solar Energy 73(3):151-157; air mass of Kasten and Young 1989, eq. 3, by the pressure of the place';

function clearTerms(played: PlayedDay, step: number) {
  const day = resolvedClearDay(played.site);
  if (day === null || !sunUp(played, step)) return null;
  const { altitudeM } = played.site.place;
  const airMass = ((played.relativeAirMass[step] as number) * pressureAtAltitude(altitudeM)) / SEA_LEVEL_PRESSURE_PA;
  const given = {
    I_0: ['sun outside the atmosphere, normal to it (Spencer 1971)', played.extraterrestrialWm2, 'W/m²'],
    m: ['air mass at the pressure of the place', airMass, ''],
    T_L: ['Linke turbidity', day.linkeTurbidity, ''],
    h: ['height of the sun', played.suns[step]?.elevationDeg ?? 0, '°', 'sunHeight'],
  } as const satisfies Record<string, Given>;
  const f1: Given = ['exp(−z / 8000)', Math.exp(-altitudeM / 8000), ''];
  const f2: Given = ['exp(−z / 1250)', Math.exp(-altitudeM / 1250), ''];
  return { given, f1, f2 };
}

/** Direct sun on a face. */
export function explainBeam(played: PlayedDay, face: Face, step: number): Explanation {
  return explanation({
    what: `beam:${face}`,
    title: `Direct sun on ${nodeName(face)}`,
    symbol: 'G_b',
    formula: product(sum('I_b', 'I_c'), 'c'),
    given: {
      I_b: ['direct sun, normal to it', played.weather[step]?.dni ?? 0, 'W/m²', 'direct'],
      I_c: ['glow round the sun, normal to it', played.circumsolarWm2[step] as number, 'W/m²'],
      c: [
        'cosine of incidence, times the share of the face that the sun reaches',
        played.litCosine[face][step] as number,
        '',
      ],
    },
    value: played.beamWm2[face][step] as number,
    unit: 'W/m²',
    quantity: 'irradiance',
    source: 'Perez et al. 1990, Solar Energy 44(5):271-289, eq. 9; the share in the sun by rays to points on the face',
    atUtc: at(played, step),
  });
}

/** Long-wave radiation of the clear sky. */
export function explainSky(played: PlayedDay, step: number): Explanation {
  const { airC = 0, dewPointC = 0, skyLongwaveWm2 = 0 } = played.weather[step] ?? {};
  const emissivity = sum(
    0.758,
    product(0.521, 'x'),
    product(0.625, power('x', 2)),
    product(0.00012, difference('p', 1013.25)),
  );
  return explanation({
    what: 'sky',
    title: 'Long-wave radiation of the sky',
    symbol: 'L',
    formula: product(emissivity, 'σ', power('T_out', 4)),
    given: {
      x: ['dew point over 100 °C, held to −0.4 at least', Math.max(dewPointC, -40) / 100, ''],
      p: ['pressure of the place', pressureAtAltitude(played.site.place.altitudeM) / 100, 'hPa', 'pressure'],
      σ: ['Stefan-Boltzmann constant', SIGMA, 'W/(m² K⁴)'],
      T_out: ['temperature of the outside air', airC + KELVIN, 'K'],
    },
    value: skyLongwaveWm2,
    unit: 'W/m²',
    quantity: 'irradiance',
    source:
      "Berdahl and Martin 1984 with the coefficients of Li, Jiang and Coimbra 2017, Solar Energy 144:40; the pressure's term is Berdahl and Martin's",
    atUtc: at(played, step),
    within: 1e-3 * skyLongwaveWm2,
  });
}

/** Pressure of the place. */
export function explainPressure(played: PlayedDay): Explanation {
  const { altitudeM } = played.site.place;
  return explanation({
    what: 'pressure',
    title: 'Pressure of the air',
    symbol: 'p',
    formula: product(1013.25, power(difference(1, product(2.25577e-5, 'z')), 5.25588)),
    given: { z: ['altitude above the sea', altitudeM, 'm'] },
    value: pressureAtAltitude(altitudeM) / 100,
    unit: 'hPa',
    source: 'US Standard Atmosphere 1976, closed form for the troposphere',
  });
}
