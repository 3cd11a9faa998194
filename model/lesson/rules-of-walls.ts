/** What may be said of the walls of a site beside each other. */
import type { PlayedDay } from '../siting/played-day.ts';
import { kelvins } from './both-units.ts';
import {
  afterNoon,
  directSunSteps,
  fromPoleDeg,
  frontInsolationKwhM2,
  frontPeakStep,
  outsidePeakStep,
  stepClock,
} from './day-facts.ts';
import type { Rule } from './rule.ts';

/** Walls whose peaks lie closer together are called alike, K. */
const ALIKE_K = 1;

const peakC = ({ result }: PlayedDay): number => result.peakInsideAirC;
const name = ({ wall }: PlayedDay): string => `"${wall.name}"`;

/** The walls, hottest first. */
export const hottestFirst = (walls: readonly PlayedDay[]): PlayedDay[] =>
  [...walls].sort((a, b) => peakC(b) - peakC(a));

const hottest = (walls: readonly PlayedDay[]): PlayedDay => hottestFirst(walls)[0] as PlayedDay;
const coolest = (walls: readonly PlayedDay[]): PlayedDay => hottestFirst(walls).at(-1) as PlayedDay;
const spreadK = (walls: readonly PlayedDay[]): number => peakC(hottest(walls)) - peakC(coolest(walls));

/** The wall that faces the equator, and those that face east or west, within 45 degrees. */
function bySide(walls: readonly PlayedDay[]): { equator: PlayedDay | undefined; sides: PlayedDay[] } {
  const from = (played: PlayedDay) => fromPoleDeg(played);
  return {
    equator: walls.find((played) => (from(played) ?? 0) > 135),
    sides: walls.filter((played) => Math.abs((from(played) ?? 0) - 90) < 45),
  };
}

/** Share by which the sun on a front must lie below that on another to be called less. */
const CLEARLY_LESS = 0.95;

function highSunPasses(walls: readonly PlayedDay[]): boolean {
  const { equator, sides } = bySide(walls);
  if (equator === undefined || sides.length < 2) return false;
  const sun = frontInsolationKwhM2(equator);
  return sides.every((side) => sun < CLEARLY_LESS * frontInsolationKwhM2(side));
}

export const WALLS_RULES: readonly Rule<readonly PlayedDay[]>[] = [
  {
    id: 'hottest-in-the-afternoon',
    condition: `the hottest wall's sun peaks after the sun's noon, and the walls are more than ${ALIKE_K} K apart`,
    where: 'everywhere',
    holds: (walls) =>
      spreadK(walls) > ALIKE_K &&
      directSunSteps(hottest(walls), 'front').afternoon.length > 0 &&
      afterNoon(hottest(walls), frontPeakStep(hottest(walls))),
    text: (walls) => {
      const worst = hottest(walls);
      return `The hottest, ${name(worst)}, has its strongest sun after noon, at ${stepClock(worst, frontPeakStep(worst))}, on the warm side of the day: the air is hottest at ${stepClock(worst, outsidePeakStep(worst))}.`;
    },
  },
  {
    id: 'coolest-takes-less-sun',
    condition: 'the coolest front gets less sun over the day than the hottest',
    where: 'everywhere',
    holds: (walls) =>
      spreadK(walls) > ALIKE_K && frontInsolationKwhM2(coolest(walls)) < frontInsolationKwhM2(hottest(walls)),
    text: (walls, units) => {
      const [worst, best] = [hottest(walls), coolest(walls)];
      const kwh = (played: PlayedDay) => `${frontInsolationKwhM2(played).toFixed(1)} kWh/m²`;
      return `Over the day ${kwh(best)} of sun fall on the front at ${name(best)} and ${kwh(worst)} at ${name(worst)}; their peaks lie ${kelvins(spreadK(walls), units)} apart.`;
    },
  },
  {
    id: 'coolest-takes-more-sun',
    condition: 'the coolest front gets as much sun over the day as the hottest, or more',
    where: 'here',
    holds: (walls) =>
      spreadK(walls) > ALIKE_K && frontInsolationKwhM2(coolest(walls)) >= frontInsolationKwhM2(hottest(walls)),
    text: (walls) => {
      const [worst, best] = [hottest(walls), coolest(walls)];
      return `On this day the front at ${name(best)} gets no less sun than that at ${name(worst)}, and stays cooler: the hour of the sun matters, not only its sum.`;
    },
  },
  {
    id: 'high-sun-passes-over-the-equator-side',
    condition: 'the front that faces the equator gets less sun over the day than those that face east and west',
    where: 'here',
    holds: highSunPasses,
    text: (walls) => {
      const equator = bySide(walls).equator as PlayedDay;
      return `On this day and at this latitude the front at ${name(equator)}, which faces the equator, gets less sun than those to the east and west: the sun is high when it stands before it and only grazes it.`;
    },
  },
  {
    id: 'walls-alike',
    condition: `the peaks of all walls lie within ${ALIKE_K} K`,
    where: 'here',
    holds: (walls) => spreadK(walls) <= ALIKE_K,
    text: (walls, units) =>
      `On this day the walls differ by ${kelvins(spreadK(walls), units)} only: the sun hardly decides here.`,
  },
];
