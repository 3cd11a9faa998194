/**
 * What goes on the truck for an address: the classes of a screening and the remedies that lead to them, cheapest first.
 *
 * The order is that of effort (remedy-changes.ts): parts before hours, so that what needs no part comes before what needs a
 * small one, a made one, another unit, and building work. Openings in the box are left out: whether its maker provides for
 * them is not known of a list of addresses. All of it is common practice, no source.
 */

export interface KitClass {
  readonly name: string;
  /** For whom it is. */
  readonly text: string;
  /** Ids of the remedies that lead to it; the part before a colon stands for all of its kind. */
  readonly remedies: readonly string[];
}

export const KIT_CLASSES = [
  { name: 'standard', text: 'the best wall keeps the box inside its limits as it is', remedies: [] },
  {
    name: 'mounting',
    text: 'the same box at another height or on brackets',
    remedies: ['lower', 'higher', 'brackets'],
  },
  { name: 'light finish', text: 'a white finish on box or hood', remedies: ['lighterFinish', 'lighterHood'] },
  { name: 'hood', text: 'a hood over the box', remedies: ['whiteHood', 'darkHood'] },
  {
    name: 'low power',
    text: 'a unit that gives off less, or its battery elsewhere',
    remedies: ['lessPower', 'batteryOut'],
  },
  { name: 'awning', text: 'an awning above the box', remedies: ['awning'] },
  { name: 'two remedies', text: 'two of these together', remedies: [] },
  { name: 'wide range', text: 'no remedy suffices; a unit with a higher upper limit does', remedies: [] },
  { name: 'no wall', text: 'no wall of this address keeps the box inside its limits', remedies: [] },
] as const satisfies readonly KitClass[];

export type KitName = (typeof KIT_CLASSES)[number]['name'];

/** By how much the upper limit of a wide-range unit lies above the standard one's, K. Common practice, no source: 65 and 85 °C. */
export const WIDE_RANGE_K = 20;

/** The class that a single remedy leads to; null for one that a screening does not consider. */
export function kitOfRemedy(id: string): KitName | null {
  const kind = id.split(':')[0] ?? '';
  return KIT_CLASSES.find(({ remedies }) => (remedies as readonly string[]).includes(kind))?.name ?? null;
}
