/** Drawings of what shades a wall, for the buttons that add it. The wall stands at the left or behind, the box is black. */
import type { ComponentChildren } from 'preact';

/** What can be added. */
export type ShadeKind = 'eave' | 'sideWall' | 'front' | 'block' | 'tree';

const DRAWINGS: Record<ShadeKind, ComponentChildren> = {
  // From the side: the wall at the left, the roof's edge above the box, the ray that it stops.
  eave: (
    <>
      <path class="icon-wall" d="M2 2H10V42H2Z" />
      <path class="icon-thing" d="M10 6 34 12V17L10 11Z" />
      <path class="icon-box" d="M10 24H18V34H10Z" />
      <path class="icon-ray" d="M50 2 36 11" />
    </>
  ),
  // From above: two walls that meet, the box in the corner.
  sideWall: (
    <>
      <path class="icon-wall" d="M2 2H54V10H2Z" />
      <path class="icon-thing" d="M2 10H10V42H2Z" />
      <path class="icon-box" d="M24 10H34V17H24Z" />
      <path class="icon-ray" d="M14 38 26 20" />
    </>
  ),
  // From the side: the wall at the left, a fence that stands before it.
  front: (
    <>
      <path class="icon-wall" d="M2 2H10V42H2Z" />
      <path class="icon-box" d="M10 22H18V32H10Z" />
      <path class="icon-thing" d="M36 18H41V42H36ZM31 22H46V26H31ZM31 32H46V36H31Z" />
      <path class="icon-ground" d="M2 42H54" />
    </>
  ),
  // From the side: another house.
  block: (
    <>
      <path class="icon-wall" d="M2 2H10V42H2Z" />
      <path class="icon-box" d="M10 24H16V34H10Z" />
      <path class="icon-thing" d="M28 42V20L40 10 52 20V42Z" />
      <path class="icon-ground" d="M2 42H54" />
    </>
  ),
  tree: (
    <>
      <path class="icon-wall" d="M2 2H10V42H2Z" />
      <path class="icon-box" d="M10 24H16V34H10Z" />
      <circle class="icon-thing" cx="38" cy="16" r="13" />
      <path class="icon-ray" d="M38 29V42" />
      <path class="icon-ground" d="M2 42H54" />
    </>
  ),
};

export function ShadeIcon({ kind }: { kind: ShadeKind }) {
  return (
    <svg class="shade-icon" viewBox="0 0 56 44" width="56" height="44" aria-hidden="true">
      {DRAWINGS[kind]}
    </svg>
  );
}
