/** How much of the sun reaches the surfaces of a wall at each step of a day: geometry alone, looked up by whatever the sky is. */
import { type PerFace, perFace } from '../faces.ts';
import { sunOnGroundShare } from '../shading/ground-shadow.ts';
import { sunlitCosine, sunVector } from '../shading/sunlit-fraction.ts';
import type { SunPosition } from '../solar/sun-position.ts';
import type { WallShade } from './receivers.ts';

/** Numbers from 0 to 1, one for each step. */
export interface SunlitShares {
  /** Sunlit projected fraction of each face and of the wall: cosine of incidence times what reaches the face. */
  readonly faces: PerFace<Float64Array>;
  readonly wall: Float64Array;
  /** Sine of the sun's elevation times the sunlit share of the ground that a face sees; that of the front is the wall's, too. */
  readonly grounds: PerFace<Float64Array>;
}

/**
 * Works out the shares for the suns of some steps; nothing is lit while the sun is down.
 * @param wanted which of the steps are asked for; all where left out
 */
export function sunlitShares<Step extends { readonly sun: SunPosition }>(
  shade: WallShade,
  steps: readonly Step[],
  wanted: (step: Step) => boolean = () => true,
): SunlitShares {
  const column = () => new Float64Array(steps.length);
  const shares: SunlitShares = { faces: perFace(column), wall: column(), grounds: perFace(column) };
  const { scene } = shade;
  steps.forEach((step, k) => {
    const { sun } = step;
    if (sun.elevationDeg <= 0 || !wanted(step)) return;
    const direction = sunVector(sun);
    const sunlight = { direction, rays: scene.sunRays(direction) };
    const { panel, points } = shade.wall;
    shares.wall[k] = sunlitCosine(scene, panel, points, sunlight);
    for (const face of shade.open) {
      const { view, panel: facePanel, points: facePoints } = shade.faces[face];
      shares.faces[face][k] = sunlitCosine(scene, facePanel, facePoints, sunlight);
      shares.grounds[face][k] = direction[2] * sunOnGroundShare(scene, view.groundPoints, sunlight);
    }
  });
  return shares;
}
