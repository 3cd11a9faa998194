/** Fills that tell kinds of things apart without colour. What hides all of the sun covers what lies behind it. */
import { KeySign } from './key-sign.tsx';
import type { Thing } from './things.ts';

/** Slanted, upright or level lines, crossed ones, or dots; px. */
const TILE_PX = 8;
const STROKES: Record<Thing['kind'], string> = {
  wall: '',
  building: 'M0 4H8',
  eave: 'M-2 2 2-2M0 8 8 0M6 10 10 6',
  skyline: 'M4 0V8',
  sideWall: 'M-2 6 2 10M0 0 8 8M6-2 10 2',
  front: 'M0 4H8M4 0V8',
  block: 'M0 0 8 8M0 8 8 0',
  tree: 'M2 2h2M6 6h2',
};

/** The patterns of some things; `prefix` keeps their names apart from those of other pictures. */
export function Patterns({ prefix, things }: { prefix: string; things: readonly Thing[] }) {
  return (
    <defs>
      {things.map(({ kind, letter, transmittance }) => (
        <pattern key={letter} id={`${prefix}-${letter}`} width={TILE_PX} height={TILE_PX} patternUnits="userSpaceOnUse">
          <rect
            width={TILE_PX}
            height={TILE_PX}
            class={kind === 'wall' ? 'mass-wall' : 'mass-thing'}
            fill-opacity={1 - transmittance}
          />
          <path d={STROKES[kind]} class={kind === 'tree' ? 'mass-line mass-leaves' : 'mass-line'} />
        </pattern>
      ))}
    </defs>
  );
}

export function patternOf(prefix: string, { letter }: Thing): string {
  return `url(#${prefix}-${letter})`;
}

/** A small sample of a pattern for the list beside a picture, with the letter. */
export function Swatch({ prefix, thing }: { prefix: string; thing: Thing }) {
  return (
    <KeySign>
      <rect x="1" y="1" width="34" height="22" fill={patternOf(prefix, thing)} stroke="currentColor" />
      <text class="haloed strong" x="18" y="12">
        {thing.letter}
      </text>
    </KeySign>
  );
}
