/**
 * The six outer faces of a box, left and right as seen by a person who faces the wall. The back of a box on a wall
 * looks into the gap behind it; that of a box on a post stands in the open like the others.
 */
export const FACES = ['front', 'left', 'right', 'top', 'bottom', 'back'] as const;

export type Face = (typeof FACES)[number];

/** One value for each face. */
export type PerFace<Value> = Record<Face, Value>;

/** Builds a value for each face. */
export function perFace<Value>(make: (face: Face) => Value): PerFace<Value> {
  return {
    front: make('front'),
    left: make('left'),
    right: make('right'),
    top: make('top'),
    bottom: make('bottom'),
    back: make('back'),
  };
}

/** How a box is held: on the wall, flat or on brackets, or on a post of its own before it. */
export const MOUNTS = ['wall', 'post'] as const;

export type Mount = (typeof MOUNTS)[number];

/** The faces that sun and wind reach. */
export function openFaces(mount: Mount): readonly Face[] {
  return mount === 'post' ? FACES : FACES.filter((face) => face !== 'back');
}
