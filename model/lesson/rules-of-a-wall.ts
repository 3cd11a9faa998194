/** What may be said of one box through its day. */
import { compassPoint } from '../compass.ts';
import type { PlayedDay } from '../siting/played-day.ts';
import { cosDeg } from '../solar/angles.ts';
import { formatQuantity } from '../units.ts';
import { hoursText, kelvins } from './both-units.ts';
import {
  afterNoon,
  directSunSteps,
  faceSunThrough,
  faceSunWm2,
  fromPoleDeg,
  frontPeakStep,
  hoursBetween,
  hoursOf,
  insidePeakStep,
  largest,
  nightSteps,
  outsidePeakStep,
  smallest,
  stepClock,
  takenInW,
} from './day-facts.ts';
import type { Rule } from './rule.ts';

/** Sun and hot air coincide when their peaks lie no further apart, h. */
export const COINCIDE_H = 3;

/** Air counts as still cool when it is this far below its maximum, K. */
const COOL_K = 3;

/** Sun on a front that is worth speaking of, W/m2. */
const SOME_SUN_WM2 = 100;

/** A wall faces away from the sun's side when it faces within so many degrees of the pole. */
const POLEWARD_DEG = 45;

const name = ({ wall }: PlayedDay): string => `"${wall.name}"`;
const sunPeakWm2 = (played: PlayedDay): number => faceSunWm2(played, 'front', frontPeakStep(played));
const airAt = (played: PlayedDay, step: number): number => played.result.outsideAirC[step] as number;

export const WALL_RULES: readonly Rule<PlayedDay>[] = [
  {
    id: 'afternoon-sun-meets-hot-air',
    condition: `the front's sun peaks after the sun's noon and within ${COINCIDE_H} h of the air's maximum, and the box does not peak before the air`,
    where: 'everywhere',
    holds: (played) =>
      directSunSteps(played, 'front').afternoon.length > 0 &&
      afterNoon(played, frontPeakStep(played)) &&
      insidePeakStep(played) >= outsidePeakStep(played) &&
      hoursBetween(played, frontPeakStep(played), outsidePeakStep(played)) <= COINCIDE_H,
    text: (played) =>
      `The box on ${name(played)} peaks late, at ${stepClock(played, insidePeakStep(played))}, because sun and hot air coincide: the sun on its front is strongest at ${stepClock(played, frontPeakStep(played))}, and the air outside is hottest at ${stepClock(played, outsidePeakStep(played))}.`,
  },
  {
    id: 'morning-sun-meets-cool-air',
    condition: `the front's sun peaks before the sun's noon while the air is ${COOL_K} K or more below its maximum, and direct sun after noon lasts less than half as long as before`,
    where: 'everywhere',
    holds: (played) =>
      sunPeakWm2(played) > SOME_SUN_WM2 &&
      mostlyMorning(played) &&
      !afterNoon(played, frontPeakStep(played)) &&
      played.result.peakOutsideAirC - airAt(played, frontPeakStep(played)) >= COOL_K,
    text: (played, units) =>
      `${name(played)} has its strongest sun in the morning, at ${stepClock(played, frontPeakStep(played))}, when the air is still ${kelvins(played.result.peakOutsideAirC - airAt(played, frontPeakStep(played)), units)} below the day's maximum: sun and hot air miss each other.`,
  },
  {
    id: 'poleward-wall-gets-sun',
    condition: `the wall faces within ${POLEWARD_DEG} degrees of the pole of its hemisphere, and direct sun falls on the front while the sun stands on that side of east and west`,
    where: 'here',
    holds: (played) => (fromPoleDeg(played) ?? 180) <= POLEWARD_DEG && polewardSunSteps(played).length > 0,
    text: (played) => {
      const { morning, afternoon } = directSunSteps(played, 'front');
      const parts = [
        ...(morning.length > 0 ? [`${hoursText(hoursOf(played, morning))} before noon`] : []),
        ...(afternoon.length > 0 ? [`${hoursText(hoursOf(played, afternoon))} after noon`] : []),
      ];
      const beyond = hoursText(hoursOf(played, polewardSunSteps(played)));
      return `On this day and at this latitude ${name(played)}, facing ${compassPoint(played.wall.azimuthDeg)}, does get direct sun: ${parts.join(' and ')}. For ${beyond} of it the sun stands on the pole's side of east and west.`;
    },
  },
  {
    id: 'front-without-direct-sun',
    condition: 'no direct sun falls on the front all day, though the sun is up',
    where: 'everywhere',
    holds: (played) =>
      directSunSteps(played, 'front').all.length === 0 && largest(faceSunThrough(played, 'front')) > SOME_SUN_WM2 / 2,
    text: (played, units) =>
      `No direct sun falls on the front of the box on ${name(played)}, and still up to ${formatQuantity('irradiance', sunPeakWm2(played), units)} come from sky, ground and the glow round the sun.`,
  },
  {
    id: 'lid-in-the-high-sun',
    condition: 'at the highest sun the lid takes in more for each square metre than every upright face',
    where: 'everywhere',
    holds: (played) => {
      const noon = highestSun(played);
      const lid = faceSunWm2(played, 'top', noon);
      return (
        lid > SOME_SUN_WM2 &&
        (['front', 'left', 'right'] as const).every((face) => faceSunWm2(played, face, noon) < lid)
      );
    },
    text: (played, units) => {
      const noon = highestSun(played);
      return `The sun climbs to ${formatQuantity('angle', played.suns[noon]?.elevationDeg ?? 0, units, 0)}: at ${stepClock(played, noon)} the lid gets ${formatQuantity('irradiance', faceSunWm2(played, 'top', noon), units)}, more than any upright face.`;
    },
  },
  {
    id: 'sun-outweighs-own-heat',
    condition: 'at the peak the sun taken in by box and hood is more than the heat given off inside',
    where: 'everywhere',
    holds: (played) => takenInW(played, insidePeakStep(played)) > peakLedger(played).dissipation,
    text: (played, units) =>
      `At its peak ${taker(played)} takes in ${formatQuantity('power', takenInW(played, insidePeakStep(played)), units)} of sun beside ${formatQuantity('power', peakLedger(played).dissipation, units)} of its own: the sun weighs more.`,
  },
  {
    id: 'own-heat-outweighs-sun',
    condition: 'at the peak the heat given off inside is more than the sun taken in by box and hood',
    where: 'everywhere',
    holds: (played) => takenInW(played, insidePeakStep(played)) < peakLedger(played).dissipation,
    text: (played, units) =>
      `At its peak ${taker(played)} takes in ${formatQuantity('power', takenInW(played, insidePeakStep(played)), units)} of sun beside ${formatQuantity('power', peakLedger(played).dissipation, units)} of its own: its own heat weighs more.`,
  },
  {
    id: 'warm-without-sun',
    condition: 'the box gives off heat, there is a night, and the air inside stays above that outside all night',
    where: 'everywhere',
    holds: (played) => {
      const night = nightSteps(played);
      return night.length > 0 && played.site.box.powerW > 0 && smallest(night.map((k) => excessAt(played, k))) > 0;
    },
    text: (played, units) =>
      `With no sun at all the air inside is ${kelvins(smallest(nightSteps(played).map((k) => excessAt(played, k))), units)} or more above the air outside all night: that is the box's own heat.`,
  },
  {
    id: 'skin-colder-than-air',
    condition: 'in the night some skin falls below the outside air',
    where: 'here',
    holds: (played) => coldestSkinBelowAirK(played) > 0.1,
    text: (played, units) =>
      `In this night a skin of the box falls ${kelvins(coldestSkinBelowAirK(played), units)} below the air: it radiates to the clear sky, which is colder than the air.`,
  },
  {
    id: 'peak-before-the-air',
    condition: 'the air inside peaks an hour or more before the outside air',
    where: 'everywhere',
    holds: (played) => outsidePeakStep(played) - insidePeakStep(played) >= 3600 / played.stepS,
    text: (played) =>
      `The box on ${name(played)} peaks at ${stepClock(played, insidePeakStep(played))}, before the air does at ${stepClock(played, outsidePeakStep(played))}: what decides is when the sun is on it.`,
  },
  {
    id: 'over-the-limit',
    condition: 'what the limit refers to passes the upper limit',
    where: 'here',
    holds: ({ result }) => result.hoursOverLimit > 0,
    text: ({ site, result }, units) =>
      `On this day it passes the limit of ${formatQuantity('temperature', site.limits.maxC, units)} by ${kelvins(result.marginK, units)}, for ${hoursText(result.hoursOverLimit)}.`,
  },
  {
    id: 'within-the-limit',
    condition: 'what the limit refers to stays at or below the upper limit',
    where: 'here',
    holds: ({ result }) => result.marginK >= 0,
    text: ({ site, result }, units) =>
      `On this day it stays ${kelvins(result.marginK, units)} inside the limit of ${formatQuantity('temperature', site.limits.maxC, units)}; a hotter day, another finish or more power changes that.`,
  },
];

const peakLedger = ({ result }: PlayedDay) => result.ledgerAtPeak;

const excessAt = ({ result }: PlayedDay, step: number): number =>
  (result.insideAirC[step] as number) - (result.outsideAirC[step] as number);

const highestSun = ({ suns }: PlayedDay): number =>
  suns.reduce((best, { elevationDeg }, k) => (elevationDeg > (suns[best]?.elevationDeg ?? -90) ? k : best), 0);

/** Whether direct sun on the front is a matter of the morning. */
function mostlyMorning(played: PlayedDay): boolean {
  const { morning, afternoon } = directSunSteps(played, 'front');
  return morning.length > 0 && 2 * afternoon.length < morning.length;
}

/** What takes in the sun of a box, as a subject. */
const taker = (played: PlayedDay): string =>
  `the box on ${name(played)}${played.site.box.hood === null ? '' : ', its hood included,'}`;

/** Steps of direct sun on the front in which the sun stands nearer to the pole's bearing than east and west do. */
function polewardSunSteps(played: PlayedDay): number[] {
  const pole = played.site.place.latitudeDeg < 0 ? 180 : 0;
  return directSunSteps(played, 'front').all.filter((k) => cosDeg((played.suns[k]?.azimuthDeg ?? 0) - pole) > 0);
}

function coldestSkinBelowAirK(played: PlayedDay): number {
  const { skinC, outsideAirC } = played.result;
  const below = nightSteps(played).map(
    (k) => (outsideAirC[k] as number) - smallest(Object.values(skinC).map((skin) => skin[k] as number)),
  );
  return below.length === 0 ? 0 : largest(below);
}
