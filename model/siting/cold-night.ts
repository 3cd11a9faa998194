/** The cold end: how cold a box gets in the coldest night, running and after an outage. */
import { coldNightOf } from '../climate/cold-night.ts';
import { wettingPoint } from '../climate/humidity.ts';
import { DUTIES } from '../duty.ts';
import { FACES } from '../faces.ts';
import { KELVIN } from '../physical-constants.ts';
import type { Site } from '../site.ts';
import { blackbodyK } from '../thermal/radiation.ts';
import { wallNetwork } from './day-forcing.ts';
import { namedWall } from './named-wall.ts';
import { prepareShade } from './wall-shade.ts';

/** Temperatures at the end of a night that lasts until nothing changes any more: on the safe side. */
export interface ColdState {
  readonly insideAirC: number;
  readonly electronicsC: number;
  /** Null for a box without one. */
  readonly batteryC: number | null;
  readonly lowestSkinC: number;
  /** Lowest of what the limit refers to minus the lower limit, K; negative past it. */
  readonly marginK: number;
  /** Whether a skin of the box, under its hood, lies below the dew or frost point of the night: water, or frost, on it and on the electronics behind it. */
  readonly condenses: boolean;
}

export interface ColdResult {
  readonly outsideAirC: number;
  readonly dewPointC: number;
  /** What night this is, in a sentence, and where it comes from. */
  readonly text: string;
  readonly origin: string;
  /** With the least heat that the duty leaves. */
  readonly running: ColdState;
  /** After an outage, without any heat of its own: what a cold start finds. */
  readonly soaked: ColdState;
}

/**
 * Evaluates the coldest night on a wall: no sun, a clear sky unless the site says otherwise, steady.
 * @throws SiteError when the site has no wall of that name
 */
export function evaluateColdNight(site: Site, wallName: string): ColdResult {
  const wall = namedWall(site, wallName);
  const night = coldNightOf(site);
  const { box, limits, place } = site;
  // Bare trees: in the coldest nights the sky is as open as it gets.
  const season = { month: place.latitudeDeg < 0 ? 7 : 1, southern: place.latitudeDeg < 0 };
  const network = wallNetwork(site, wall, prepareShade(site, wall, { season, suns: [] }));

  const settled = (shareOfPower: number, batteryW: number): ColdState => {
    const t = new Float64Array(network.names.length).fill(night.airC + KELVIN);
    t[network.indexOf('sky')] = blackbodyK(night.skyLongwaveWm2);
    const sources = new Float64Array(network.freeCount);
    const lowerW = box.compartments?.lowerPowerW ?? 0;
    sources[network.indexOf('electronics')] = (box.powerW - lowerW) * shareOfPower;
    if (box.compartments !== null) sources[network.indexOf('lowerAir')] = lowerW * shareOfPower;
    if (box.battery !== null) sources[network.indexOf('battery')] = batteryW;
    network.settle(t, sources, night.windMs);
    const at = (node: string): number => (t[network.indexOf(node)] as number) - KELVIN;
    const lowestSkinC = Math.min(...FACES.map(at));
    const limited = { insideAir: at('insideAir'), outsideAir: night.airC, componentCase: at('electronics') };
    return {
      insideAirC: at('insideAir'),
      electronicsC: at('electronics'),
      batteryC: box.battery === null ? null : at('battery'),
      lowestSkinC,
      marginK: limited[limits.refersTo] - limits.minC,
      condenses: lowestSkinC < wettingPoint(night.dewPointC, night.airC),
    };
  };

  return {
    outsideAirC: night.airC,
    dewPointC: night.dewPointC,
    text: night.text,
    origin: night.origin,
    running: settled(Math.min(...DUTIES[box.duty].hourly), box.battery?.powerW ?? 0),
    soaked: settled(0, 0),
  };
}
