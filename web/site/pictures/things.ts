/** The things around a box that the pictures show: the letter that stands in them, and their names in words. */
import type { PlanShape, Silhouette, SunDiagram, WallPlan } from '../../../model/index.ts';

export type ThingKind = Silhouette['kind'] | PlanShape['kind'];

export interface Thing {
  readonly kind: ThingKind;
  readonly index: number | null;
  readonly letter: string;
  /** "tree 2": a number only where there are several of the kind. */
  readonly name: string;
  readonly transmittance: number;
}

const NAMES: Record<ThingKind, string> = {
  wall: 'the wall itself',
  building: 'the rest of the building',
  eave: 'the eave',
  skyline: 'the skyline',
  sideWall: 'the side wall',
  front: 'the fence or facade in front',
  block: 'the block',
  tree: 'the tree',
};

/** Own things first, then what stands around, as in the list of obstructions, then the skyline. */
const ORDER: readonly ThingKind[] = ['wall', 'eave', 'building', 'sideWall', 'front', 'block', 'tree', 'skyline'];

type Sighted = Pick<Thing, 'kind' | 'index' | 'transmittance'>;

const sameThing = (a: Pick<Thing, 'kind' | 'index'>, b: Pick<Thing, 'kind' | 'index'>) =>
  a.kind === b.kind && a.index === b.index;

/** All that either picture shows, each once. */
export function thingsAround({ silhouettes }: SunDiagram, { shapes, building }: WallPlan): Thing[] {
  const own: Sighted[] = [{ kind: 'wall', index: null, transmittance: 0 }];
  if (building !== null) own.push({ kind: 'building', index: null, transmittance: 0 });
  const sighted: Sighted[] = [];
  // Of a tree, the crown comes first: one sees through it, not through the trunk.
  for (const thing of [...own, ...silhouettes, ...shapes]) {
    if (!sighted.some((other) => sameThing(other, thing))) sighted.push(thing);
  }
  sighted.sort((a, b) => rank(a) - rank(b));
  return sighted.map(({ kind, index, transmittance }, k) => {
    const alike = sighted.filter((other) => other.kind === kind);
    const number = alike.findIndex((other) => other.index === index) + 1;
    const name = alike.length > 1 ? `${NAMES[kind].replace('the ', '')} ${number}` : NAMES[kind];
    return { kind, index, transmittance, letter: letterAt(k), name };
  });
}

export function thingOf(things: readonly Thing[], sighted: Pick<Thing, 'kind' | 'index'>): Thing | undefined {
  return things.find((thing) => sameThing(thing, sighted));
}

/** "the eave", "the tree 2, which lets 30 % of the sun through" */
export function thingWords({ name, transmittance }: Thing): string {
  const through = Math.round(transmittance * 100);
  return through > 0 ? `${name}, which lets ${through}\u00a0% of the sun through` : name;
}

/** "a", "a and b", "a, b and c" */
export function listed(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

function rank({ kind, index }: Sighted): number {
  const obstruction = index !== null;
  return obstruction ? ORDER.indexOf('sideWall') + index / 1000 : ORDER.indexOf(kind);
}

/** A to Z, then A1 to Z1 and on. */
function letterAt(k: number): string {
  return `${String.fromCharCode(65 + (k % 26))}${k < 26 ? '' : Math.floor(k / 26)}`;
}
