/** The sun on each face of a box, on the wall beside it and on the ground before it through a day, shade taken into account. */
import { type Face, type PerFace, perFace } from '../faces.ts';
import type { DayStep } from './design-day.ts';
import type { Receiver, WallShade } from './receivers.ts';
import { type SunlitShares, sunlitShares } from './sunlit-shares.ts';

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

/**
 * The sun on the wall and on the open faces of the box at each step; zero at night and on a back at the wall.
 * @param lit the shares for the suns of these steps, where they are at hand
 */
export function wallSun(
  shade: WallShade,
  steps: readonly DayStep[],
  { albedo, wallAbsorptance }: { albedo: number; wallAbsorptance: number },
  lit: SunlitShares = sunlitShares(shade, steps, hasLight),
): WallSun {
  const faces = perFace(() => dark(steps.length));
  const wall = dark(steps.length);
  const ground = new Float64Array(steps.length);
  for (let k = 0; k < steps.length; k++) {
    const step = steps[k] as DayStep;
    if (!hasLight(step)) continue;
    const { weather, sky } = step;
    const fromSun = weather.dni + sky.circumsolarNormal;
    const groundSeen = (face: Face): number =>
      sky.isotropic * shade.faces[face].view.groundSky + fromSun * (lit.grounds[face][k] as number);
    /** Fills in a surface that the sun meets at `cosine` and that is shone upon by ground and wall besides. */
    const receive = (sun: SurfaceSun, { view, sinTilt }: Receiver, cosine: number, reflected: number): void => {
      const beam = fromSun * cosine;
      // Perez's horizon part is negative under some skies; the diffuse light on a surface is not.
      const diffuse = Math.max(0, sky.isotropic * view.factors.sky + sky.horizon * sinTilt * view.horizonBand);
      sun.beam[k] = beam;
      sun.diffuse[k] = diffuse;
      sun.reflected[k] = reflected;
      sun.total[k] = beam + diffuse + reflected;
    };

    // The wall looks out on what the front looks out on.
    const groundAhead = groundSeen('front');
    ground[k] = groundAhead;
    receive(wall, shade.wall, lit.wall[k] as number, albedo * groundAhead * shade.wall.view.factors.ground);
    const fromWall = (1 - wallAbsorptance) * (wall.total[k] as number);
    for (const face of shade.open) {
      const { factors } = shade.faces[face].view;
      const fromGround = albedo * (face === 'front' ? groundAhead : groundSeen(face));
      const reflected = fromGround * factors.ground + fromWall * factors.wall;
      receive(faces[face], shade.faces[face], lit.faces[face][k] as number, reflected);
    }
  }
  return { faces, wall, ground };
}

/** Whether any light comes from sun or sky. */
const hasLight = ({ weather }: DayStep): boolean => weather.dni > 0 || weather.dhi > 0;

function dark(steps: number): SurfaceSun {
  return {
    beam: new Float64Array(steps),
    diffuse: new Float64Array(steps),
    reflected: new Float64Array(steps),
    total: new Float64Array(steps),
  };
}
