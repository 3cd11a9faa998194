/** What may be said of two boxes whose finish or hood differs, or that stand in another sun: why one of them is hotter. */
import { formatQuantity } from '../units.ts';
import { hoursText } from './both-units.ts';
import type { BoxDay, Pair } from './comparison.ts';
import { frontPeakStep, outsidePeakStep, stepClock } from './day-facts.ts';
import {
  ALIKE_K,
  aboveOtherK,
  airWithTheSunC,
  apart,
  byLess,
  byPeak,
  daySunWh,
  hotterThanOther,
  type NamedBox,
  of,
  share,
  sunHours,
  wh,
} from './pair-facts.ts';
import type { Rule } from './rule.ts';

/** A day's sun is called less where it lies this share below the other: less would be the same figure in print. */
const CLEARLY_LESS = 0.98;

/** Emittances this near each other are called alike; metal is told from paint by more than the second. */
const SAME_EMITTANCE = 0.05;
const METAL_BELOW_PAINT = 0.2;

/** The sun of a wall is called warmer where the air is so much warmer while it is taken in, K. */
const WARMER_SUN_K = 1;

/** Losses to the sky that differ by less print as the same, W. */
const SOME_LOSS_W = 0.05;

/** Heat lost to the sky by radiation, mean of the day, W. */
const toSkyW = ({ played: { ledgers } }: BoxDay): number =>
  ledgers.reduce((total, { longwaveSky }) => total - longwaveSky, 0) / ledgers.length;

const absorptance = ({ site }: BoxDay): number => site.box.solarAbsorptance;
const emittance = ({ site }: BoxDay): number => site.box.emittance;

/** The hooded box of two of which one has a hood; null otherwise. */
function hoodedOf(pair: Pair): { readonly hooded: NamedBox; readonly bare: NamedBox } | null {
  const { less: bare, more: hooded } = byLess(pair, ({ site }) => (site.box.hood === null ? 0 : 1));
  return of(pair, 'hood') && bare.box.site.box.hood === null && hooded.box.site.box.hood !== null
    ? { hooded, bare }
    : null;
}

/** The two by how far their eaves reach out, where an eave is the difference. */
function eavesOf(pair: Pair): { readonly deeper: NamedBox; readonly other: NamedBox } | null {
  const depthM = ({ played }: BoxDay) => played.wall.eave?.depthM ?? 0;
  const { less: other, more: deeper } = byLess(pair, depthM);
  return of(pair, 'eave') && depthM(deeper.box) > depthM(other.box) ? { deeper, other } : null;
}

/** Metal and paint, where the finishes of the boxes differ that much. */
function metalOf(pair: Pair): { readonly metal: NamedBox; readonly paint: NamedBox } | null {
  const { less: metal, more: paint } = byLess(pair, emittance);
  return of(pair, 'finish') && emittance(metal.box) <= emittance(paint.box) - METAL_BELOW_PAINT
    ? { metal, paint }
    : null;
}

export const SURFACE_RULES: readonly Rule<Pair>[] = [
  {
    id: 'light-finish-radiates-as-well',
    condition: `both finishes radiate within ${SAME_EMITTANCE} alike, and the box that takes in less sun peaks lower`,
    where: 'everywhere',
    holds: (pair) => {
      const { cooler, hotter } = byPeak(pair);
      return (
        of(pair, 'finish') &&
        apart(pair) &&
        absorptance(cooler.box) < absorptance(hotter.box) &&
        Math.abs(emittance(cooler.box) - emittance(hotter.box)) <= SAME_EMITTANCE + 1e-9
      );
    },
    text: ({ a, b }) =>
      `The colour acts on the sun alone: B takes in ${share(absorptance(b))} of it instead of ${share(absorptance(a))}. Heat radiation is another matter: A gives off ${share(emittance(a))} of what a black body would and B ${share(emittance(b))}.`,
  },
  {
    id: 'bare-metal-keeps-its-heat',
    condition: `one finish radiates less by ${METAL_BELOW_PAINT} or more, and its box is no cooler by it`,
    where: 'here',
    holds: (pair) => {
      const found = metalOf(pair);
      return found !== null && aboveOtherK(pair, found.metal) >= -ALIKE_K;
    },
    text: (pair, units) => {
      const { metal, paint } = metalOf(pair) as NonNullable<ReturnType<typeof metalOf>>;
      const [taken, other] = [absorptance(metal.box), absorptance(paint.box)];
      const sun = `takes in ${share(taken)} of the sun instead of ${share(other)}`;
      const kept = `gives off only ${share(emittance(metal.box))} of what a black body would radiate instead of ${share(emittance(paint.box))}`;
      return `Bare metal keeps its heat: ${metal.letter} ${sun}${taken > other ? ' and' : ', but'} ${kept}; in this climate it is ${apart(pair) ? hotterThanOther(pair, metal, units) : 'no cooler'}.`;
    },
  },
  {
    id: 'paint-radiates-and-takes-in-more',
    condition: `one finish radiates more by ${METAL_BELOW_PAINT} or more, and its box peaks higher all the same`,
    where: 'here',
    holds: (pair) => {
      const found = metalOf(pair);
      return found !== null && aboveOtherK(pair, found.paint) > ALIKE_K;
    },
    text: (pair, units) => {
      const { metal, paint } = metalOf(pair) as NonNullable<ReturnType<typeof metalOf>>;
      return `${paint.letter} gives off ${share(emittance(paint.box))} of what a black body would radiate and ${metal.letter} only ${share(emittance(metal.box))}; but ${paint.letter} takes in ${share(absorptance(paint.box))} of the sun instead of ${share(absorptance(metal.box))}, and here that weighs more: it is ${hotterThanOther(pair, paint, units)}.`;
    },
  },
  {
    id: 'hood-takes-the-sun',
    condition: 'one box has a hood, the other has none, and the hooded one peaks lower',
    where: 'here',
    holds: (pair) => {
      const found = hoodedOf(pair);
      return found !== null && aboveOtherK(pair, found.hooded) < -ALIKE_K;
    },
    text: (pair, units) => {
      const { hooded } = hoodedOf(pair) as NonNullable<ReturnType<typeof hoodedOf>>;
      const { played } = hooded.box;
      const takenWh = (sum(Object.values(played.hoodAbsorbedW).flat()) * played.stepS) / 3600;
      return `The hood of ${hooded.letter} takes the sun in the stead of the box, ${wh(takenWh)} over the day, and gives most of it back outside: here that makes the peak ${hotterThanOther(pair, hooded, units)}.`;
    },
  },
  {
    id: 'hood-gains-little',
    condition: `one box has a hood, the other has none, and the peaks lie within ${ALIKE_K} K or the hooded one peaks higher`,
    where: 'here',
    holds: (pair) => {
      const found = hoodedOf(pair);
      return found !== null && aboveOtherK(pair, found.hooded) >= -ALIKE_K;
    },
    text: (pair, units) => {
      const { hooded } = hoodedOf(pair) as NonNullable<ReturnType<typeof hoodedOf>>;
      const done = apart(pair) ? `makes the box ${hotterThanOther(pair, hooded, units)}` : 'changes next to nothing';
      return `Here the hood of ${hooded.letter} ${done}: a hood also stands between the box and the cooler air and sky, and on this day there is little sun to keep off, or its own colour takes in too much.`;
    },
  },
  {
    id: 'eave-shades-the-high-sun',
    condition:
      'one eave is deeper than the other or the only one, and below it direct sun falls on front, sides or lid for a shorter time',
    where: 'everywhere',
    holds: (pair) => {
      const eaves = eavesOf(pair);
      return eaves !== null && sunHours(eaves.deeper.box) < sunHours(eaves.other.box);
    },
    text: (pair) => {
      const { deeper, other } = eavesOf(pair) as NonNullable<ReturnType<typeof eavesOf>>;
      return `Under ${other.box.played.wall.eave === null ? 'the eave' : 'the deeper eave'} of ${deeper.letter} direct sun falls on the box for ${hoursText(sunHours(deeper.box))} instead of ${hoursText(sunHours(other.box))}.`;
    },
  },
  {
    id: 'low-sun-gets-under-the-eave',
    condition:
      'one eave is deeper or the only one, and direct sun still falls on the box below it for half of the time or more',
    where: 'here',
    holds: (pair) => {
      const eaves = eavesOf(pair);
      return (
        eaves !== null && sunHours(eaves.other.box) > 0 && sunHours(eaves.deeper.box) >= sunHours(eaves.other.box) / 2
      );
    },
    text: (pair) => {
      const { deeper, other } = eavesOf(pair) as NonNullable<ReturnType<typeof eavesOf>>;
      return `On this wall the low sun gets in below the eave of ${deeper.letter}: ${hoursText(sunHours(deeper.box))} of direct sun remain of ${hoursText(sunHours(other.box))}.`;
    },
  },
  {
    id: 'what-hangs-above-hides-the-sky',
    condition: 'eave or screen differs, and the hotter box loses less heat to the sky by radiation over the day',
    where: 'here',
    holds: (pair) => {
      const { cooler, hotter } = byPeak(pair);
      return of(pair, 'eave', 'shade') && apart(pair) && toSkyW(hotter.box) < toSkyW(cooler.box) - SOME_LOSS_W;
    },
    text: (pair, units) => {
      const { cooler, hotter } = byPeak(pair);
      const watts = ({ box }: NamedBox) => formatQuantity('power', toSkyW(box), units);
      return `What stands or hangs before a box hides the cold sky from it as well: here ${hotter.letter} loses ${watts(hotter)} to the sky by radiation on average over the day, ${cooler.letter} ${watts(cooler)}.`;
    },
  },
  {
    id: 'less-sun-cooler',
    condition: 'one box takes in less sun over the day, hood included, and peaks lower',
    where: 'everywhere',
    holds: (pair) => {
      const { cooler, hotter } = byPeak(pair);
      return (
        // A hood takes in sun that the box does not get: beside a bare box its sum says nothing.
        (of(pair, 'finish', 'wall', 'eave', 'shade') || (of(pair, 'hood') && hoodedOf(pair) === null)) &&
        apart(pair) &&
        daySunWh(cooler.box) < CLEARLY_LESS * daySunWh(hotter.box)
      );
    },
    text: (pair, units) =>
      `Over the day B takes in ${wh(daySunWh(pair.b))} of sun where A takes in ${wh(daySunWh(pair.a))}, and peaks ${hotterThanOther(pair, { letter: 'B', box: pair.b }, units)}.`,
  },
  {
    id: 'sun-with-the-hot-air',
    condition: `the walls differ, and while the hotter box takes in its sun the air is warmer by ${WARMER_SUN_K} K or more`,
    where: 'everywhere',
    holds: (pair) => {
      const { cooler, hotter } = byPeak(pair);
      return of(pair, 'wall') && apart(pair) && airWithTheSunC(hotter.box) >= airWithTheSunC(cooler.box) + WARMER_SUN_K;
    },
    text: (pair, units) => {
      const { cooler, hotter } = byPeak(pair);
      const air = ({ box }: NamedBox) => formatQuantity('temperature', airWithTheSunC(box), units);
      const strongest = ({ box }: NamedBox) => stepClock(box.played, frontPeakStep(box.played));
      return `The hour of the sun decides: on the front of ${hotter.letter} it is strongest at ${strongest(hotter)}, on that of ${cooler.letter} at ${strongest(cooler)}, and the air outside is hottest at ${stepClock(hotter.box.played, outsidePeakStep(hotter.box.played))}. While ${hotter.letter} takes in its sun the air has ${air(hotter)} on average, while ${cooler.letter} does ${air(cooler)}.`;
    },
  },
];

const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0);
