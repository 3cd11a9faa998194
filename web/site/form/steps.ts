/** The order in which a person at the wall goes through the form: each step is a part of the site file. */
export interface Step {
  readonly path: string;
  /** For the button that leads to it. */
  readonly name: string;
}

export const STEPS: readonly [Step, ...Step[]] = [
  { path: 'place', name: 'Place' },
  { path: 'climate', name: 'Climate' },
  { path: 'building', name: 'Building' },
  { path: 'walls', name: 'Walls' },
  { path: 'box', name: 'Box' },
  { path: 'limits', name: 'Limits' },
  { path: 'constraints', name: 'What the wall must allow' },
  { path: 'ground', name: 'Ground' },
];

/** The step after the one at a path; null after the last, and for a part that is no step. */
export function stepAfter(path: string): Step | null {
  const at = STEPS.findIndex((step) => step.path === path);
  return at < 0 ? null : (STEPS[at + 1] ?? null);
}
