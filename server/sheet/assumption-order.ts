/** Which assumptions a sheet tells first, where not all of them find room. */
import type { Assumption } from '../../model/index.ts';

/** Subjects by how much the forecast hangs on them, a group a line; a subject takes the first group that names it or what it is part of. */
const GROUPS: readonly (readonly string[])[] = [
  ['climate', 'weather'],
  ['wind', 'surroundings'],
  [
    'box.solarAbsorptance',
    'box.powerW',
    'box.duty',
    'duty',
    'ground.albedo',
    'walls[].groundAlbedo',
    'walls[].windShelter',
  ],
  ['box', 'electronics', 'battery', 'rooms', 'ground', 'limits'],
  ['walls[].construction', 'walls[].solarAbsorptance', 'walls[].eave', 'walls[].obstructions', 'building'],
];

/** Bookkeeping, and what is checked or touched: no figure of the forecast comes from it. */
const NOT_OF_HEAT = ['constraints', 'earthing', 'place.timeZone', 'walls[].edge', 'box.material'];

/** The assumptions about heat, the weightiest first, in their former order within a group. */
export function byWeight(assumptions: readonly Assumption[]): Assumption[] {
  const about = assumptions.filter(({ subject }) => !NOT_OF_HEAT.some((one) => isPartOf(subject, one)));
  return about.sort((a, b) => groupOf(a) - groupOf(b));
}

function groupOf({ subject }: Assumption): number {
  const group = GROUPS.findIndex((subjects) => subjects.some((one) => isPartOf(subject, one)));
  return group < 0 ? GROUPS.length : group;
}

const isPartOf = (subject: string, whole: string): boolean =>
  subject === whole || subject.startsWith(`${whole}.`) || subject.startsWith(`${whole}[`);
