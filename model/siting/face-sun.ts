/** The sun on each face of a box, on the wall beside it and on the ground before it, shade taken into account. */
import { type Face, type PerFace, perFace } from '../faces.ts';
import { shadedShare } from '../shading/ground-shadow.ts';
import { buildScene, type Scene } from '../shading/scene.ts';
import { sunlitCosine, sunVector } from '../shading/sunlit-fraction.ts';
import type { Vector } from '../shading/vector.ts';
import { type FaceView, faceView } from '../shading/view-factors.ts';
import { boxPanels, FACE_TILT_DEG, type Panel, samplePoints, wallPanel } from '../shading/wall-frame.ts';
import type { Box, Wall } from '../site.ts';
import { sinDeg } from '../solar/angles.ts';
import type { DayStep } from './design-day.ts';

/** A surface that the sun may fall on, with what is worked out once for it. */
interface Receiver {
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

/** Sun on a surface by where it comes from, W/m2 on the surface. */
export interface SurfaceSun {
  /** Beam and the glow round the sun. */
  readonly beam: number;
  /** Dome and horizon band. */
  readonly diffuse: number;
  /** From ground and wall. */
  readonly reflected: number;
}

/** Sun at one instant, W/m2. */
export interface WallSun {
  readonly faces: PerFace<SurfaceSun>;
  readonly wall: SurfaceSun;
  readonly ground: number;
}

export const totalSun = (sun: SurfaceSun): number => sun.beam + sun.diffuse + sun.reflected;

/** Points across and along a panel at which the sun is looked for. */
const SUN_POINTS = 6;

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
    points: samplePoints(panel, SUN_POINTS, SUN_POINTS),
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

const NO_SUN: SurfaceSun = { beam: 0, diffuse: 0, reflected: 0 };
const NIGHT: WallSun = { faces: perFace(() => NO_SUN), wall: NO_SUN, ground: 0 };

/** The sun at one step of the day on every surface of a wall. */
export function wallSun(shade: WallShade, step: DayStep, albedo: number, wallAbsorptance: number): WallSun {
  const { sun, weather, sky } = step;
  if (weather.dni <= 0 && weather.dhi <= 0) return NIGHT;
  const direction = sunVector(sun);
  const level = weather.dni * Math.max(0, direction[2]);
  const groundSeen = (receiver: Receiver): number =>
    weather.dhi + level * (1 - shadedShare(shade.scene, receiver.view.groundPoints, direction));

  const direct = (receiver: Receiver): Omit<SurfaceSun, 'reflected'> => {
    const cosine = sunlitCosine(shade.scene, receiver.panel, receiver.points, direction);
    const { factors, horizonBand } = receiver.view;
    const diffuse = sky.isotropic * factors.sky + sky.horizon * receiver.sinTilt * horizonBand;
    // Perez's horizon part is negative under some skies; the diffuse light on a surface is not.
    return { beam: (weather.dni + sky.circumsolarNormal) * cosine, diffuse: Math.max(0, diffuse) };
  };

  const wallDirect = direct(shade.wall);
  const wallReflected = albedo * groundSeen(shade.wall) * shade.wall.view.factors.ground;
  const wall = { ...wallDirect, reflected: wallReflected };
  const fromWall = (1 - wallAbsorptance) * totalSun(wall);

  return {
    faces: perFace((face) => {
      const receiver = shade.faces[face];
      const { factors } = receiver.view;
      const reflected = albedo * groundSeen(receiver) * factors.ground + fromWall * factors.wall;
      return { ...direct(receiver), reflected };
    }),
    wall,
    ground: groundSeen(shade.faces.front),
  };
}

/** View factors of every face, for the long-wave exchange. */
export function faceViewFactors(shade: WallShade) {
  return perFace((face) => shade.faces[face].view.factors);
}
