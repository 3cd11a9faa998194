/** What shades a wall and its box, worked out once for all hours. */
import type { CivilDay } from '../civil-day.ts';
import { type Face, openFaces, perFace } from '../faces.ts';
import type { Season } from '../shading/obstructions.ts';
import { type SunPoints, sunPoints, sunVector } from '../shading/sunlit-fraction.ts';
import { type FaceView, WALL_ONLY } from '../shading/view-factors.ts';
import { boxPanels, FACE_TILT_DEG, type Panel, wallPanel } from '../shading/wall-frame.ts';
import type { Site, Wall } from '../site.ts';
import { sinDeg } from '../solar/angles.ts';
import type { SunPosition } from '../solar/sun-position.ts';
import { type Memory, memory } from './memory.ts';
import type { Receiver, WallShade } from './receivers.ts';
import { type SunlitShares, sunlitShares } from './sunlit-shares.ts';
import { seasonOf, standingOf, storedViews, type WallViews, wallScene } from './wall-views.ts';

/** One in this many steps of the day shows how finely the shade on the faces is to be sampled. */
const SUN_EVERY = 3;

/** The shade of a wall, and what the suns of a day make of it. */
export interface DayShade extends WallShade {
  readonly lit: SunlitShares;
}

/**
 * Prepared shades. Sending the rays of a wall with an eave costs more than all the rest of its day, and most changes of a
 * site, such as another power or limit, move nothing that shades.
 */
export interface ShadeMemory {
  readonly walls: Memory<DayShade>;
  /** Views that walls of other bearings and other days may share. */
  readonly views: Memory<WallViews>;
}

/** Shades kept at most: the walls of a large building before and after an edit. */
const SHADES_KEPT = 64;

/** An empty memory of shades and views; whoever computes several days or sites hands the same one to all. */
export function shadeMemory(): ShadeMemory {
  return { walls: memory(SHADES_KEPT), views: memory(SHADES_KEPT) };
}

/** What of a day the shade depends on, and where shades are kept. */
export interface ShadedDay {
  readonly civil: CivilDay;
  readonly steps: readonly { readonly sun: SunPosition }[];
  readonly shades: ShadeMemory;
}

/** Prepares the shade of a wall for a box through a day, or recalls it; used at every step. */
export function prepareWallShade(site: Site, wall: Wall, day: ShadedDay): DayShade {
  return day.shades.walls.recall(shadeKey(site, wall, day), () => {
    const suns = day.steps.filter((_, k) => k % SUN_EVERY === 0).map(({ sun }) => sun);
    const shade = prepareShade(site, wall, { season: seasonOf(site, day.civil.date), suns, views: day.shades.views });
    return { ...shade, lit: sunlitShares(shade, day.steps) };
  });
}

/** All that the shade of a wall depends on: what stands there, the shape and place of the box, the suns of the day. */
function shadeKey(site: Site, wall: Wall, { civil, steps }: ShadedDay): string {
  // What is named here changes no shade; a field of the box that is new is taken to change it.
  const {
    solarAbsorptance: _a,
    emittance: _e,
    powerW: _p,
    massKg: _m,
    duty: _d,
    hood: _h,
    vents: _v,
    ...shape
  } = site.box;
  const { latitudeDeg, longitudeDeg } = site.place;
  const standing = standingOf(site, wall, seasonOf(site, civil.date));
  return JSON.stringify([standing, shape, latitudeDeg, longitudeDeg, civil.startUtc, civil.hours, steps.length]);
}

/**
 * Prepares the shade of a wall for a box in a season.
 * @param suns of which the sunlit sum is to settle
 */
export function prepareShade(
  site: Site,
  wall: Wall,
  {
    season,
    suns: positions,
    views: store,
  }: { season: Season; suns: readonly SunPosition[]; views?: Memory<WallViews> },
): WallShade {
  const { box } = site;
  const scene = wallScene(site, wall, season);
  const views = storedViews(site, wall, season, store);
  const suns = positions
    .filter(({ elevationDeg }) => elevationDeg > 0)
    .map(sunVector)
    .map((direction) => ({ direction, rays: scene.sunRays(direction) }));
  const receiver = (panel: Panel, tiltDeg: number, view: FaceView): Receiver => ({
    panel,
    points: sunPoints(panel, scene, suns),
    view,
    sinTilt: sinDeg(tiltDeg),
  });
  const panels = boxPanels(scene.frame, box);
  const open = openFaces(box.mount);
  return {
    scene,
    open,
    faces: perFace((face: Face) => {
      // The back of a box on the wall looks into the gap.
      return open.includes(face)
        ? receiver(panels[face], FACE_TILT_DEG[face], views.faces[face])
        : { panel: panels[face], points: NO_POINTS, view: WALL_ONLY, sinTilt: 0 };
    }),
    wall: receiver(wallPanel(scene.frame, box, scene.wall), 90, views.wall),
  };
}

const NO_POINTS: SunPoints = { scouts: [], all: [] };

/** View factors of every face, for the long-wave exchange. */
export function faceViewFactors(shade: WallShade) {
  return perFace((face) => shade.faces[face].view.factors);
}
