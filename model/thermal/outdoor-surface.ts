/** How a surface outdoors trades heat with air, sky, ground, wall and what stands around. */
import type { Face, PerFace } from '../faces.ts';
import type { FilmAir } from './air.ts';
import { type Coefficient, withLaw } from './convection-law.ts';
import { blended, flatPlateForced, roughWallForced } from './forced-convection.ts';
import { type NaturalCoefficient, plateFacingDown, plateFacingUp, verticalPlate } from './natural-convection.ts';
import type { Link } from './network.ts';

/** Shares of what a surface sees; they sum to 1. */
export interface Surroundings {
  readonly sky: number;
  readonly ground: number;
  readonly wall: number;
  readonly obstruction: number;
}

/** A wall as what stands before it sees it. */
interface GreyWall {
  readonly emittance: number;
  readonly view: Surroundings;
}

/** Where the faces of a box stand. */
export interface OutdoorSetting {
  readonly box: { readonly widthM: number; readonly heightM: number; readonly depthM: number };
  readonly faceAreasM2: PerFace<number>;
  readonly faceViews: PerFace<Surroundings>;
  readonly wall: GreyWall;
  /** Speed of the wind that sweeps the box against that of the free wind. */
  readonly windShelter: number;
}

/** What outdoor surfaces take for granted; shown to the user as assumptions. */
export const OUTDOOR_ASSUMPTIONS = {
  /**
   * Speed of the wind along a wall against that of the free wind, in the lee. Sparrow, Ramsey and Mass 1979 (EnergyPlus) find
   * half the coefficient there; it goes with the root of the speed, so a quarter of the speed stands for it.
   */
  windShelter: 0.25,
  /** The same on a wall that the wind meets. */
  windwardShelter: 1,
  /** A post stands clear of the wall. Common practice, no source. */
  postShelter: 1,
  /** Wind over the ground before a wall. Common practice, no source. */
  groundShelter: 0.5,
  groundEmittance: 0.95,
} as const;

/**
 * Walton 1983 (EnergyPlus Engineering Reference): of the sky that an inclined surface sees, the share sqrt((1 + cos
 * tilt) / 2) counts as sky; the rest is low and radiates like air.
 */
export const SKY_SHARE: PerFace<number> = {
  front: Math.SQRT1_2,
  left: Math.SQRT1_2,
  right: Math.SQRT1_2,
  top: 1,
  bottom: 0,
  back: Math.SQRT1_2,
};

/** What a radiation link is called in the ledger. */
export function radiation(from: string, to: string, exchangeAreaM2: number, label: string): Link {
  return { kind: 'radiation', from, to, exchangeAreaM2, label };
}

/** Wind and buoyancy together on a plate of a length in the direction of the wind. */
export function outdoorCoefficient(
  film: FilmAir,
  natural: NaturalCoefficient,
  { lengthM, shelter }: { lengthM: number; shelter: number },
): Coefficient {
  const coefficient: Coefficient = (surfaceK, airK, windMs) => {
    const air = film(surfaceK, airK);
    const forced = flatPlateForced(air, windMs * shelter, lengthM);
    return blended(natural(air, surfaceK, airK), forced);
  };
  return withLaw(coefficient, { film, ...natural.law, along: { lengthM, shelter } });
}

/** What the coefficient of a wall asks of it. */
export interface WindsweptWall {
  readonly heightM: number;
  /** Infinite for a wall that runs on. */
  readonly lengthM: number;
  readonly roughness: number;
  /** Speed of the wind on the wall against that of the free wind. */
  readonly windShelter: number;
}

/** Wind and buoyancy together on a wall of a building; TARP adds the two. */
export function wallCoefficient(film: FilmAir, wall: WindsweptWall, pressurePa: number): Coefficient {
  const { heightM, lengthM, roughness, windShelter } = wall;
  const natural = verticalPlate(heightM);
  // Its coefficient goes with the root of the speed.
  const sweep = {
    exposure: Math.sqrt(windShelter),
    roughness,
    perimeterPerAreaM: 2 / heightM + 2 / lengthM,
    pressurePa,
  };
  const coefficient: Coefficient = (surfaceK, airK, windMs) =>
    natural(film(surfaceK, airK), surfaceK, airK) + roughWallForced(windMs, sweep);
  return withLaw(coefficient, { film, ...natural.law, roughAt1Ms: roughWallForced(1, sweep) });
}

/** Links of a surface that takes the place of a face of the box: convection and long-wave exchange. */
export function outdoorSurface(
  setting: OutdoorSetting,
  film: FilmAir,
  { node, face, emittance }: { node: string; face: Face; emittance: number },
): Link[] {
  const { box, faceAreasM2, faceViews, wall, windShelter } = setting;
  const sweep = { lengthM: sweptLengthM(face, box), shelter: windShelter };
  const coefficient = outdoorCoefficient(film, naturalOf(face, box), sweep);
  const area = faceAreasM2[face];
  return [
    { kind: 'convection', from: node, to: 'outsideAir', areaM2: area, coefficient, label: 'convection' },
    ...longwave(node, area * emittance, faceViews[face], SKY_SHARE[face], wall),
  ];
}

type Size = OutdoorSetting['box'];

/** Still air at a face of the box. */
export function naturalOf(face: Face, { widthM, heightM, depthM }: Size): NaturalCoefficient {
  const levelLengthM = (widthM * depthM) / (2 * (widthM + depthM));
  if (face === 'top') return plateFacingUp(levelLengthM);
  return face === 'bottom' ? plateFacingDown(levelLengthM) : verticalPlate(heightM);
}

/** Way of the wind over a face, which blows along the wall. */
export function sweptLengthM(face: Face, { widthM, depthM }: Size): number {
  return face === 'left' || face === 'right' ? depthM : widthM;
}

/**
 * Long-wave exchange of an outdoor surface with sky, ground, wall and obstructions. Ground and wall are grey: they emit
 * with their emittance and mirror, with the rest, what they see themselves. Obstructions are black and as warm as the air.
 * @param emitterM2 area of the surface times its emittance
 */
export function longwave(
  node: string,
  emitterM2: number,
  view: Surroundings,
  skyShare: number,
  wall?: GreyWall,
): Link[] {
  const groundEmittance = OUTDOOR_ASSUMPTIONS.groundEmittance;
  const links = [
    radiation(node, 'sky', emitterM2 * view.sky * skyShare, 'longwaveSky'),
    radiation(node, 'outsideAir', emitterM2 * view.sky * (1 - skyShare), 'longwaveSky'),
    radiation(node, 'ground', emitterM2 * view.ground * groundEmittance, 'longwaveGround'),
    radiation(node, 'sky', emitterM2 * view.ground * (1 - groundEmittance), 'longwaveGround'),
    radiation(node, 'outsideAir', emitterM2 * view.obstruction, 'longwaveSurroundings'),
  ];
  if (wall === undefined) return links;
  const mirrored = emitterM2 * view.wall * (1 - wall.emittance);
  return [
    ...links,
    radiation(node, 'wallBeside', emitterM2 * view.wall * wall.emittance, 'longwaveWall'),
    radiation(node, 'sky', mirrored * wall.view.sky * SKY_SHARE.front, 'longwaveWall'),
    radiation(node, 'outsideAir', mirrored * wall.view.sky * (1 - SKY_SHARE.front), 'longwaveWall'),
    radiation(node, 'ground', mirrored * wall.view.ground, 'longwaveWall'),
    radiation(node, 'outsideAir', mirrored * wall.view.obstruction, 'longwaveWall'),
  ];
}
