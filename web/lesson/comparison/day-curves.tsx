/** Curves of the air inside some boxes through one day, with outside air and limit; and what a guess of the hour was. */
import type { PlayedDay, UnitSystem } from '../../../model/index.ts';
import { limitSubject } from '../../site/words.ts';
import type { MarkedLevel } from '../questions/guess.ts';
import { useSize } from '../use-size.ts';
import { besideLevels, type DayChart, dayChart, placeLetters, roomForLevels } from './chart-scale.ts';

export interface Curve {
  /** Written at the end of the curve: "A". */
  readonly letter: string;
  /** What the letter stands for. */
  readonly label: string;
  readonly played: PlayedDay;
}

/** A moment marked in the chart, hours by the clock of the place. */
export interface MarkedHour {
  readonly hour: number;
  readonly label: string;
  readonly kind: 'guess' | 'answer' | 'asked';
}

interface DayCurvesProps {
  readonly curves: readonly Curve[];
  readonly units: UnitSystem;
  /** The same in words. */
  readonly description: string;
  /** Step of the played day that is marked; null for none. */
  readonly step?: number | null;
  readonly marks?: readonly MarkedHour[];
  readonly levels?: readonly MarkedLevel[];
}

/** As many looks of curves as a lesson has walls. */
const LOOKS = 4;

/** Height to width of a chart, and the least and most letters that it is high. */
const SHAPE = 0.42;
const LEAST_LETTERS = 15;
const MOST_LETTERS = 24;

export function DayCurves({ curves, units, description, step = null, marks = [], levels = [] }: DayCurvesProps) {
  const { ref, size } = useSize();
  const [first] = curves;
  if (first === undefined) return null;
  const { result, site } = first.played;
  const outside = outsideAirs(curves);
  const heightPx = Math.min(MOST_LETTERS, Math.max(LEAST_LETTERS, (SHAPE * size.widthPx) / size.fontPx)) * size.fontPx;
  const drawn = [...curves.map(({ played }) => played.result.insideAirC), ...outside.map(({ celsius }) => celsius)];
  const marked = levels.map(({ celsius }) => celsius);
  const chart = dayChart({
    day: result,
    site,
    curves: [...drawn, roomForLevels(marked, drawn.flat())],
    units,
    heightPx,
    ...size,
  });
  return (
    <figure class="lesson-chart">
      <div ref={ref}>
        <svg
          role="img"
          aria-label={description}
          width={size.widthPx}
          height={heightPx}
          viewBox={`0 0 ${size.widthPx} ${heightPx}`}
          font-size={size.fontPx}
        >
          <Axes chart={chart} fontPx={size.fontPx} />
          {outside.map(({ letter, celsius }) => (
            <path key={letter} class="curve curve-outside" d={chart.path(celsius)} />
          ))}
          {curves.map(({ letter, played }, k) => (
            <path key={letter} class={`curve curve-${k % LOOKS}`} d={chart.path(played.result.insideAirC)} />
          ))}
          <Marks chart={chart} marks={marks} steps={result.stepsUtc.length} fontPx={size.fontPx} />
          <Levels chart={chart} levels={levels} fontPx={size.fontPx} />
          {step !== null && <path class="chart-now" d={`M${chart.x(step)} ${chart.top}V${chart.bottom}`} />}
          <Letters chart={chart} curves={curves} outside={outside} fontPx={size.fontPx} />
        </svg>
      </div>
      <figcaption>
        <ul class="curve-key">
          {curves.map(({ letter, label }, k) => (
            <li key={letter}>
              <Sample look={`curve-${k % LOOKS}`} />
              <span>
                <b>{letter}</b> {label}
              </span>
            </li>
          ))}
          <li>
            <Sample look="curve-outside" />
            <span>{outside.length > 1 ? 'outside air, a and b' : 'outside air'}</span>
          </li>
        </ul>
        <p>
          Air inside the box, by the clock of the place; the limit is one for the {limitSubject(site.limits.refersTo)}.
        </p>
      </figcaption>
    </figure>
  );
}

/** One outside air, or one for each box where climates or winds differ. */
function outsideAirs(curves: readonly Curve[]): { letter: string; celsius: readonly number[] }[] {
  const airs = curves.map(({ letter, played }) => ({
    letter: letter.toLowerCase(),
    celsius: played.result.outsideAirC,
  }));
  const [first] = airs;
  if (first === undefined) return [];
  const same = airs.every(({ celsius }) => celsius.every((value, k) => value === first.celsius[k]));
  return same ? [{ letter: 'air', celsius: first.celsius }] : airs;
}

function Axes({ chart, fontPx }: { chart: DayChart; fontPx: number }) {
  const { left, right, top, bottom, xTicks, yTicks, limitY } = chart;
  return (
    <g class="chart-axes">
      {limitY !== null && <rect class="beyond-limit" x={left} y={top} width={right - left} height={limitY - top} />}
      {yTicks.map(({ y, label }) => (
        <g key={label}>
          <path class="chart-grid" d={`M${left} ${y}H${right}`} />
          <text class="at-end" x={left - fontPx * 0.4} y={y + fontPx * 0.35}>
            {label}
          </text>
        </g>
      ))}
      {xTicks.map(({ x, label }) => (
        <g key={label}>
          <path class="chart-grid" d={`M${x} ${top}V${bottom}`} />
          <text class="at-middle" x={x} y={bottom + fontPx * 1.4}>
            {label}
          </text>
        </g>
      ))}
      <path class="chart-frame" d={`M${left} ${top}V${bottom}H${right}`} />
      <text x={fontPx * 0.2} y={fontPx * 0.9}>
        {chart.symbol}
      </text>
      {limitY !== null && (
        <>
          <path class="chart-limit" d={`M${left} ${limitY}H${right}`} />
          <text class="chart-word" x={left + fontPx * 0.5} y={limitY - fontPx * 0.35}>
            {chart.limitText}
          </text>
        </>
      )}
    </g>
  );
}

/** Letters at the peaks of the curves, where curves lie apart. */
function Letters({
  chart,
  curves,
  outside,
  fontPx,
}: {
  chart: DayChart;
  curves: readonly Curve[];
  outside: readonly { letter: string; celsius: readonly number[] }[];
  fontPx: number;
}) {
  const peaks = [...curves.map(({ letter, played }) => ({ letter, celsius: played.result.insideAirC })), ...outside];
  const named = peaks.map(({ letter, celsius }) => {
    const step = celsius.indexOf(Math.max(...celsius));
    return { letter, at: [chart.x(step), chart.y(celsius[step] as number)] as const };
  });
  return (
    <g class="chart-letters">
      {placeLetters(named, fontPx).map(({ letter, at: [x, y] }) => (
        <text key={letter} class="at-middle" x={x} y={y}>
          {letter}
        </text>
      ))}
    </g>
  );
}

function Marks({
  chart,
  marks,
  steps,
  fontPx,
}: {
  chart: DayChart;
  marks: readonly MarkedHour[];
  steps: number;
  fontPx: number;
}) {
  return (
    <g class="chart-marks">
      {marks.map(({ hour, label, kind }, k) => {
        const x = chart.x((hour / 24) * steps);
        const late = x > (chart.left + chart.right) / 2;
        return (
          <g key={kind} class={`mark-${kind}`}>
            <path d={`M${x} ${chart.top}V${chart.bottom}`} />
            <text
              class={late ? 'chart-word at-end' : 'chart-word'}
              x={x + (late ? -1 : 1) * fontPx * 0.4}
              y={chart.bottom - fontPx * (0.6 + 1.4 * k)}
            >
              {label}
            </text>
          </g>
        );
      })}
    </g>
  );
}

/** Letters that the words of the limit take, which stand at the left as well. */
const LIMIT_LETTERS = 7;

/** Levels are named at the left, where mornings leave room; each on the side away from the other. */
function Levels({ chart, levels, fontPx }: { chart: DayChart; levels: readonly MarkedLevel[]; fontPx: number }) {
  const ys = levels.map(({ celsius }) => chart.y(celsius));
  const words = besideLevels(ys, fontPx);
  const { limitY } = chart;
  return (
    <g class="chart-marks">
      {levels.map(({ label, kind }, k) => {
        const baseline = words[k] ?? 0;
        const atLimit = limitY !== null && Math.abs(baseline - limitY) < 1.5 * fontPx;
        return (
          <g key={kind} class={`mark-${kind}`}>
            <path d={`M${chart.left} ${ys[k]}H${chart.right}`} />
            <text class="chart-word" x={chart.left + fontPx * (atLimit ? LIMIT_LETTERS : 0.5)} y={baseline}>
              {label}
            </text>
          </g>
        );
      })}
    </g>
  );
}

function Sample({ look }: { look: string }) {
  return (
    <svg class="curve-sample" viewBox="0 0 48 12" aria-hidden="true">
      <path class={`curve ${look}`} d="M2 6H46" />
    </svg>
  );
}
