/** What may be said of two boxes that differ in one thing. */

import { KELVIN, SIGMA } from '../physical-constants.ts';
import type { PlayedDay } from '../siting/played-day.ts';
import { pressureAtAltitude } from '../solar/atmosphere.ts';
import { formatQuantity } from '../units.ts';
import { hotterBy, hoursText, kelvins } from './both-units.ts';
import type { Pair } from './comparison.ts';
import { batteryHalvingText } from './day-ageing.ts';
import { directSunSteps, hoursOf, insidePeakStep, insideSwingK, outsideSwingK, takenInW } from './day-facts.ts';
import type { Difference } from './difference.ts';
import type { Rule } from './rule.ts';

/** Boxes whose peaks lie closer together are called alike, K. */
export const ALIKE_K = 0.5;

const of = (pair: Pair, kind: Difference['kind']): boolean => pair.difference.kind === kind;
const cooler = ({ peakDifferenceK }: Pair): boolean => peakDifferenceK < -ALIKE_K;
const hotter = ({ peakDifferenceK }: Pair): boolean => peakDifferenceK > ALIKE_K;

/** Sun taken in by box and hood over the day, Wh. */
function daySunWh(played: PlayedDay): number {
  return (played.suns.reduce((sum, _, k) => sum + takenInW(played, k), 0) * played.stepS) / 3600;
}

/** Hours of direct sun on front, sides or lid. */
function sunHours(played: PlayedDay): number {
  const faces = ['front', 'left', 'right', 'top'] as const;
  return hoursOf(played, [...new Set(faces.flatMap((face) => directSunSteps(played, face).all))]);
}

/** Mean of what the air above the ground would radiate as a black body minus what the sky sends, W/m2. */
function skyDeficitWm2({ weather }: PlayedDay): number {
  const deficit = weather.map(({ airC, skyLongwaveWm2 }) => SIGMA * (airC + KELVIN) ** 4 - skyLongwaveWm2);
  return deficit.reduce((sum, one) => sum + one, 0) / deficit.length;
}

const meanDewC = ({ weather }: PlayedDay): number =>
  weather.reduce((sum, { dewPointC }) => sum + dewPointC, 0) / weather.length;

const maxDni = ({ weather }: PlayedDay): number => Math.max(...weather.map(({ dni }) => dni));

/** Smallest difference of the air inside to that outside over the day, K. */
const leastExcessK = ({ result }: PlayedDay): number =>
  Math.min(...result.insideAirC.map((c, k) => c - (result.outsideAirC[k] as number)));

const excessAtPeakK = ({ result, ...played }: PlayedDay): number => {
  const step = insidePeakStep({ result, ...played });
  return (result.insideAirC[step] as number) - (result.outsideAirC[step] as number);
};

const wh = (watthours: number): string => `${Math.round(watthours)} Wh`;

export const PAIR_RULES: readonly Rule<Pair>[] = [
  {
    id: 'less-sun-cooler',
    condition: 'B takes in less sun over the day, hood included, and peaks lower',
    where: 'everywhere',
    holds: (pair) =>
      (of(pair, 'finish') || of(pair, 'wall') || of(pair, 'eave') || of(pair, 'shade')) &&
      cooler(pair) &&
      daySunWh(pair.b.played) < daySunWh(pair.a.played),
    text: ({ a, b, peakDifferenceK }, units) =>
      `Over the day B takes in ${wh(daySunWh(b.played))} of sun where A takes in ${wh(daySunWh(a.played))}, and peaks ${hotterBy(peakDifferenceK, units)}.`,
  },
  {
    id: 'light-finish-radiates-as-well',
    condition: 'B has a finish that takes in less sun, both radiate within 0.05 alike, and B peaks lower',
    where: 'everywhere',
    holds: (pair) => {
      const [a, b] = [pair.a.site.box, pair.b.site.box];
      return (
        of(pair, 'finish') &&
        b.solarAbsorptance < a.solarAbsorptance &&
        Math.abs(a.emittance - b.emittance) <= 0.05 &&
        cooler(pair)
      );
    },
    text: ({ a, b }) =>
      `The colour acts on the sun alone: B takes in ${share(b.site.box.solarAbsorptance)} of it instead of ${share(a.site.box.solarAbsorptance)}. Heat radiation is another matter: A gives off ${share(a.site.box.emittance)} of what a black body would and B ${share(b.site.box.emittance)}.`,
  },
  {
    id: 'bare-metal-keeps-its-heat',
    condition: 'B has a finish that radiates less by 0.2 or more and takes in no more sun, and is no cooler by it',
    where: 'here',
    holds: (pair) => {
      const [a, b] = [pair.a.site.box, pair.b.site.box];
      return (
        of(pair, 'finish') &&
        b.emittance <= a.emittance - 0.2 &&
        b.solarAbsorptance <= a.solarAbsorptance &&
        pair.peakDifferenceK >= -ALIKE_K
      );
    },
    text: ({ a, b, peakDifferenceK }, units) =>
      `Bare metal takes in ${share(b.site.box.solarAbsorptance)} of the sun instead of ${share(a.site.box.solarAbsorptance)}, but gives off only ${share(b.site.box.emittance)} of what a black body would radiate: in this climate it is ${peakDifferenceK > ALIKE_K ? hotterBy(peakDifferenceK, units) : 'no cooler'}.`,
  },
  {
    id: 'hood-takes-the-sun',
    condition: 'B has a hood, A has none, and B peaks lower',
    where: 'here',
    holds: (pair) => putsHoodOn(pair) && cooler(pair),
    text: ({ b, peakDifferenceK }, units) =>
      `The hood takes the sun in the stead of the box, ${wh(sum(Object.values(b.played.hoodAbsorbedW).flat()) * (b.played.stepS / 3600))} over the day, and gives most of it back outside: here that makes the peak ${hotterBy(peakDifferenceK, units)}.`,
  },
  {
    id: 'hood-gains-little',
    condition: `B has a hood, A has none, and the peaks lie within ${ALIKE_K} K or B peaks higher`,
    where: 'here',
    holds: (pair) => putsHoodOn(pair) && !cooler(pair),
    text: ({ peakDifferenceK }, units) =>
      `Here the hood ${peakDifferenceK > ALIKE_K ? `makes the box ${hotterBy(peakDifferenceK, units)}` : 'changes next to nothing'}: a hood also stands between the box and the cooler air and sky, and on this day there is little sun to keep off, or its own colour takes in too much.`,
  },
  {
    id: 'eave-shades-the-high-sun',
    condition: 'B has an eave, A has none, and direct sun falls on front, sides or lid for a shorter time',
    where: 'everywhere',
    holds: (pair) => putsEaveOn(pair) && sunHours(pair.b.played) < sunHours(pair.a.played),
    text: ({ a, b }) =>
      `Under the eave direct sun falls on the box for ${hoursText(sunHours(b.played))} instead of ${hoursText(sunHours(a.played))}.`,
  },
  {
    id: 'low-sun-gets-under-the-eave',
    condition: 'B has an eave, A has none, and direct sun still falls on the box for half of the time or more',
    where: 'here',
    holds: (pair) =>
      putsEaveOn(pair) && sunHours(pair.a.played) > 0 && sunHours(pair.b.played) >= sunHours(pair.a.played) / 2,
    text: ({ a, b }) =>
      `On this wall the low sun gets in below the eave: ${hoursText(sunHours(b.played))} of direct sun remain of ${hoursText(sunHours(a.played))}.`,
  },
  {
    id: 'more-power-hotter',
    condition: 'B gives off more heat inside and peaks higher',
    where: 'everywhere',
    holds: (pair) => of(pair, 'power') && pair.b.site.box.powerW > pair.a.site.box.powerW && hotter(pair),
    text: ({ a, b, peakDifferenceK }, units) =>
      `Each watt inside has to leave through the skins: ${formatQuantity('power', b.site.box.powerW - a.site.box.powerW, units)} more make the peak ${hotterBy(peakDifferenceK, units)}.`,
  },
  {
    id: 'twice-the-power-is-less-than-twice-the-kelvins',
    condition:
      'B gives off more heat, and its air lies above that outside at the peak by less than that many times as much as in A',
    where: 'everywhere',
    holds: (pair) => {
      const [a, b] = [pair.a.site.box.powerW, pair.b.site.box.powerW];
      return (
        of(pair, 'power') && a > 0 && b > a && excessAtPeakK(pair.b.played) < (b / a) * excessAtPeakK(pair.a.played)
      );
    },
    text: ({ a, b }, units) =>
      `With ${(b.site.box.powerW / a.site.box.powerW).toFixed(1)} times the power the air inside lies ${kelvins(excessAtPeakK(b.played), units)} above that outside at the peak instead of ${kelvins(excessAtPeakK(a.played), units)}, less than that many times as much: the sun has its share, and a hotter box convects and radiates better.`,
  },
  {
    id: 'wind-cools',
    condition: 'B has more wind and peaks lower',
    where: 'everywhere',
    holds: (pair) => of(pair, 'wind') && windOf(pair.b.played) > windOf(pair.a.played) && cooler(pair),
    text: ({ peakDifferenceK }, units) =>
      `Moving air carries more heat off the skins for the same difference in temperature: the peak is ${hotterBy(peakDifferenceK, units)}.`,
  },
  {
    id: 'wind-cannot-cool-below-the-air',
    condition: 'B has more wind, and at its peak the air inside is still hotter than that outside',
    where: 'everywhere',
    holds: (pair) =>
      of(pair, 'wind') && windOf(pair.b.played) > windOf(pair.a.played) && excessAtPeakK(pair.b.played) > 0,
    text: ({ b }, units) =>
      `Wind can take the box towards the air and no further: at its peak B is still ${kelvins(excessAtPeakK(b.played), units)} above it.`,
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
    holds: (pair) => {
      const airK = airDifferenceK(pair);
      return (
        of(pair, 'climate') &&
        Math.abs(pair.peakDifferenceK) > ALIKE_K &&
        airK * pair.peakDifferenceK > 0 &&
        Math.abs(airK) >= Math.abs(pair.peakDifferenceK) / 2
      );
    },
    text: (pair, units) =>
      `In these two climates most of the difference is that of the air itself: its maximum is ${hotterBy(airDifferenceK(pair), units)} in B, the box ${hotterBy(pair.peakDifferenceK, units)}.`,
  },
  {
    id: 'sky-and-wind-make-the-difference',
    condition:
      'the difference of the outside maxima is less than half of the difference of the peaks, or of the other sign',
    where: 'here',
    holds: (pair) => {
      const airK = airDifferenceK(pair);
      return (
        of(pair, 'climate') &&
        Math.abs(pair.peakDifferenceK) > ALIKE_K &&
        (airK * pair.peakDifferenceK <= 0 || Math.abs(airK) < Math.abs(pair.peakDifferenceK) / 2)
      );
    },
    text: (pair, units) =>
      `In these two climates the air does not explain it: its maximum is ${hotterBy(airDifferenceK(pair), units)} in B, the box ${hotterBy(pair.peakDifferenceK, units)}. Sun, sky and wind differ, too.`,
  },
  {
    id: 'thin-air-cools-worse',
    condition: 'B stands higher in the same air temperature and peaks higher',
    where: 'everywhere',
    holds: (pair) => risesUp(pair) && hotter(pair),
    text: ({ a, b, peakDifferenceK }, units) =>
      `At ${((pressureAtAltitude(b.site.place.altitudeM) / pressureAtAltitude(a.site.place.altitudeM)) * 100).toFixed(0)} % of the pressure the air is thinner and carries less heat away for each kelvin: with the same air temperature B peaks ${hotterBy(peakDifferenceK, units)}.`,
  },
  {
    id: 'more-sun-up-there',
    condition: 'B stands higher, and its direct sun is stronger',
    where: 'everywhere',
    holds: (pair) => risesUp(pair) && maxDni(pair.b.played) > maxDni(pair.a.played) + 1,
    text: ({ a, b }, units) =>
      `There is less air above it: direct sun of up to ${formatQuantity('irradiance', maxDni(b.played), units)} instead of ${formatQuantity('irradiance', maxDni(a.played), units)}.`,
  },
  {
    id: 'box-stays-above-the-air',
    condition: 'both boxes give off heat, and in both the air inside is above that outside at every step',
    where: 'here',
    holds: ({ a, b }) =>
      a.site.box.powerW > 0 && b.site.box.powerW > 0 && leastExcessK(a.played) > 0 && leastExcessK(b.played) > 0,
    text: ({ a, b }, units) =>
      `On this day neither box ever gets as cool as the air: A stays ${kelvins(leastExcessK(a.played), units)} above it at least, B ${kelvins(leastExcessK(b.played), units)}.`,
  },
  {
    id: 'battery-lives-longer-cooler',
    condition: 'in one box a battery lasts longer by a tenth or more',
    where: 'everywhere',
    holds: ({ a, b }) => batteryRatio(a, b) >= 1.1,
    text: ({ a, b }, units) => {
      const longer = b.ageing.batteryYears > a.ageing.batteryYears ? 'B' : 'A';
      return `A battery halves its life for each ${batteryHalvingText(units)} above what its maker gives its life for (common practice, no source): in ${longer} it would last ${batteryRatio(a, b).toFixed(1)} times as long.`;
    },
  },
  {
    id: 'next-to-no-difference',
    condition: `the peaks lie within ${ALIKE_K} K`,
    where: 'here',
    holds: (pair) => !cooler(pair) && !hotter(pair),
    text: ({ a, b }, units) =>
      `Here it makes next to no difference: ${a.label[units]} and ${b.label[units]} peak within ${kelvins(ALIKE_K, units)} of each other.`,
  },
];

const share = (part: number): string => `${Math.round(part * 100)} %`;
const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0);
const putsHoodOn = (pair: Pair): boolean =>
  of(pair, 'hood') && pair.a.site.box.hood === null && pair.b.site.box.hood !== null;
const putsEaveOn = (pair: Pair): boolean =>
  of(pair, 'eave') && pair.a.played.wall.eave === null && pair.b.played.wall.eave !== null;
const windOf = ({ weather }: PlayedDay): number => weather[0]?.windMs ?? 0;
const risesUp = (pair: Pair): boolean =>
  of(pair, 'altitude') && pair.b.site.place.altitudeM > pair.a.site.place.altitudeM;
const airDifferenceK = ({ a, b }: Pair): number => b.played.result.peakOutsideAirC - a.played.result.peakOutsideAirC;

function drySkyColder({ a, b }: Pair): boolean {
  const [dry, moist] = meanDewC(a.played) < meanDewC(b.played) ? [a, b] : [b, a];
  return skyDeficitWm2(dry.played) > skyDeficitWm2(moist.played);
}

function batteryRatio(a: Pair['a'], b: Pair['a']): number {
  const [one, other] = [a.ageing.batteryYears, b.ageing.batteryYears];
  return Math.max(one, other) / Math.min(one, other);
}
