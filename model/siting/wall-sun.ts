/** The sun on each face of a box, on the wall beside it and on the ground before it through a day, shade taken into account. */
import { type PerFace, perFace } from '../faces.ts';
import { sunOnGroundShare } from '../shading/ground-shadow.ts';
import { sunlitCosine, sunVector } from '../shading/sunlit-fraction.ts';
import type { DayStep } from './design-day.ts';
import type { Receiver, WallShade } from './wall-shade.ts';

/** Sun on a surface by where it comes from, W/m2 on the surface, a number for each step. */
export interface SurfaceSun {
  /** Beam and the glow round the sun. */
  readonly beam: Float64Array;
  /** Dome and horizon band. */
  readonly diffuse: Float64Array;
  /** From ground and wall. */
  readonly reflected: Float64Array;
  /** The three together. */
  readonly total: Float64Array;
}

/** Sun through a day, W/m2. */
export interface WallSun {
  readonly faces: PerFace<SurfaceSun>;
  readonly wall: SurfaceSun;
  readonly ground: Float64Array;
}

/** The sun on the wall and on the open faces of the box at each step; zero at night and on a back at the wall. */
export function wallSun(
  shade: WallShade,
  steps: readonly DayStep[],
  { albedo, wallAbsorptance }: { albedo: number; wallAbsorptance: number },
): WallSun {
  const faces = perFace(() => dark(steps.length));
  const wall = dark(steps.length);
  const ground = new Float64Array(steps.length);
  steps.forEach((step, k) => {
    const { dni, dhi } = step.weather;
    if (dni <= 0 && dhi <= 0) return;
    const direction = sunVector(step.sun);
    const sunlight = { direction, rays: shade.scene.sunRays(direction) };
    const level = (dni + step.sky.circumsolarNormal) * Math.max(0, direction[2]);
    const groundSeen = ({ view }: Receiver): number =>
      step.sky.isotropic * view.groundSky + level * sunOnGroundShare(shade.scene, view.groundPoints, sunlight);

    /** Fills in a surface; `fromWall` is what the wall sends out, and nothing for the wall itself. */
    const receive = (receiver: Receiver, sun: SurfaceSun, groundWm2: number, fromWall: number): void => {
      const { factors, horizonBand } = receiver.view;
      const cosine = sunlitCosine(shade.scene, receiver.panel, receiver.points, sunlight);
      const beam = (dni + step.sky.circumsolarNormal) * cosine;
      // Perez's horizon part is negative under some skies; the diffuse light on a surface is not.
      const dome = step.sky.isotropic * factors.sky + step.sky.horizon * receiver.sinTilt * horizonBand;
      const diffuse = Math.max(0, dome);
      const reflected = albedo * groundWm2 * factors.ground + fromWall * factors.wall;
      sun.beam[k] = beam;
      sun.diffuse[k] = diffuse;
      sun.reflected[k] = reflected;
      sun.total[k] = beam + diffuse + reflected;
    };

    // The wall looks out on what the front looks out on.
    const groundAhead = groundSeen(shade.faces.front);
    ground[k] = groundAhead;
    receive(shade.wall, wall, groundAhead, 0);
    const fromWall = (1 - wallAbsorptance) * (wall.total[k] as number);
    for (const face of shade.open) {
      const receiver = shade.faces[face];
      const groundWm2 = face === 'front' ? groundAhead : groundSeen(receiver);
      receive(receiver, faces[face], groundWm2, fromWall);
    }
  });
  return { faces, wall, ground };
}

function dark(steps: number): SurfaceSun {
  return {
    beam: new Float64Array(steps),
    diffuse: new Float64Array(steps),
    reflected: new Float64Array(steps),
    total: new Float64Array(steps),
  };
}
