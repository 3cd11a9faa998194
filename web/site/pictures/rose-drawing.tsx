/** The drawing of a rose: the curve of the bare wall, the walls of the site at their bearings, and the limit. */
import { formatQuantity, fromDisplay, toDisplay, type UnitSystem } from '../../../model/index.ts';
import { type Label, placeLabels, type Rect, textRect } from './labels.ts';
import { areaPath, linePath, onCircle, type Point } from './plane.ts';
import { limitInReach, onCurveC, type RoseChart, roseChart } from './rose-chart.ts';
import type { Rose } from './use-pictures.ts';
import { Words } from './words-in-picture.tsx';

interface RoseDrawingProps {
  readonly rose: Rose;
  readonly units: UnitSystem;
  readonly widthPx: number;
  readonly prefix: string;
  readonly title: string;
  readonly description: string;
}

/** The sign of a wall, about its middle. */
export const MARK = 'M0-7 7 0 0 7-7 0z';

const LARGEST_PX = 560;
/** Room for the names of the directions, px. */
const RIM_PX = 26;

export function RoseDrawing({ rose, units, widthPx, prefix, title, description }: RoseDrawingProps) {
  const { points, result } = rose;
  const { limits } = result.site;
  const shown = (celsius: number) => toDisplay('temperature', celsius, units);
  const sizePx = Math.min(widthPx, LARGEST_PX);
  const middle: Point = [sizePx / 2, sizePx / 2];
  const outerPx = sizePx / 2 - RIM_PX;
  const walls = result.ranking.walls.map(({ name, azimuthDeg, day }) => ({
    name,
    azimuthDeg,
    peak: shown(day.peakInsideAirC),
    bare: shown(onCurveC(points, azimuthDeg)),
  }));
  const peaks = [...points.map(({ peakInsideAirC }) => shown(peakInsideAirC)), ...walls.map(({ peak }) => peak)];
  const limit = shown(limits.maxC);
  const withLimit = limits.refersTo === 'insideAir' && limitInReach(limit, peaks);
  const chart = roseChart(middle, outerPx, withLimit ? [...peaks, limit] : peaks);
  const curve = points.map(({ azimuthDeg, peakInsideAirC }) => chart.at(azimuthDeg, shown(peakInsideAirC)));
  const marks = walls.map((wall) => ({ ...wall, at: chart.at(wall.azimuthDeg, wall.peak) }));
  const frame = { left: 0, top: 0, right: sizePx, bottom: sizePx };
  const taken = [...marks.map(({ at }) => markRect(at)), ...directionRects(chart, outerPx)];
  const names = marks.map(({ name, at }) => wallLabel(name, at));
  const strong = placeLabels(withLimit ? [...names, limitLabel(chart, limit, units)] : names, frame, taken);
  const covered = [...taken, ...strong.map(({ text, at }) => textRect(text, at))];
  const plain = placeLabels(ringLabels(chart, units), frame, covered);
  return (
    <svg
      class="rose-drawing"
      viewBox={`0 0 ${sizePx} ${sizePx}`}
      style={{ maxWidth: `${sizePx}px` }}
      role="img"
      aria-labelledby={`${prefix}-title`}
      aria-describedby={`${prefix}-description`}
    >
      <title id={`${prefix}-title`}>{title}</title>
      <desc id={`${prefix}-description`}>{description}</desc>
      {chart.rings.map((ring) => (
        <circle key={ring} class="grid" cx={middle[0]} cy={middle[1]} r={chart.radiusPx(ring)} />
      ))}
      {DIRECTIONS.map(({ name, bearingDeg }) => {
        const [x, y] = onCircle(middle, outerPx + 14, bearingDeg);
        const innerPx = chart.radiusPx(chart.rings[0] as number);
        const spoke = [onCircle(middle, innerPx, bearingDeg), onCircle(middle, outerPx, bearingDeg)];
        return (
          <g key={name}>
            <path class="grid" d={linePath(spoke)} />
            <text class={name.length === 1 ? 'strong' : ''} x={x} y={y}>
              {name}
            </text>
          </g>
        );
      })}
      {withLimit && <circle class="limit-ring" cx={middle[0]} cy={middle[1]} r={chart.radiusPx(limit)} />}
      <path class="rose-curve" d={areaPath(curve)} />
      {curve.map(([x, y], k) => (
        <circle key={points[k]?.azimuthDeg} class="rose-point" cx={x} cy={y} r="2.5" />
      ))}
      {marks.map(({ name, azimuthDeg, bare, at }) => (
        <g key={name} class="rose-wall">
          <path class="shade-effect" d={linePath([chart.at(azimuthDeg, bare), at])} />
          <path class="rose-mark" d={MARK} transform={`translate(${at[0]} ${at[1]})`} />
        </g>
      ))}
      <Words labels={plain} kind="plain" />
      <Words labels={strong} kind="strong" />
    </svg>
  );
}

const DIRECTIONS = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'].map((name, k) => ({ name, bearingDeg: k * 45 }));

/** Temperatures of the rings, one above the other, along the first spoke on which they find room. */
function ringLabels(chart: RoseChart, units: UnitSystem): Label[] {
  return chart.rings.map((ring) => ({
    text: formatQuantity('temperature', fromDisplay('temperature', ring, units), units, Number.isInteger(ring) ? 0 : 1),
    places: [22, 338, 158, 202, 68, 292].map((bearingDeg) => chart.at(bearingDeg, ring)),
  }));
}

function limitLabel(chart: RoseChart, limit: number, units: UnitSystem): Label {
  const text = `limit ${formatQuantity('temperature', fromDisplay('temperature', limit, units), units, 0)}`;
  return { text, places: [135, 225, 45, 315, 112, 248].map((bearingDeg) => chart.at(bearingDeg, limit)) };
}

function wallLabel(name: string, [x, y]: Point): Label {
  const text = name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME - 1)}…` : name;
  const { right, left } = textRect(text, [x, y]);
  const half = (right - left) / 2 + 10;
  const places: Point[] = [
    [x, y + 17],
    [x, y - 17],
    [x + half, y],
    [x - half, y],
    [x + half, y + 17],
    [x - half, y + 17],
    [x + half, y - 17],
    [x - half, y - 17],
  ];
  return { text, places };
}

const LONGEST_NAME = 16;

function markRect([x, y]: Point): Rect {
  return { left: x - 7, right: x + 7, top: y - 7, bottom: y + 7 };
}

function directionRects({ middle }: RoseChart, outerPx: number): Rect[] {
  return DIRECTIONS.map(({ name, bearingDeg }) => textRect(name, onCircle(middle, outerPx + 14, bearingDeg)));
}
