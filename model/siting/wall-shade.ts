/** What shades a wall and its box, worked out once for all hours. */
import { type Face, type PerFace, perFace } from '../faces.ts';
import { buildScene, type Scene } from '../shading/scene.ts';
import type { Vector } from '../shading/vector.ts';
import { type FaceView, faceView } from '../shading/view-factors.ts';
import { boxPanels, FACE_TILT_DEG, type Panel, samplePoints, wallPanel } from '../shading/wall-frame.ts';
import type { Box, Wall } from '../site.ts';
import { sinDeg } from '../solar/angles.ts';

/** A surface that the sun may fall on, with what is worked out once for it. */
export interface Receiver {
  readonly panel: Panel;
  readonly points: readonly Vector[];
  readonly view: FaceView;
  readonly sinTilt: number;
}

/** Everything about a wall's shade that does not depend on the hour. */
export interface WallShade {
  readonly scene: Scene;
  readonly faces: PerFace<Receiver>;
  readonly wall: Receiver;
}

/**
 * Points across and along a panel at which the sun is looked for: eaves draw level shadow lines, so that upright faces
 * need more of them one above the other than side by side.
 */
const SUN_POINTS = { across: 4, along: 18 };

/** Prepares the shade of a wall for a box; done once, used at every step. */
export function prepareWallShade(box: Box, wall: Wall): WallShade {
  const scene = buildScene({
    azimuthDeg: wall.azimuthDeg,
    wallHeightM: wall.heightM,
    boxTopM: box.mountHeightM + box.heightM / 2,
    eave: wall.eave,
    horizon: wall.horizon,
  });
  const receiver = (panel: Panel, tiltDeg: number): Receiver => ({
    panel,
    points: samplePoints(panel, SUN_POINTS.across, SUN_POINTS.along),
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
