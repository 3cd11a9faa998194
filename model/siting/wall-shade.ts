/** What shades a wall and its box, worked out once for all hours. */
import { type Face, type PerFace, perFace } from '../faces.ts';
import type { Season } from '../shading/obstructions.ts';
import { buildScene, type Scene } from '../shading/scene.ts';
import { type SunPoints, sunPoints } from '../shading/sunlit-fraction.ts';
import { type FaceView, faceView } from '../shading/view-factors.ts';
import { boxPanels, FACE_TILT_DEG, type Panel, wallPanel } from '../shading/wall-frame.ts';
import type { Box, Wall } from '../site.ts';
import { sinDeg } from '../solar/angles.ts';

/** A surface that the sun may fall on, with what is worked out once for it. */
export interface Receiver {
  readonly panel: Panel;
  readonly points: SunPoints;
  readonly view: FaceView;
  readonly sinTilt: number;
}

/** Everything about a wall's shade that does not depend on the hour. */
export interface WallShade {
  readonly scene: Scene;
  readonly faces: PerFace<Receiver>;
  readonly wall: Receiver;
}

/** Prepares the shade of a wall for a box; done once, used at every step. */
export function prepareWallShade(box: Box, wall: Wall, season: Season): WallShade {
  const scene = buildScene({
    azimuthDeg: wall.azimuthDeg,
    wallHeightM: wall.heightM,
    boxTopM: box.mountHeightM + box.heightM / 2,
    eave: wall.eave,
    obstructions: wall.obstructions,
    horizon: wall.horizon,
    season,
  });
  const receiver = (panel: Panel, tiltDeg: number): Receiver => ({
    panel,
    points: sunPoints(panel, scene),
    view: faceView(scene, panel),
    sinTilt: sinDeg(tiltDeg),
  });
  const panels = boxPanels(scene.frame, box);
  return {
    scene,
    faces: perFace((face: Face) => receiver(panels[face], FACE_TILT_DEG[face])),
    wall: receiver(wallPanel(scene.frame, box), 90),
  };
}

/** View factors of every face, for the long-wave exchange. */
export function faceViewFactors(shade: WallShade) {
  return perFace((face) => shade.faces[face].view.factors);
}
