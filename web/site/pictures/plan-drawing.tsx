/** The drawing of a plan. The sun on its rim can be dragged; the slider beside it does the same for the keyboard. */
import type { ComponentChildren } from 'preact';
import { formatQuantity, type PlanShape, type SunOnBox, type UnitSystem, type WallPlan } from '../../../model/index.ts';
import { type Label, placeLabels } from './labels.ts';
import { patternOf } from './patterns.tsx';
import { BOX_SIDES, type DrawnBox, instantTowards, type PlanChart, scaleBarM } from './plan-chart.ts';
import { areaPath, directionDeg, linePath, onCircle, type Point } from './plane.ts';
import { type Thing, thingOf } from './things.ts';
import { Words } from './words-in-picture.tsx';

interface PlanDrawingProps {
  readonly plan: WallPlan;
  readonly chart: PlanChart;
  readonly box: DrawnBox;
  readonly things: readonly Thing[];
  /** The instant whose sun is shown. */
  readonly index: number;
  onIndex(index: number): void;
  readonly units: UnitSystem;
  readonly patterns: ComponentChildren;
  readonly prefix: string;
  readonly title: string;
  readonly description: string;
}

export function PlanDrawing(props: PlanDrawingProps) {
  const { plan, chart, box, things, index, onIndex, prefix } = props;
  const sizePx = chart.middle[0] * 2;
  const sun = plan.sun[index] as SunOnBox;
  const boxMiddle = middleOf(box.corners);
  const sunAt = onCircle(chart.middle, chart.radiusPx, sun.azimuthDeg);
  return (
    <svg
      class="plan-drawing"
      viewBox={`0 0 ${sizePx} ${sizePx}`}
      style={{ maxWidth: `${sizePx}px` }}
      role="img"
      aria-labelledby={`${prefix}-title`}
      aria-describedby={`${prefix}-description`}
    >
      <title id={`${prefix}-title`}>{props.title}</title>
      <desc id={`${prefix}-description`}>{props.description}</desc>
      {props.patterns}
      <clipPath id={`${prefix}-circle`}>
        <circle cx={chart.middle[0]} cy={chart.middle[1]} r={chart.radiusPx} />
      </clipPath>
      <Compass chart={chart} />
      <g clip-path={`url(#${prefix}-circle)`}>
        <Building plan={plan} chart={chart} things={things} prefix={prefix} />
        {plan.shapes.toReversed().map((shape) => (
          <Shape key={`${shape.kind} ${shape.index} ${shape.topM}`} shape={shape} {...{ chart, things, prefix }} />
        ))}
      </g>
      <Letters plan={plan} chart={chart} things={things} />
      <SunDay sun={plan.sun} chart={chart} />
      <path class={sun.lit > 0 ? 'ray ray-lit' : 'ray'} d={linePath([sunAt, boxMiddle])} />
      <Box box={box} sun={sun} />
      <ScaleBar chart={chart} sizePx={sizePx} units={props.units} />
      <SunHandle
        at={sunAt}
        up={sun.elevationDeg > 0}
        sizePx={sizePx}
        onDrag={(point) => onIndex(instantTowards(plan.sun, directionDeg(chart.middle, point), index))}
      />
    </svg>
  );
}

const middleOf = (points: readonly Point[]): Point => [
  points.reduce((sum, [x]) => sum + x, 0) / points.length,
  points.reduce((sum, [, y]) => sum + y, 0) / points.length,
];

function Compass({ chart }: { chart: PlanChart }) {
  const { middle, radiusPx } = chart;
  return (
    <g>
      <circle class="rim" cx={middle[0]} cy={middle[1]} r={radiusPx} />
      {['N', 'E', 'S', 'W'].map((name, k) => {
        const [x, y] = onCircle(middle, radiusPx + 16, k * 90);
        return (
          <text key={name} class="strong" x={x} y={y}>
            {name}
          </text>
        );
      })}
      <g class="north-arrow">
        <path d="M14 40V10m-6 9 6-11 6 11z" />
        <text class="strong" x="14" y="50">
          N
        </text>
      </g>
    </g>
  );
}

interface Drawn {
  readonly chart: PlanChart;
  readonly things: readonly Thing[];
  readonly prefix: string;
}

function Building({ plan, chart, things, prefix }: Drawn & { plan: WallPlan }) {
  const thing = thingOf(things, { kind: 'building', index: null });
  const [left, right] = plan.wallLine;
  // Far beyond the circle, which cuts it off.
  const on = (from: typeof left, to: typeof left): typeof left => [10 * to[0] - 9 * from[0], 10 * to[1] - 9 * from[1]];
  const wall = plan.endless ? [on(right, left), on(left, right)] : [left, right];
  return (
    <>
      {plan.building && thing && (
        <path class="shape" d={areaPath(plan.building.map(chart.at))} fill={patternOf(prefix, thing)} />
      )}
      <path class="wall-line" d={linePath(wall.map(chart.at))} />
    </>
  );
}

function Shape({ shape, chart, things, prefix }: Drawn & { shape: PlanShape }) {
  const thing = thingOf(things, shape);
  const corners = shape.outline.map(chart.at);
  const flat = corners.length === 2;
  const overhead = shape.kind === 'eave' || (shape.kind === 'tree' && corners.length > 4);
  const fill = flat || thing === undefined ? 'none' : patternOf(prefix, thing);
  const name = `shape shape-${shape.kind}${flat ? ' shape-flat' : ''}${overhead ? ' shape-overhead' : ''}`;
  return <path class={name} d={flat ? linePath(corners) : areaPath(corners)} fill={fill} />;
}

/** The letter of each thing where it has room: in its middle, or beside it. */
function Letters({ plan, chart, things }: { plan: WallPlan; chart: PlanChart; things: readonly Thing[] }) {
  const { middle, radiusPx } = chart;
  const inCircle = ([x, y]: Point) => Math.hypot(x - middle[0], y - middle[1]) < radiusPx - 12;
  const labels = things.flatMap((thing): Label[] => {
    const outlines = plan.shapes.filter((shape) => thingOf([thing], shape)).map(({ outline }) => outline);
    if (thing.kind === 'building' && plan.building !== null) outlines.push(plan.building);
    const [outline] = outlines;
    if (outline === undefined) return [];
    const corners = outline.map(chart.at);
    const centre = middleOf(corners);
    const towards = corners.map((corner) => middleOf([corner, centre]));
    const beside = [centre, ...towards, ...corners].flatMap(([x, y]): Point[] => [
      [x, y + 14],
      [x, y - 14],
      [x + 12, y],
    ]);
    return [{ text: thing.letter, places: [centre, ...towards, ...beside].filter(inCircle) }];
  });
  const frame = { left: 0, top: 0, right: middle[0] * 2, bottom: middle[1] * 2 };
  const [x, y] = middle;
  const round = { left: x - 16, right: x + 16, top: y - 14, bottom: y + 14 };
  return <Words labels={placeLabels(labels, frame, [round])} kind="strong" />;
}

/** The bearings that the sun goes through while it is up, thick where it reaches the box. */
function SunDay({ sun, chart }: { sun: readonly SunOnBox[]; chart: PlanChart }) {
  const at = ({ azimuthDeg }: SunOnBox) => onCircle(chart.middle, chart.radiusPx, azimuthDeg);
  return (
    <>
      {sun.slice(0, -1).map((here, k) => {
        if (here.lit <= 0) return null;
        return <path key={here.utc.getTime()} class="rim-lit" d={linePath([at(here), at(sun[k + 1] as SunOnBox)])} />;
      })}
    </>
  );
}

function Box({ box, sun }: { box: DrawnBox; sun: SunOnBox }) {
  const { corners } = box;
  return (
    <g class="plan-box">
      <path class={sun.reaches.top > 0 ? 'box box-lit' : 'box'} d={areaPath(corners)} />
      {BOX_SIDES.map((face, k) => {
        if (sun.reaches[face] <= 0) return null;
        const ends = [corners[k] as Point, corners[(k + 1) % corners.length] as Point];
        return <path key={face} class={`lit-side lit-${face}`} d={linePath(ends)} />;
      })}
    </g>
  );
}

function ScaleBar({ chart, sizePx, units }: { chart: PlanChart; sizePx: number; units: UnitSystem }) {
  const lengthM = scaleBarM(chart, units);
  const y = sizePx - 8;
  return (
    <g class="scale-bar">
      <path d={`M4 ${y - 5}v5h${lengthM * chart.pxPerM}v-5`} />
      <text class="at-start" x="4" y={y - 14}>
        {formatQuantity('length', lengthM, units, lengthM < 0.6 && units === 'metric' ? 1 : 0)}
      </text>
    </g>
  );
}

interface SunHandleProps {
  readonly at: Point;
  readonly up: boolean;
  readonly sizePx: number;
  onDrag(point: Point): void;
}

/** Half of a target that a finger hits. */
const GRIP_PX = 22;

function SunHandle({ at: [x, y], up, sizePx, onDrag }: SunHandleProps) {
  const drag = (event: PointerEvent) => {
    const handle = event.currentTarget as SVGElement;
    if (!handle.hasPointerCapture(event.pointerId)) return;
    const frame = handle.ownerSVGElement?.getBoundingClientRect();
    if (frame === undefined || frame.width === 0) return;
    const scale = sizePx / frame.width;
    onDrag([(event.clientX - frame.left) * scale, (event.clientY - frame.top) * scale]);
  };
  return (
    <g
      class={up ? 'sun-handle' : 'sun-handle sun-down'}
      transform={`translate(${x} ${y})`}
      onPointerDown={(event) => {
        // Or the browser would begin to select what lies under the way of the sun.
        event.preventDefault();
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={drag}
    >
      <circle class="sun-grip" r={GRIP_PX} />
      <circle class="sun-disc" r="8" />
      <path class="sun-rays" d={RAYS} />
    </g>
  );
}

const RAYS = Array.from({ length: 8 }, (_, k) =>
  linePath([onCircle([0, 0], 10.5, k * 45), onCircle([0, 0], 14, k * 45)]),
).join('');
