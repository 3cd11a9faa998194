/** What stands around the box on a wall, and what its faces see of it. */
import { type Face, openFaces, type PerFace, perFace } from '../faces.ts';
import type { Season } from '../shading/obstructions.ts';
import { buildScene, type Scene, type SceneInput } from '../shading/scene.ts';
import { type FaceView, faceView, WALL_ONLY } from '../shading/view-factors.ts';
import { boxPanels, wallPanel } from '../shading/wall-frame.ts';
import type { Site, Wall } from '../site.ts';
import { type Memory, memory } from './memory.ts';

/** When a local date falls, for trees in leaf. */
export function seasonOf(site: Site, date: string): Season {
  return { month: Number(date.slice(5, 7)), southern: site.place.latitudeDeg < 0 };
}

/** What stands around the box on a wall. */
export function standingOf({ box, building }: Site, wall: Wall, season: Season): SceneInput {
  const { edge, alongM } = wall;
  return {
    azimuthDeg: wall.azimuthDeg,
    wallHeightM: wall.heightM,
    boxTopM: box.mountHeightM + box.heightM / 2,
    eave: wall.eave,
    building: building !== null && edge !== null && alongM !== null ? { ...building, edge, alongM } : null,
    obstructions: wall.obstructions,
    horizon: wall.horizon,
    season,
  };
}

/** The same as a scene that rays go through. */
export function wallScene(site: Site, wall: Wall, season: Season): Scene {
  return buildScene(standingOf(site, wall, season));
}

/** What the faces of a box and the wall beside it see. */
export interface WallViews {
  readonly faces: PerFace<FaceView>;
  readonly wall: FaceView;
}

/** Views as they are remembered; found where they are not. */
export function storedViews(site: Site, wall: Wall, season: Season, views: Memory<WallViews> = memory(1)): WallViews {
  const standing = standingOf(site, wall, season);
  const { widthM, heightM, depthM, standOffM, mount, postDistanceM, mountHeightM } = site.box;
  const skyline = standing.horizon.some(([, elevationDeg]) => elevationDeg > 0);
  // But for a skyline, which is given by bearings, a view is the same whichever way the wall faces: it is that of a wall to the north.
  const seen: SceneInput = skyline ? standing : { ...standing, azimuthDeg: 0 };
  const key = JSON.stringify([seen, widthM, heightM, depthM, standOffM, mount, postDistanceM, mountHeightM]);
  return views.recall(key, () => {
    const scene = buildScene(seen);
    const panels = boxPanels(scene.frame, site.box);
    const open = openFaces(mount);
    return {
      faces: perFace((face: Face) => (open.includes(face) ? faceView(scene, panels[face]) : WALL_ONLY)),
      wall: faceView(scene, wallPanel(scene.frame, site.box, scene.wall)),
    };
  });
}
