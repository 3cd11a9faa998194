/** The surfaces of a wall that the sun may fall on, as they are prepared once for all hours. */
import type { Face, PerFace } from '../faces.ts';
import type { Scene } from '../shading/scene.ts';
import type { SunPoints } from '../shading/sunlit-fraction.ts';
import type { FaceView } from '../shading/view-factors.ts';
import type { Panel } from '../shading/wall-frame.ts';

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
  /** The faces that sun and wind reach. */
  readonly open: readonly Face[];
  readonly faces: PerFace<Receiver>;
  readonly wall: Receiver;
}
