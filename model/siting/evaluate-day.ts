/** How hot a box gets on one wall on the site's design day. */
import { wettingPoint } from '../climate/humidity.ts';
import { FACES, type Face, openFaces, perFace } from '../faces.ts';
import { highestAt } from '../highest-at.ts';
import { KELVIN } from '../physical-constants.ts';
import type { Site, Wall } from '../site.ts';
import { covers, hoodNode } from '../thermal/hood.ts';
import { energyClosure } from '../thermal/periodic-day.ts';
import type { StepTable } from '../thermal/step-table.ts';
import { assumptionsOf } from './assumptions.ts';
import { type DayStep, type SiteDay, siteDay } from './design-day.ts';
import { ledgerAt } from './ledger.ts';
import { type MarchedWall, marchWall } from './march-wall.ts';
import { namedWall } from './named-wall.ts';
import type { DayOptions, DayResult, WallDay } from './results.ts';
import { SUNSHINE_WM2 } from './sunshine.ts';
import { spansWhere } from './time-spans.ts';
import { BURN_THRESHOLDS_C, burnsWithinS, type Touch, type TouchTimeS } from './touch.ts';

/**
 * Evaluates one wall of a site on its design day.
 * @throws SiteError when the site has no wall of that name
 */
export function evaluateDay(site: Site, wallName: string, options: DayOptions = {}): DayResult {
  const day = siteDay(site, options);
  const evaluated = evaluateWall(site, namedWall(site, wallName), day);
  return { ...evaluated, assumptions: assumptionsOf(site, day.climate, options.units) };
}

/** Evaluates a wall on a day that was worked out before. */
export function evaluateWall(site: Site, wall: Wall, day: SiteDay): WallDay {
  return resultOf(site, wall, day, marchWall(site, wall, day));
}

/** What a marched day comes to. */
export function resultOf(site: Site, wall: Wall, day: SiteDay, marched: MarchedWall): WallDay {
  const { network, forcing, march, sun } = marched;

  const column = (node: string): number[] => columnC(march.temperaturesK, network.indexOf(node));
  const outsideAirC = day.steps.map((step) => step.weather.airC);
  const insideAirC = column('insideAir');
  const electronicsC = column('electronics');
  const peakStep = highestAt(insideAirC);
  const limited = { insideAir: insideAirC, outsideAir: outsideAirC, componentCase: electronicsC }[site.limits.refersTo];
  const stepHours = day.stepS / 3600;
  const skinC = perFace(column);
  const skins = FACES.map((face) => skinC[face]);
  const wet = ({ weather }: DayStep, k: number) => {
    const wettingC = wettingPoint(weather.dewPointC, weather.airC);
    for (const skin of skins) if ((skin[k] as number) < wettingC) return true;
    return false;
  };
  const bareFaces = openFaces(site.box.mount).filter((face) => !covers(site.box.hood, face));
  const sunny = ({ weather }: DayStep, k: number) =>
    weather.dni >= SUNSHINE_WM2 && bareFaces.some((face) => (sun.faces[face].beam[k] ?? 0) > 0);

  return {
    wall: wall.name,
    date: day.civil.date,
    timeZone: day.civil.timeZone,
    stepsUtc: day.steps.map(({ utc }) => utc),
    outsideAirC,
    insideAirC,
    electronicsC,
    batteryC: site.box.battery === null ? null : column('battery'),
    lowerAirC: site.box.compartments === null ? null : column('lowerAir'),
    touch: riskiestSkin(site, day, (face) => (covers(site.box.hood, face) ? column(hoodNode(face)) : skinC[face])),
    condensationHours: day.steps.filter(wet).length * stepHours,
    skinC,
    faceIrradianceWm2: perFace((face) =>
      bareFaces.includes(face) ? plain(sun.faces[face].total) : day.steps.map(() => 0),
    ),
    peakInsideAirC: Math.max(...insideAirC),
    peakAtUtc: day.steps[peakStep]?.utc ?? day.civil.startUtc,
    peakElectronicsC: Math.max(...electronicsC),
    peakOutsideAirC: Math.max(...outsideAirC),
    lowestInsideAirC: Math.min(...insideAirC),
    marginK: site.limits.maxC - Math.max(...limited),
    coldMarginK: Math.min(...limited) - site.limits.minC,
    hoursOverLimit: limited.filter((c) => c > site.limits.maxC).length * stepHours,
    sunHours: day.steps.filter(sunny).length * stepHours,
    energyClosure: energyClosure(network, forcing, march),
    ledgerAtPeak: ledgerAt({ network, forcing, march, step: peakStep, sun, box: site.box }),
  };
}

/** The same numbers as a list. */
function plain(values: Float64Array): number[] {
  const list: number[] = [];
  for (let k = 0; k < values.length; k++) list.push(values[k] as number);
  return list;
}

/** A column of kelvins in degC. */
function columnC({ values, width }: StepTable, index: number): number[] {
  const column: number[] = [];
  for (let at = index; at < values.length; at += width) column.push((values[at] as number) - KELVIN);
  return column;
}

/**
 * The part of the outside that burns soonest, of several the hottest: plastic may be hotter and burn later than metal. The outside
 * of a box is its skin, or the hood over it.
 */
function riskiestSkin({ box }: Site, day: SiteDay, outside: (face: Face) => number[]): Touch {
  const skins = openFaces(box.mount).map((face) => {
    const temperatures = outside(face);
    const step = highestAt(temperatures);
    // A hood is reckoned as a sheet of metal.
    const material = covers(box.hood, face) ? ('metal' as const) : box.material;
    const peakSkinC = temperatures[step] as number;
    return { face, step, material, temperatures, peakSkinC, withinS: burnsWithinS(peakSkinC, material) };
  });
  const riskier = (a: (typeof skins)[number], b: (typeof skins)[number]): boolean => {
    const [one, other] = [a.withinS ?? Number.POSITIVE_INFINITY, b.withinS ?? Number.POSITIVE_INFINITY];
    return one < other || (one === other && a.peakSkinC > b.peakSkinC);
  };
  const { face, step, peakSkinC, withinS } = skins.reduce((best, skin) => (riskier(skin, best) ? skin : best));
  const stepsUtc = day.steps.map(({ utc }) => utc);
  const burns = (seconds: TouchTimeS) => {
    const hot = skins.filter((skin) => skin.peakSkinC >= BURN_THRESHOLDS_C[skin.material][seconds]);
    if (hot.length === 0) return [];
    return spansWhere(stepsUtc, day.stepS * 1000, (k) =>
      hot.some((skin) => (skin.temperatures[k] as number) >= BURN_THRESHOLDS_C[skin.material][seconds]),
    );
  };
  return {
    peakSkinC,
    face,
    atUtc: stepsUtc[step] ?? day.civil.startUtc,
    burnsWithinS: withinS,
    burns: { 1: burns(1), 10: burns(10), 60: burns(60) },
  };
}
