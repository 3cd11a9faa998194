/** How fast parts age: at a step, over the day, and box against box. */
import { KELVIN } from '../../physical-constants.ts';
import {
  ACTIVATION_EV,
  arrheniusFactor,
  BATTERY_HALVES_PER_K,
  BATTERY_RATED_C,
  BOLTZMANN_EVK,
  batteryAgeing,
} from '../../siting/ageing.ts';
import type { PlayedDay } from '../../siting/played-day.ts';
import type { Comparison } from '../comparison.ts';
import { AGEING_AGAINST_C, BATTERY_RATED_YEARS, batteryYearsText, dayAgeing } from '../day-ageing.ts';
import { type Explanation, explanation } from './explanation.ts';
import { call, difference, power, product, quotient } from './formula.ts';

const ARRHENIUS =
  'Arrhenius acceleration factor, NIST/SEMATECH e-Handbook of Statistical Methods, section 8.1.5.1; 0.7 eV for all parts: common practice, no source';

/** Wear of the electronics at a step against 40 degC. */
export function explainWearNow(played: PlayedDay, step: number): Explanation {
  const celsius = played.result.electronicsC[step] as number;
  return explanation({
    what: 'wearNow',
    title: 'Wear of the electronics at this moment',
    symbol: 'w',
    formula: call('exp', product(quotient('E', 'k'), difference(quotient(1, 'T_0'), quotient(1, 'T_el')))),
    given: {
      E: ['activation energy', ACTIVATION_EV, 'eV'],
      k: ['Boltzmann constant', BOLTZMANN_EVK, 'eV/K'],
      T_0: [`temperature that it is told against, ${AGEING_AGAINST_C} °C`, AGEING_AGAINST_C + KELVIN, 'K'],
      T_el: ['temperature of the electronics', celsius + KELVIN, 'K'],
    },
    value: arrheniusFactor(celsius, AGEING_AGAINST_C),
    unit: '',
    source: ARRHENIUS,
    atUtc: played.result.stepsUtc[step] as Date,
    within: 5e-3 * arrheniusFactor(celsius, AGEING_AGAINST_C),
  });
}

/** Wear of the electronics over the day. */
export function explainWear({ result }: PlayedDay): Explanation {
  const factors = result.electronicsC.map((celsius) => arrheniusFactor(celsius, AGEING_AGAINST_C));
  return explanation({
    what: 'wear',
    title: 'Wear of the electronics over the day',
    symbol: 'W',
    formula: quotient('Σw', 'N'),
    given: {
      Σw: ['sum of the wear at each step', factors.reduce((a, b) => a + b, 0), '', 'wearNow'],
      N: ['steps of the day', factors.length, ''],
    },
    value: dayAgeing(result).electronicsAgainst40C,
    unit: '',
    source: ARRHENIUS,
    note: `1 is the wear at ${AGEING_AGAINST_C} °C all day.`,
  });
}

/** Ageing of a battery at a step against 25 degC. */
export function explainBatteryNow({ result }: PlayedDay, step: number): Explanation {
  const celsius = (result.batteryC ?? result.insideAirC)[step] as number;
  return explanation({
    what: 'batteryNow',
    title: 'Ageing of a battery at this moment',
    symbol: 'b',
    formula: power(2, quotient(call('max', 0, difference('T_bat', 'T_25')), 'ΔT')),
    given: {
      T_bat: [result.batteryC === null ? 'temperature of the air inside' : 'temperature of the battery', celsius, '°C'],
      T_25: ['temperature that its maker gives its life for', BATTERY_RATED_C, '°C'],
      ΔT: ['kelvins that halve its life', BATTERY_HALVES_PER_K, 'K'],
    },
    value: batteryAgeing(celsius),
    unit: '',
    source: 'Life halves for each 10 K above 25 °C and gains nothing below: common practice, no source',
    atUtc: result.stepsUtc[step] as Date,
  });
}

/** Years that a battery would last if every day were like this one. */
export function explainBatteryYears({ result }: PlayedDay): Explanation {
  const factors = (result.batteryC ?? result.insideAirC).map(batteryAgeing);
  return explanation({
    what: 'batteryYears',
    title: 'Life of a battery if every day were like this one',
    symbol: 'L',
    formula: quotient(product('L_25', 'N'), 'Σb'),
    given: {
      L_25: ['life at 25 °C', BATTERY_RATED_YEARS, 'years'],
      N: ['steps of the day', factors.length, ''],
      Σb: ['sum of the ageing at each step', factors.reduce((a, b) => a + b, 0), '', 'batteryNow'],
    },
    value: dayAgeing(result).batteryYears,
    unit: 'years',
    source: 'Common practice, no source',
    note: batteryYearsText('metric'),
  });
}

/** Wear of one box against the other. */
export function explainAgeingFactor({ a, b, ageingFactor }: Comparison): Explanation {
  return explanation({
    what: 'ageingFactor',
    title: 'Wear of the electronics in B against A',
    symbol: 'F',
    formula: quotient('W_B', 'W_A'),
    given: {
      W_B: ['wear in box B against 40 °C', b.ageing.electronicsAgainst40C, '', 'wear'],
      W_A: ['wear in box A against 40 °C', a.ageing.electronicsAgainst40C, '', 'wear'],
    },
    value: ageingFactor,
    unit: '',
    source: ARRHENIUS,
  });
}

/** Kelvins between the peaks. */
export function explainPeakDifference({ a, b, peakDifferenceK }: Comparison): Explanation {
  return explanation({
    what: 'peakDifference',
    title: 'Difference of the peaks',
    symbol: 'ΔT',
    formula: difference('T_B', 'T_A'),
    given: {
      T_B: ['highest temperature of the air inside B', b.played.result.peakInsideAirC, '°C', 'insideAir'],
      T_A: ['highest temperature of the air inside A', a.played.result.peakInsideAirC, '°C', 'insideAir'],
    },
    value: peakDifferenceK,
    unit: 'K',
    quantity: 'temperatureDifference',
    source: 'Definition: the hottest moments of the two, which may lie at different hours',
  });
}
