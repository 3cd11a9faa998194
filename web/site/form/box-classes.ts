/** Boxes of usual sizes to start from. Round figures of the trade, no product: common practice, no source. */
import { fromDisplay, type UnitSystem } from '../../../model/index.ts';
import { type Draft, valueAt, withValue } from '../draft.ts';

export interface BoxClass {
  readonly name: string;
  /** What such a box usually holds. */
  readonly holds: string;
  /** Width, height and depth, mm; inches. */
  readonly size: Readonly<Record<UnitSystem, readonly [number, number, number]>>;
  readonly powerW: number;
  readonly massKg: number;
}

export const BOX_CLASSES: readonly BoxClass[] = [
  {
    name: 'Small',
    holds: 'a line terminal or one small board',
    size: { metric: [200, 250, 100], us: [8, 10, 4] },
    powerW: 8,
    massKg: 1.5,
  },
  {
    name: 'Medium',
    holds: 'a terminal with its supply',
    size: { metric: [300, 350, 120], us: [12, 14, 5] },
    powerW: 15,
    massKg: 3.5,
  },
  {
    name: 'Large',
    holds: 'several units, or one with a battery beside it',
    size: { metric: [400, 500, 200], us: [16, 20, 8] },
    powerW: 30,
    massKg: 9,
  },
];

const SIDES = ['box.widthM', 'box.heightM', 'box.depthM'] as const;

/** The fields that a class fills in, SI. */
function figuresOf({ size, powerW, massKg }: BoxClass, units: UnitSystem): readonly (readonly [string, number])[] {
  const sides = SIDES.map((path, k): [string, number] => {
    const metres = fromDisplay('smallLength', size[units][k] as number, units);
    return [path, Number(metres.toPrecision(12))];
  });
  return [...sides, ['box.powerW', powerW], ['box.massKg', massKg]];
}

/** A draft whose box is of a class; its finish and what else is known of it stay. */
export function withBoxClass(draft: Draft, boxClass: BoxClass, units: UnitSystem): Draft {
  return figuresOf(boxClass, units).reduce((changed, [path, value]) => withValue(changed, path, value), draft);
}

/** The class that the entered figures are of, in either system of units; null for own figures. */
export function boxClassOf(draft: Draft): BoxClass | null {
  const systems: readonly UnitSystem[] = ['metric', 'us'];
  const fits = (boxClass: BoxClass) =>
    systems.some((units) => figuresOf(boxClass, units).every(([path, value]) => valueAt(draft, path) === value));
  return BOX_CLASSES.find(fits) ?? null;
}
