/** The sun, its way and its light, and the watts of the faces. */
import type { Face, PlayedDay, SunPosition } from '../../../model/index.ts';
import { linePath, onCircle, type Point } from '../../site/pictures/plane.ts';
import { takenInW } from './face-classes.ts';
import { sunWays } from './sun-dome.ts';

export function SunWay({ suns, place }: { suns: readonly SunPosition[]; place(sun: SunPosition): Point }) {
  return (
    <g class="sun-way">
      {sunWays(suns, place).map((way) => (
        <path key={String(way[0])} d={linePath(way)} />
      ))}
    </g>
  );
}

export function SunDisc({ at: [x, y], up, fontPx }: { at: Point; up: boolean; fontPx: number }) {
  if (!up) return null;
  const radius = fontPx * 0.55;
  const rays = Array.from({ length: 8 }, (_, k) =>
    linePath([onCircle([0, 0], radius * 1.3, k * 45), onCircle([0, 0], radius * 1.8, k * 45)]),
  );
  return (
    <g class="lesson-sun" transform={`translate(${x} ${y})`}>
      <circle r={radius} />
      <path d={rays.join('')} />
    </g>
  );
}

interface SunRayProps {
  readonly from: Point;
  /** The middle of the box. */
  readonly to: Point;
  /** It ends this far before the middle, so that its head stays in sight. */
  readonly shortPx: number;
  readonly sun: SunPosition;
  readonly lit: boolean;
}

/** From the sun to the box: an arrow where direct sun reaches it, dashes where something is in the way. */
export function SunRay({ from, to: middle, shortPx, sun, lit }: SunRayProps) {
  if (sun.elevationDeg <= 0) return null;
  const [dx, dy] = [middle[0] - from[0], middle[1] - from[1]];
  const distance = Math.hypot(dx, dy);
  const length = distance - shortPx;
  if (length < 1) return null;
  const [ux, uy] = [dx / distance, dy / distance];
  const to: Point = [middle[0] - ux * shortPx, middle[1] - uy * shortPx];
  const head = Math.min(18, length / 2);
  const corner = (side: number): Point => [
    to[0] - ux * head + side * uy * head * 0.5,
    to[1] - uy * head - side * ux * head * 0.5,
  ];
  return (
    <g class={lit ? 'sun-ray' : 'sun-ray sun-ray-blocked'}>
      <path d={linePath([from, to])} />
      {lit && <path class="ray-head" d={`${linePath([corner(1), to, corner(-1)])}Z`} />}
    </g>
  );
}

interface FaceWattsProps {
  readonly played: PlayedDay;
  readonly step: number;
  readonly fontPx: number;
  readonly places: Partial<Record<Face, Point>>;
}

/** Faces that take in less have no number: the picture would be full of zeros at night. */
const LEAST_W = 0.05;

export function FaceWatts({ played, step, fontPx, places }: FaceWattsProps) {
  return (
    <g class="face-watts">
      {(Object.entries(places) as [Face, Point][]).map(([face, [x, y]]) => {
        const watts = takenInW(played, face, step);
        if (watts < LEAST_W) return null;
        return (
          <text key={face} class="at-middle" x={x} y={y + fontPx * 0.35}>
            {watts.toFixed(watts < 10 ? 1 : 0)} W
          </text>
        );
      })}
    </g>
  );
}
