/** The five outer faces of a box on a wall, left and right as seen by a person who faces the wall. */
export const FACES = ['front', 'left', 'right', 'top', 'bottom'] as const;

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
  };
}
