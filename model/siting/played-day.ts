/** A wall's day opened up: what a person sees who plays it hour by hour, and what each figure is made of. */
import type { Weather } from '../climate/design-climate.ts';
import { type Face, openFaces, type PerFace, perFace } from '../faces.ts';
import { KELVIN } from '../physical-constants.ts';
import { faceAreasM2 } from '../shading/wall-frame.ts';
import type { Site, Wall } from '../site.ts';
import { extraterrestrialNormal } from '../solar/extraterrestrial.ts';
import type { SunPosition } from '../solar/sun-position.ts';
import { boxNodes } from '../thermal/box-network.ts';
import { covers } from '../thermal/hood.ts';
import type { Link } from '../thermal/network.ts';
import { storageW } from '../thermal/periodic-day.ts';
import { cell, readRow } from '../thermal/step-table.ts';
import { assumptionsOf } from './assumptions.ts';
import { dutyShares } from './day-forcing.ts';
import { noonOf, type SiteDay, siteDay } from './design-day.ts';
import { resultOf } from './evaluate-day.ts';
import { ledgerAt } from './ledger.ts';
import { type MarchedWall, marchWall } from './march-wall.ts';
import { namedWall } from './named-wall.ts';
import type { DayOptions, DayResult, Ledger, LedgerPath } from './results.ts';
import { prepareWallShade, type ShadeMemory } from './wall-shade.ts';
import type { SurfaceSun } from './wall-sun.ts';

export interface PlayOptions extends DayOptions {
  /** Shades of former days; those of walls that nothing was moved at are taken from it. */
  readonly shades?: ShadeMemory;
}

/** A way of heat across the border of the box, or between the air inside and what it touches. */
export interface HeatWay {
  /** Node in the box; for the ways of the air inside that air. */
  readonly inner: string;
  /** Node at the other end. */
  readonly outer: string;
  readonly kind: Link['kind'];
  /** Area times emittance times view factor, m2, for radiation; area, m2, for convection; W/K for conduction. */
  readonly size: number;
  /** Convection coefficient at each step, W/(m2 K); null for the other kinds. */
  readonly coefficientWm2K: number[] | null;
  /** Heat from `outer` to `inner` at each step, W. */
  readonly inwardW: number[];
}

/** A way across the border of the box, and the path of the ledger that it belongs to. */
export interface BorderWay extends HeatWay {
  readonly path: LedgerPath;
}

/** One wall through one day, step by step; plain data, one number a step in every list. */
export interface PlayedDay {
  readonly site: Site;
  readonly wall: Wall;
  readonly result: DayResult;
  readonly stepS: number;
  readonly suns: SunPosition[];
  /** Apparent solar time, hours. */
  readonly solarHours: number[];
  readonly weather: Weather[];
  /** Heat into the box along each path, W. */
  readonly ledgers: Ledger[];
  /** Sun taken in by each face of the box, W; none on a face that a hood covers. */
  readonly absorbedW: PerFace<number[]>;
  /** Sun taken in by the sheet of the hood before a face, W. */
  readonly hoodAbsorbedW: PerFace<number[]>;
  /** Sun on a face, or on the sheet before it, W/m2: beam with the glow round the sun, sky, ground and wall. */
  readonly beamWm2: PerFace<number[]>;
  readonly diffuseWm2: PerFace<number[]>;
  readonly reflectedWm2: PerFace<number[]>;
  /** Cosine of the sun's incidence on a face times the share of the face that it reaches. */
  readonly litCosine: PerFace<number[]>;
  /** Glow round the sun, normal to it, W/m2. */
  readonly circumsolarWm2: number[];
  /** Normal to the sun outside the atmosphere, W/m2; that of noon, all day. */
  readonly extraterrestrialWm2: number;
  readonly relativeAirMass: number[];
  /** Share of the entered power that is given off. */
  readonly dutyShares: number[];
  /** Temperatures of all nodes, degC. */
  readonly nodesC: Readonly<Record<string, number[]>>;
  readonly border: BorderWay[];
  /** Ways between the air inside and what it touches; `outer` is what it touches. */
  readonly airWays: HeatWay[];
  /** Heat that the air inside itself stores, W. */
  readonly airStorageW: number[];
}

/**
 * Plays one wall of a site through its design day.
 * @throws SiteError when the site has no wall of that name
 */
export function playDay(site: Site, wallName: string, options: PlayOptions = {}): PlayedDay {
  const wall = namedWall(site, wallName);
  const day = siteDay(site, options);
  return playedWall(site, wall, day, options);
}

function playedWall(site: Site, wall: Wall, day: SiteDay, { units }: PlayOptions): PlayedDay {
  const shade = prepareWallShade(site, wall, day);
  const marched = marchWall(site, wall, day, { shade });
  const { network, forcing, march, sun } = marched;
  const { box } = site;
  const areas = faceAreasM2(box);
  const open = openFaces(box.mount);
  const none = (): number[] => day.steps.map(() => 0);
  const part = (key: keyof SurfaceSun) => perFace((face) => Array.from(sun.faces[face][key]));
  const taken = (face: Face, absorptance: number): number[] =>
    Array.from(sun.faces[face].total, (wm2) => absorptance * areas[face] * wm2);
  const columns = network.names.map((_, node) =>
    Array.from({ length: forcing.steps }, (__, step) => cell(march.temperaturesK, step, node) - KELVIN),
  );
  const air = network.indexOf('insideAir');
  return {
    site,
    wall,
    result: { ...resultOf(site, wall, day, marched), assumptions: assumptionsOf(site, day.climate, units) },
    stepS: day.stepS,
    suns: day.steps.map((step) => step.sun),
    solarHours: day.steps.map((step) => step.solarHour),
    weather: day.steps.map((step) => step.weather),
    ledgers: day.steps.map((_, step) => ledgerAt({ network, forcing, march, step, sun, box })),
    absorbedW: perFace((face) =>
      open.includes(face) && !covers(box.hood, face) ? taken(face, box.solarAbsorptance) : none(),
    ),
    hoodAbsorbedW: perFace((face) =>
      box.hood !== null && open.includes(face) && covers(box.hood, face)
        ? taken(face, box.hood.solarAbsorptance)
        : none(),
    ),
    beamWm2: part('beam'),
    diffuseWm2: part('diffuse'),
    reflectedWm2: part('reflected'),
    litCosine: perFace((face) => Array.from(shade.lit.faces[face])),
    circumsolarWm2: day.steps.map((step) => step.sky.circumsolarNormal),
    extraterrestrialWm2: extraterrestrialNormal(noonOf(day.civil)),
    relativeAirMass: day.steps.map((step) => step.relativeAirMass),
    dutyShares: Array.from(dutyShares(site, day)),
    nodesC: Object.fromEntries(network.names.map((name, node) => [name, columns[node] as number[]])),
    ...heatWays(marched),
    airStorageW: day.steps.map((_, step) => storageW(network, forcing, march, step, air)),
  };
}

/** The ways of heat that the figures of a lesson are made of. */
function heatWays(marched: MarchedWall): Pick<PlayedDay, 'border' | 'airWays'> {
  const { network } = marched;
  const box = new Set(boxNodes(network));
  const border: BorderWay[] = [];
  const airWays: HeatWay[] = [];
  network.links.forEach((link, k) => {
    const fromBox = box.has(link.from);
    if (fromBox !== box.has(link.to)) {
      border.push({ ...heatWay(marched, link, k, fromBox), path: link.label as LedgerPath });
    }
    if (link.from === 'insideAir' || link.to === 'insideAir') {
      airWays.push(heatWay(marched, link, k, link.from === 'insideAir'));
    }
  });
  return { border, airWays };
}

function heatWay({ network, forcing, march }: MarchedWall, link: Link, k: number, fromIsInner: boolean): HeatWay {
  const [from, to] = [network.indexOf(link.from), network.indexOf(link.to)];
  const t = new Float64Array(network.names.length);
  const inwardW: number[] = [];
  const coefficients: number[] = [];
  for (let step = 0; step < forcing.steps; step++) {
    readRow(march.temperaturesK, step, t);
    const windMs = forcing.windMs[step] as number;
    inwardW.push(network.linkFlowW(k, t, windMs) * (fromIsInner ? -1 : 1));
    if (link.kind === 'convection') coefficients.push(link.coefficient(t[from] as number, t[to] as number, windMs));
  }
  return {
    inner: fromIsInner ? link.from : link.to,
    outer: fromIsInner ? link.to : link.from,
    kind: link.kind,
    size: sizeOf(link),
    coefficientWm2K: link.kind === 'convection' ? coefficients : null,
    inwardW,
  };
}

function sizeOf(link: Link): number {
  if (link.kind === 'conduction') return link.conductanceWK;
  return link.kind === 'radiation' ? link.exchangeAreaM2 : link.areaM2;
}
