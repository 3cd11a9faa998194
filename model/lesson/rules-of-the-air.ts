/** What may be said of two boxes of which power, wind, altitude or climate differs: why one of them is hotter. */
import { pressureAtAltitude } from '../solar/atmosphere.ts';
import { formatQuantity } from '../units.ts';
import { hotterBy, kelvins } from './both-units.ts';
import type { Pair } from './comparison.ts';
import { insideSwingK, outsideSwingK } from './day-facts.ts';
import {
  ALIKE_K,
  aboveOtherK,
  altitudeM,
  apart,
  byLess,
  daySunWh,
  excessAtPeakK,
  hotterThanOther,
  maxDni,
  meanDewC,
  of,
  powerW,
  skyDeficitWm2,
  wh,
  windMs,
} from './pair-facts.ts';
import type { Rule } from './rule.ts';

const byPower = (pair: Pair) => byLess(pair, powerW);
const byWind = (pair: Pair) => byLess(pair, windMs);
const byAltitude = (pair: Pair) => byLess(pair, altitudeM);

export const AIR_RULES: readonly Rule<Pair>[] = [
  {
    id: 'more-power-hotter',
    condition: 'one box gives off more heat inside and peaks higher',
    where: 'everywhere',
    holds: (pair) => of(pair, 'power') && aboveOtherK(pair, byPower(pair).more) > ALIKE_K,
    text: (pair, units) => {
      const { a, b } = pair;
      const moreW = powerW(b) - powerW(a);
      return `Each watt inside has to leave through the skins: ${formatQuantity('power', Math.abs(moreW), units)} ${moreW < 0 ? 'less' : 'more'} in B make the peak ${hotterBy(pair.peakDifferenceK, units)}.`;
    },
  },
  {
    id: 'twice-the-power-is-less-than-twice-the-kelvins',
    condition:
      'one box gives off more heat than the other, and its air lies above that outside at the peak by less than that many times as much',
    where: 'everywhere',
    holds: (pair) => {
      const { less, more } = byPower(pair);
      const times = powerW(more.box) / powerW(less.box);
      return of(pair, 'power') && powerW(less.box) > 0 && excessAtPeakK(more.box) < times * excessAtPeakK(less.box);
    },
    text: (pair, units) => {
      const { less, more } = byPower(pair);
      const times = (powerW(more.box) / powerW(less.box)).toFixed(1);
      return `With ${times} times the power the air inside ${more.letter} lies ${kelvins(excessAtPeakK(more.box), units)} above that outside at the peak instead of ${kelvins(excessAtPeakK(less.box), units)}, less than that many times as much: the sun has its share, and a hotter box convects and radiates better.`;
    },
  },
  {
    id: 'wind-cools',
    condition: 'one box has more wind and peaks lower',
    where: 'everywhere',
    holds: (pair) => of(pair, 'wind') && aboveOtherK(pair, byWind(pair).more) < -ALIKE_K,
    text: (pair, units) => {
      const { less, more } = byWind(pair);
      return more.letter === 'B'
        ? `Moving air carries more heat off the skins for the same difference in temperature: the peak is ${hotterThanOther(pair, more, units)}.`
        : `Calmer air carries less heat off the skins for the same difference in temperature: with ${formatQuantity('speed', windMs(less.box), units)} instead of ${formatQuantity('speed', windMs(more.box), units)} the peak of B is ${hotterThanOther(pair, less, units)}.`;
    },
  },
  {
    id: 'wind-cannot-cool-below-the-air',
    condition: 'one box has more wind, and at its peak the air inside is still hotter than that outside',
    where: 'everywhere',
    holds: (pair) => of(pair, 'wind') && excessAtPeakK(byWind(pair).more.box) > 0,
    text: (pair, units) => {
      const { more } = byWind(pair);
      return `Wind can take the box towards the air and no further: at its peak ${more.letter}, which has more of it, is still ${kelvins(excessAtPeakK(more.box), units)} above it.`;
    },
  },
  {
    id: 'thin-air-cools-worse',
    condition: 'one box stands higher in the same air temperature and peaks higher',
    where: 'everywhere',
    holds: (pair) => of(pair, 'altitude') && aboveOtherK(pair, byAltitude(pair).more) > ALIKE_K,
    text: (pair, units) => {
      const { more } = byAltitude(pair);
      const [a, b] = [pressureAtAltitude(altitudeM(pair.a)), pressureAtAltitude(altitudeM(pair.b))];
      const air =
        more.letter === 'B'
          ? 'the air is thinner and carries less heat away'
          : 'the air is denser and carries more heat away';
      return `At ${((b / a) * 100).toFixed(0)} % of the pressure ${air} for each kelvin: with the same air temperature B peaks ${hotterBy(pair.peakDifferenceK, units)}.`;
    },
  },
  {
    id: 'more-sun-up-there',
    condition: 'one box stands higher, and its direct sun is stronger',
    where: 'everywhere',
    holds: (pair) => {
      const { less, more } = byAltitude(pair);
      return of(pair, 'altitude') && maxDni(more.box.played) > maxDni(less.box.played) + 1;
    },
    text: (pair, units) => {
      const { less, more } = byAltitude(pair);
      const sun = (of: typeof more) => formatQuantity('irradiance', maxDni(of.box.played), units);
      return `There is less air above ${more.letter}: direct sun of up to ${sun(more)} instead of ${sun(less)}.`;
    },
  },
  {
    id: 'dry-sky-is-colder',
    condition: 'one of the two climates has a lower mean dew point, and its sky radiates less against its air',
    where: 'here',
    holds: (pair) =>
      of(pair, 'climate') && Math.abs(meanDewC(pair.a.played) - meanDewC(pair.b.played)) > 1 && drySkyColder(pair),
    text: ({ a, b }, units) => {
      const [dry, moist, box] = meanDewC(a.played) < meanDewC(b.played) ? [a, b, 'A'] : [b, a, 'B'];
      const gap = (of: typeof a) => formatQuantity('irradiance', skyDeficitWm2(of.played), units);
      return `Between these two climates the drier one, that of box ${box}, has the colder sky: it sends ${gap(dry)} less than a black body as warm as the air, the other ${gap(moist)}. Dry air lets more heat out.`;
    },
  },
  {
    id: 'air-swings-box-swings',
    condition: 'the climate in which the outside air swings more makes the box swing more',
    where: 'here',
    holds: (pair) =>
      of(pair, 'climate') &&
      Math.abs(outsideSwingK(pair.a.played) - outsideSwingK(pair.b.played)) > 1 &&
      outsideSwingK(pair.a.played) > outsideSwingK(pair.b.played) ===
        insideSwingK(pair.a.played) > insideSwingK(pair.b.played),
    text: ({ a, b }, units) => {
      const [more, less, box] = outsideSwingK(a.played) > outsideSwingK(b.played) ? [a, b, 'A'] : [b, a, 'B'];
      return `Of these two, the air of box ${box} swings more from night to day, ${kelvins(outsideSwingK(more.played), units)} against ${kelvins(outsideSwingK(less.played), units)}, and so does the air inside: ${kelvins(insideSwingK(more.played), units)} against ${kelvins(insideSwingK(less.played), units)}.`;
    },
  },
  {
    id: 'air-makes-the-difference',
    condition:
      'the difference of the outside maxima is at least half of the difference of the peaks, and of the same sign',
    where: 'here',
    holds: (pair) => of(pair, 'climate') && apart(pair) && airExplains(pair),
    text: (pair, units) =>
      `In these two climates most of the difference is that of the air itself: its maximum is ${hotterBy(airDifferenceK(pair), units)} in B, the box ${hotterBy(pair.peakDifferenceK, units)}.`,
  },
  {
    id: 'sky-and-wind-make-the-difference',
    condition:
      'the difference of the outside maxima is less than half of the difference of the peaks, or of the other sign',
    where: 'here',
    holds: (pair) => of(pair, 'climate') && apart(pair) && !airExplains(pair),
    text: (pair, units) => {
      const { a, b } = pair;
      const wind = (box: typeof a) => formatQuantity('speed', windMs(box), units);
      return `In these two climates the air does not explain it: its maximum is ${hotterBy(airDifferenceK(pair), units)} in B, the box ${hotterBy(pair.peakDifferenceK, units)}. Sun, sky and wind differ, too: A takes in ${wh(daySunWh(a))} of sun over the day in a free wind of ${wind(a)}, B ${wh(daySunWh(b))} in ${wind(b)}.`;
    },
  },
];

const airDifferenceK = ({ a, b }: Pair): number => b.played.result.peakOutsideAirC - a.played.result.peakOutsideAirC;

function airExplains(pair: Pair): boolean {
  const airK = airDifferenceK(pair);
  return airK * pair.peakDifferenceK > 0 && Math.abs(airK) >= Math.abs(pair.peakDifferenceK) / 2;
}

function drySkyColder({ a, b }: Pair): boolean {
  const [dry, moist] = meanDewC(a.played) < meanDewC(b.played) ? [a, b] : [b, a];
  return skyDeficitWm2(dry.played) > skyDeficitWm2(moist.played);
}
