/** A box from above, north up: the sun on its way, and the faces by what they take in. The box is drawn large. */
import type { Face, PlayedDay } from '../../../model/index.ts';
import { onCircle, type Point } from '../../site/pictures/plane.ts';
import { useSize } from '../use-size.ts';
import { faceLook, isLit, type SceneProps } from './scene.ts';
import { FaceWatts, SunDisc, SunRay, SunWay } from './scene-parts.tsx';
import { sunFromAbove } from './sun-dome.ts';

/** Room round the dome for the names of the directions, in letters. */
const RIM_LETTERS = 1.5;

export function PlanScene({ played, step, classes, description }: SceneProps) {
  const { ref, size } = useSize();
  const { fontPx } = size;
  const side = Math.min(size.widthPx, fontPx * 20);
  const middle: Point = [side / 2, side / 2];
  const radius = side / 2 - RIM_LETTERS * fontPx;
  const { wall, suns } = played;
  const sun = suns[step];
  const at = (point: Point): Point => [middle[0] + point[0], middle[1] + point[1]];
  const place = (one: PlayedDay['suns'][number]) => at(sunFromAbove(one, radius));
  const box = boxFromAbove(played, radius);
  const turned = (point: Point) => at(turn(point, wall.azimuthDeg));
  const sunAt = sun && sun.elevationDeg > 0 ? place(sun) : null;
  const places = Object.fromEntries(
    Object.entries(labelPlaces(box, fontPx, wall.azimuthDeg)).map(([face, beside]) => [
      face,
      farthestFrom(sunAt, beside.map(turned)),
    ]),
  );
  return (
    <div ref={ref} class="scene">
      <svg
        role="img"
        aria-label={description}
        width={side}
        height={side}
        viewBox={`0 0 ${side} ${side}`}
        font-size={fontPx}
      >
        <circle class="dome" cx={middle[0]} cy={middle[1]} r={radius} />
        <g transform={`translate(${middle[0]} ${middle[1]}) rotate(${wall.azimuthDeg})`}>
          <path class="building" d={`M${-radius} 0A${radius} ${radius} 0 0 0 ${radius} 0Z`} />
          <path class="wall-face" d={`M${-radius} 0H${radius}`} />
        </g>
        <SunWay suns={suns} place={place} />
        {['N', 'E', 'S', 'W'].map((name, k) => {
          const [x, y] = onCircle(middle, radius + fontPx * 0.8, k * 90);
          return (
            <text key={name} class="at-middle" x={x} y={y + fontPx * 0.35}>
              {name}
            </text>
          );
        })}
        {sun && (
          <SunRay
            from={place(sun)}
            to={turned([0, -box.depth / 2])}
            shortPx={box.depth / 2 + box.band}
            sun={sun}
            lit={isLit(played, step)}
          />
        )}
        <g transform={`translate(${middle[0]} ${middle[1]}) rotate(${wall.azimuthDeg})`}>
          <BoxFromAbove {...box} played={played} step={step} classes={classes} />
        </g>
        <FaceWatts played={played} step={step} fontPx={fontPx} places={places} />
        {sun && <SunDisc at={place(sun)} up={sun.elevationDeg > 0} fontPx={fontPx} />}
      </svg>
    </div>
  );
}

interface BoxSize {
  readonly half: number;
  readonly depth: number;
  /** Thickness of the bands that stand for the faces. */
  readonly band: number;
}

/** True in its proportions, but for a depth that can still be seen. */
function boxFromAbove({ site }: PlayedDay, radius: number): BoxSize {
  const half = radius * 0.34;
  const { widthM, depthM } = site.box;
  return {
    half,
    depth: Math.max(radius * 0.34, Math.min(radius * 0.6, (2 * half * depthM) / widthM)),
    band: radius * 0.09,
  };
}

function turn([x, y]: Point, azimuthDeg: number): Point {
  const angle = (azimuthDeg * Math.PI) / 180;
  return [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)];
}

/** Half of what "12 W" covers, in letters. */
const HALF_WORD = { across: 1.4, up: 0.6 };

/** Places that the watts of a face may have. Out is upward before the turn; the left side, as one faces the wall, then lies to the right. */
function labelPlaces(
  { half, depth, band }: BoxSize,
  fontPx: number,
  azimuthDeg: number,
): Partial<Record<Face, Point[]>> {
  const angle = (azimuthDeg * Math.PI) / 180;
  const [sin, cos] = [Math.abs(Math.sin(angle)), Math.abs(Math.cos(angle))];
  const gap = band + 0.25 * fontPx;
  const outward = gap + fontPx * (HALF_WORD.across * sin + HALF_WORD.up * cos);
  const sideward = gap + fontPx * (HALF_WORD.across * cos + HALF_WORD.up * sin);
  return {
    front: [0, 0.7 * half, -0.7 * half].map((x): Point => [x, -depth - outward]),
    left: [[half + sideward, -depth / 2]],
    right: [[-half - sideward, -depth / 2]],
    top: [[0, -depth / 2]],
  };
}

/** The first place that leaves the sun room, or else the farthest from it. */
function farthestFrom(sunAt: Point | null, places: readonly Point[]): Point {
  const away = ([x, y]: Point) => (sunAt === null ? 0 : Math.hypot(x - sunAt[0], y - sunAt[1]));
  return places.reduce((best, place) => (away(place) > away(best) + 1 ? place : best));
}

function BoxFromAbove({
  half,
  depth,
  band,
  played,
  step,
  classes,
}: BoxSize & Pick<SceneProps, 'played' | 'step' | 'classes'>) {
  const look = faceLook(played, step, classes);
  return (
    <g class="scene-box">
      <rect class={look('top')} x={-half} y={-depth} width={2 * half} height={depth} />
      <rect class={look('front')} x={-half} y={-depth - band} width={2 * half} height={band} />
      <rect class={look('left')} x={half} y={-depth} width={band} height={depth} />
      <rect class={look('right')} x={-half - band} y={-depth} width={band} height={depth} />
    </g>
  );
}
