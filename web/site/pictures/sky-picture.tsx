/** The drawing of a sun diagram. */
import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import {
  bearingNear,
  compassPoint,
  pathRuns,
  type SkyChart,
  type SunDiagram,
  type SunPath,
  silhouetteAreas,
  skyChart,
  type UnitSystem,
} from '../../../model/index.ts';
import { type PlaceClock, placeClock } from '../place-clock.ts';
import { dayAndMonth } from './day-and-month.ts';
import { type PlacedLabel, placeLabels, type Rect, textRect } from './labels.ts';
import { hiderOf } from './lit-times.ts';
import { patternOf } from './patterns.tsx';
import { areaPath, linePath, type Point } from './plane.ts';
import { letterPlaces } from './sky-chart.ts';
import { type Thing, thingOf } from './things.ts';
import { Words } from './words-in-picture.tsx';

interface SkyPictureProps {
  readonly diagram: SunDiagram;
  readonly things: readonly Thing[];
  readonly widthPx: number;
  readonly units: UnitSystem;
  /** Definitions of the patterns, and what their names begin with. */
  readonly patterns: ComponentChildren;
  readonly prefix: string;
  readonly title: string;
  readonly description: string;
}

/** Room for the words along the axes, px. */
const AXIS_LEFT_PX = 34;
const AXIS_BOTTOM_PX = 40;
const AXIS_TOP_PX = 12;
const AXIS_RIGHT_PX = 6;

export function SkyPicture({ diagram, things, widthPx, units, patterns, prefix, title, description }: SkyPictureProps) {
  const heightPx = Math.round(Math.min(520, Math.max(300, widthPx * 0.62)));
  const frame = {
    left: AXIS_LEFT_PX,
    top: AXIS_TOP_PX,
    right: widthPx - AXIS_RIGHT_PX,
    bottom: heightPx - AXIS_BOTTOM_PX,
  };
  const drawing = useMemo(
    () => drawingOf(diagram, things, skyChart(frame, diagram.wallAzimuthDeg), units),
    [diagram, things, widthPx, units],
  );
  return (
    <svg
      class="sky"
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      role="img"
      aria-labelledby={`${prefix}-title`}
      aria-describedby={`${prefix}-description`}
    >
      <title id={`${prefix}-title`}>{title}</title>
      <desc id={`${prefix}-description`}>{description}</desc>
      {patterns}
      <Axes chart={drawing.chart} />
      {drawing.silhouettes.map(({ thing, areas }) =>
        areas.map((area) => (
          <path key={area} class={`silhouette silhouette-${thing.kind}`} d={area} fill={patternOf(prefix, thing)} />
        )),
      )}
      <path class="frame" d={areaPath(cornersOf(frame))} />
      {drawing.paths.map(({ path, runs }) => (
        <g key={path.date} class={path.isDesignDay ? 'path path-design' : 'path'} data-date={path.date}>
          {runs.map(({ degree, points }) => (
            <path key={linePath(points)} class={`sun-path sun-${degree}`} d={linePath(points)} />
          ))}
        </g>
      ))}
      {drawing.hours.map(([x, y]) => (
        <circle key={`${x} ${y}`} class="hour-mark" cx={x} cy={y} r="3.5" />
      ))}
      <Words labels={drawing.dateLabels} kind="plain" />
      <Words labels={drawing.strong} kind="strong" />
    </svg>
  );
}

function drawingOf(diagram: SunDiagram, things: readonly Thing[], chart: SkyChart, units: UnitSystem) {
  const { frame } = chart;
  const silhouettes = diagram.silhouettes.flatMap((silhouette) => {
    const thing = thingOf(things, silhouette);
    const areas = silhouetteAreas(silhouette, chart).map(areaPath);
    return thing === undefined
      ? []
      : [
          {
            thing,
            areas,
            places: letterPlaces(silhouette, chart, (place) => hiderOf(place, diagram.silhouettes) === silhouette),
          },
        ];
  });
  // The design day lies over the others.
  const paths = [...diagram.paths]
    .sort((a, b) => Number(a.isDesignDay) - Number(b.isDesignDay))
    .map((path) => ({ path, runs: pathRuns(path, chart) }));
  const hours = hourMarks(diagram, chart);
  const dots = hours.map(({ at }) => dotRect(at));
  const [hotDay, otherDays] = [true, false].map((isDesignDay) =>
    diagram.paths.toReversed().filter((path) => path.isDesignDay === isDesignDay),
  ) as [SunPath[], SunPath[]];
  const dateText = ({ date }: SunPath) => dayAndMonth(date, units, 'short');
  // The hot day is named first, beside its path, which the hours stand on; the others on theirs, as far as there is room.
  const hotLabels = placeLabels(
    hotDay.map((path) => ({ text: dateText(path), places: datePlaces(path, chart).flatMap(besides) })),
    frame,
    dots,
  );
  const hourLabels = placeLabels(
    hours.map(({ text, at }) => ({ text, places: besides(at) })),
    frame,
    hotLabels.map(rectOf),
  );
  const taken = [...dots, ...hotLabels.map(rectOf), ...hourLabels.map(rectOf)];
  const dateLabels = placeLabels(
    otherDays.map((path) => ({ text: dateText(path), places: datePlaces(path, chart) })),
    frame,
    taken,
  );
  const letters = placeLabels(
    silhouettes.toReversed().map(({ thing, places }) => ({ text: thing.letter, places })),
    frame,
    [...taken, ...dateLabels.map(rectOf)],
  );
  return {
    chart,
    silhouettes,
    paths,
    hours: hours.map(({ at }) => at),
    strong: [...hotLabels, ...hourLabels, ...letters],
    dateLabels,
  };
}

function hourMarks(diagram: SunDiagram, chart: SkyChart): PlacedLabel[] {
  const clock: PlaceClock = placeClock(diagram.timeZone);
  const points = diagram.paths.find(({ isDesignDay }) => isDesignDay)?.points ?? [];
  return points
    .filter(({ utc }) => clock.minutes(utc) % 60 === 0)
    .map((sun) => ({
      text: String(clock.minutes(sun.utc) / 60),
      at: chart.at(bearingNear(sun.azimuthDeg, chart.wallAzimuthDeg), sun.elevationDeg),
    }));
}

/** Shares of its path: the paths lie farthest apart about noon, and beside it there is room for several. */
const DATE_SHARES = [0.37, 0.63, 0.5, 0.3, 0.7, 0.22, 0.78, 0.15, 0.85];

function datePlaces({ points }: SunPath, chart: SkyChart): Point[] {
  return DATE_SHARES.flatMap((share): Point[] => {
    const sun = points[Math.floor(share * points.length)];
    return sun ? [chart.at(bearingNear(sun.azimuthDeg, chart.wallAzimuthDeg), sun.elevationDeg)] : [];
  });
}

/** Above and below a place. */
function besides([x, y]: Point): Point[] {
  return [
    [x, y - 15],
    [x, y + 16],
  ];
}

function rectOf({ text, at }: PlacedLabel): Rect {
  return textRect(text, at);
}

function dotRect([x, y]: Point): Rect {
  return { left: x - 4, right: x + 4, top: y - 4, bottom: y + 4 };
}

function cornersOf({ left, right, top, bottom }: Rect): Point[] {
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}

function Axes({ chart }: { chart: SkyChart }) {
  const { frame, wallAzimuthDeg } = chart;
  const first = Math.ceil((wallAzimuthDeg - 180) / 45) * 45;
  const bearings = Array.from({ length: 9 }, (_, k) => first + k * 45).filter((deg) => deg <= wallAzimuthDeg + 180);
  return (
    <g class="axes">
      {[0, 30, 60, 90].map((deg) => {
        const [, y] = chart.at(wallAzimuthDeg, deg);
        return (
          <g key={deg}>
            <path class="grid" d={`M${frame.left} ${y}H${frame.right}`} />
            <text class="at-end" x={frame.left - 5} y={y}>
              {deg}°
            </text>
          </g>
        );
      })}
      {bearings.map((deg) => {
        const [x] = chart.at(deg, 0);
        const compass = ((deg % 360) + 360) % 360;
        return (
          <g key={deg}>
            <path class="grid" d={`M${x} ${frame.top}V${frame.bottom + 4}`} />
            <text class={compass % 90 === 0 ? 'strong' : ''} x={x} y={frame.bottom + 13}>
              {compassPoint(compass)}
            </text>
            {compass % 90 === 0 && (
              <text x={x} y={frame.bottom + 29}>
                {compass}°
              </text>
            )}
          </g>
        );
      })}
      <path class="facing" d={`M${chart.at(wallAzimuthDeg, 0)[0]} ${frame.bottom - 9}l-5 9h10z`} />
    </g>
  );
}
