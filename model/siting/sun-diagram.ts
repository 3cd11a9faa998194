/** The sun's paths over the year as the box on a wall sees them, with what stands before them. */
import { civilDay } from '../civil-day.ts';
import { openFaces, type PerFace, perFace } from '../faces.ts';
import type { WallPoint } from '../shading/bodies.ts';
import { skylineThrough } from '../shading/horizon.ts';
import { bodiesOf, buildingBodies, eaveBody } from '../shading/obstructions.ts';
import type { Scene } from '../shading/scene.ts';
import { type HiddenBand, silhouetteOf, skylineSilhouette, wallSilhouette } from '../shading/silhouettes.ts';
import { type SunPoints, sunlitCosine, sunPoints, sunVector } from '../shading/sunlit-fraction.ts';
import { backOutM, boxPanels, faceAreasM2, type Panel } from '../shading/wall-frame.ts';
import type { Obstruction, Site, Wall } from '../site.ts';
import { type SunPosition, sunPosition } from '../solar/sun-position.ts';
import { siteDay } from './design-day.ts';
import { namedWall } from './named-wall.ts';
import { seasonOf, standingOf, wallScene } from './wall-views.ts';

/** The sun at one instant and how much of it reaches the box. */
export interface SunOnBox extends SunPosition {
  readonly utc: Date;
  /** Share of the sun that reaches each face which is turned to it, 0 to 1; 0 for a face that is turned away. */
  readonly reaches: PerFace<number>;
  /** Of the sun that would fall on the box if it stood alone, the share that reaches it, 0 to 1. */
  readonly lit: number;
}

/** The sun's path through one day, while it is up. */
export interface SunPath {
  /** Local civil date, "2026-06-21". */
  readonly date: string;
  readonly isDesignDay: boolean;
  /** Each stands for the ten minutes from it on. */
  readonly points: SunOnBox[];
  /** The sun as the day ends, where it is up then: the path leads there, and it stands for no time of this day. */
  readonly end: SunOnBox | null;
  /** Hours in which direct sun, however weak, would reach some part of the box under a clear sky. */
  readonly litHours: number;
}

/** Something that hides part of the sky; `runs` of neighbouring bearings, each with what it hides. */
export interface Silhouette {
  readonly kind: 'wall' | 'building' | 'eave' | 'skyline' | Obstruction['kind'];
  /** Its place in the list of obstructions; null for what is not one of them. */
  readonly index: number | null;
  readonly transmittance: number;
  readonly runs: HiddenBand[][];
}

export interface SunDiagram {
  readonly wall: string;
  /** Bearings run from half a turn before this to half a turn after it, degrees. */
  readonly wallAzimuthDeg: number;
  readonly timeZone: string;
  /** The 21st of December to June and the design day; one half of the year mirrors the other. */
  readonly paths: SunPath[];
  /** As seen from the middle of the box, in the season of the design day. */
  readonly silhouettes: Silhouette[];
}

/** The sun's path is drawn through points this far apart, minutes. */
const POINT_EVERY_MIN = 10;

/** One day in each month of one half of the year; the other half goes back over the same paths. */
const MONTHS = ['12', '01', '02', '03', '04', '05', '06'];

/**
 * The sun diagram of a wall.
 * @throws SiteError when the site has no wall of that name
 */
export function sunDiagram(site: Site, wallName: string): SunDiagram {
  const wall = namedWall(site, wallName);
  const day = siteDay(site);
  const designDate = day.civil.date;
  const year = designDate.slice(0, 4);
  const dates = [...MONTHS.map((month) => `${year}-${month}-21`).filter((date) => date !== designDate), designDate];
  return {
    wall: wall.name,
    wallAzimuthDeg: wall.azimuthDeg,
    timeZone: site.place.timeZone,
    paths: dates.map((date) => sunPath(site, wall, date, date === designDate)),
    silhouettes: silhouettes(site, wall, wallScene(site, wall, seasonOf(site, designDate))),
  };
}

function sunPath(site: Site, wall: Wall, date: string, isDesignDay: boolean): SunPath {
  const onBox = boxInSun(site, wall, date);
  const civil = civilDay(date, site.place.timeZone);
  const stepMs = POINT_EVERY_MIN * 60_000;
  const points: SunOnBox[] = [];
  const sunAfter = (ms: number): SunOnBox | null => {
    const utc = new Date(civil.startUtc.getTime() + ms);
    const sun = sunPosition(utc, site.place.latitudeDeg, site.place.longitudeDeg);
    return sun.elevationDeg > 0 ? onBox(utc, sun) : null;
  };
  const dayMs = civil.hours * 3_600_000;
  for (let at = 0; at < dayMs; at += stepMs) {
    const sun = sunAfter(at);
    if (sun !== null) points.push(sun);
  }
  const litHours = (points.filter(({ lit }) => lit > 0).length * POINT_EVERY_MIN) / 60;
  return { date, isDesignDay, points, end: sunAfter(dayMs), litHours };
}

/** Tells how much of the sun reaches the box on a wall in the season of a date. */
export function boxInSun(site: Site, wall: Wall, date: string): (utc: Date, sun: SunPosition) => SunOnBox {
  const scene = wallScene(site, wall, seasonOf(site, date));
  const panels = boxPanels(scene.frame, site.box);
  const points = perFace((face) => sunPoints(panels[face], scene, []));
  const areas = faceAreasM2(site.box);
  const open = openFaces(site.box.mount);
  return (utc, sun) => {
    const direction = sunVector(sun);
    const rays = scene.sunRays(direction);
    let alone = 0;
    let reached = 0;
    const reaches = perFace((face) => {
      const turned = cosineTo(panels[face], direction);
      if (!open.includes(face) || turned <= 0) return 0;
      const cosine = sunlitCosine(scene, panels[face], points[face] as SunPoints, { direction, rays });
      alone += areas[face] * turned;
      reached += areas[face] * cosine;
      return cosine / turned;
    });
    return { ...sun, utc, reaches, lit: alone > 0 ? reached / alone : 0 };
  };
}

function cosineTo({ normal }: Panel, direction: readonly number[]): number {
  return normal.reduce((sum, part, axis) => sum + part * (direction[axis] as number), 0);
}

function silhouettes(site: Site, wall: Wall, scene: Scene): Silhouette[] {
  const { azimuthDeg, horizon } = wall;
  const eye: WallPoint = [0, backOutM(site.box) + site.box.depthM / 2, site.box.mountHeightM];
  const standing = standingOf(site, wall, scene.season);
  const seen = (body: Parameters<typeof silhouetteOf>[0]) => silhouetteOf(body, eye, azimuthDeg);
  const { building, eave, boxTopM, obstructions } = standing;
  const found: Silhouette[] = [
    { kind: 'skyline', index: null, transmittance: 0, runs: skylineSilhouette(skylineThrough(horizon), azimuthDeg) },
    ...obstructions.map(
      (obstruction, index): Silhouette => ({
        kind: obstruction.kind,
        index,
        // The crown stands first among the bodies of a tree, and it is what one sees through.
        transmittance: bodiesOf(obstruction, scene.season)[0]?.transmittance ?? 0,
        runs: bodiesOf(obstruction, scene.season).flatMap(seen),
      }),
    ),
    {
      kind: 'building',
      index: null,
      transmittance: 0,
      runs: building === null ? [] : buildingBodies(building).flatMap(seen),
    },
    {
      kind: 'eave',
      index: null,
      transmittance: eave?.transmittance ?? 0,
      runs: eave === null || eave.depthM <= 0 ? [] : seen(eaveBody(eave, boxTopM)),
    },
    { kind: 'wall', index: null, transmittance: 0, runs: wallSilhouette(scene.wall, eye, azimuthDeg) },
  ];
  return found.filter(({ runs, transmittance }) => runs.length > 0 && transmittance < 1);
}
