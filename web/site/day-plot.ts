/** Draws a day with chart.js. Loaded only when there is a day to draw. */
import {
  Chart,
  type ChartDataset,
  LinearScale,
  LineController,
  LineElement,
  type Plugin,
  PointElement,
  Tooltip,
} from 'chart.js';
import type { DayLine, DaySeries } from './day-series.ts';

Chart.register(LinearScale, LineController, LineElement, PointElement, Tooltip);

export type DayPlot = Chart<'line', { x: number; y: number }[]>;

const FONT = { family: 'system-ui, sans-serif', size: 14 };
/** Room at the right for the names of the lines. */
const NAME_ROOM_PX = 92;
/** Below this width, a label every three hours would collide. */
const NARROW_PX = 520;
/** A limit farther from the day's temperatures than this share of their span would flatten the curves: it is left out. */
const LIMIT_REACH = 0.9;

/** What the style sheet says of the theme that is shown. */
interface Inks {
  readonly ink: string;
  readonly paper: string;
  readonly grid: string;
  readonly beyond: string;
  readonly colours: Readonly<Record<DayLine['colour'], string>>;
  /** Factor on the width of lines. */
  readonly stroke: number;
}

function inksOf(element: Element): Inks {
  const style = getComputedStyle(element);
  const value = (name: string) => style.getPropertyValue(`--${name}`).trim();
  return {
    ink: value('ink'),
    paper: value('paper'),
    grid: value('grid'),
    beyond: value('beyond'),
    colours: { warm: value('warm'), cool: value('cool'), third: value('third') },
    stroke: Number(value('stroke')),
  };
}

export function plotDay(canvas: HTMLCanvasElement, series: DaySeries): DayPlot {
  const inks = inksOf(canvas);
  return new Chart(canvas, {
    type: 'line',
    data: { datasets: datasets(series, inks) },
    options: {
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      parsing: false,
      normalized: true,
      font: FONT,
      interaction: { mode: 'index', intersect: false, axis: 'x' },
      layout: { padding: { right: NAME_ROOM_PX, top: 8 } },
      scales: {
        x: {
          type: 'linear',
          min: 0,
          max: series.length,
          title: { display: true, text: 'clock time', color: inks.ink, font: FONT },
          afterBuildTicks: (axis) => {
            const narrow = axis.chart.width < NARROW_PX;
            const every = narrow ? 6 : 3;
            axis.ticks = series.ticks
              .filter(({ clockHour }) => clockHour % every === 0)
              .map(({ hour, clockHour, label }) => ({ value: hour, label: narrow ? `${clockHour} h` : label }));
          },
          ticks: {
            color: inks.ink,
            font: FONT,
            autoSkip: false,
            maxRotation: 0,
            callback: (_value, index, ticks) => ticks[index]?.label ?? '',
          },
          grid: { color: inks.grid },
          border: { color: inks.ink },
        },
        y: {
          ...temperatureRange(series),
          title: { display: true, text: series.symbol, color: inks.ink, font: FONT },
          ticks: { color: inks.ink, font: FONT, includeBounds: false },
          grid: { color: inks.grid },
          border: { color: inks.ink },
        },
      },
      plugins: {
        tooltip: {
          filter: ({ datasetIndex }) => datasetIndex < series.lines.length,
          callbacks: {
            title: ([first]) => (first ? series.timeAt(first.dataIndex) : ''),
            label: ({ dataset, parsed }) => `${dataset.label}: ${(parsed.y ?? 0).toFixed(1)} ${series.symbol}`,
          },
        },
      },
    },
    plugins: [beyondLimits(series, inks), namesOfLines(series, inks), namesOfLimits(series, inks)],
  });
}

function datasets(
  series: DaySeries,
  { ink, colours, stroke }: Inks,
): ChartDataset<'line', { x: number; y: number }[]>[] {
  return [
    ...series.lines.map(({ label, values, colour, dash }) => ({
      label,
      data: values.map((y, step) => ({ x: series.hours[step] ?? 0, y })),
      borderColor: colours[colour],
      backgroundColor: colours[colour],
      borderDash: [...dash],
      borderWidth: 3 * stroke,
      pointRadius: 0,
      pointHoverRadius: 5,
    })),
    ...series.limits.map(({ label, value }) => ({
      label,
      data: [
        { x: 0, y: value },
        { x: series.length, y: value },
      ],
      borderColor: ink,
      borderDash: [2, 3],
      borderWidth: 2 * stroke,
      pointRadius: 0,
      pointHitRadius: 0,
      pointHoverRadius: 0,
    })),
  ];
}

function temperatureRange({ lines, limits }: DaySeries): { min: number; max: number } {
  const values = lines.flatMap((line) => line.values);
  const low = Math.min(...values);
  const high = Math.max(...values);
  const reach = (high - low) * LIMIT_REACH;
  const near = limits.map(({ value }) => value).filter((value) => value > low - reach && value < high + reach);
  return { min: roundTo(Math.min(low, ...near) - 2, Math.floor), max: roundTo(Math.max(high, ...near) + 2, Math.ceil) };
}

function roundTo(value: number, round: (value: number) => number): number {
  return round(value / 5) * 5;
}

const NAME_HEIGHT_PX = 18;

/** Writes each line's name beside its end, moved apart where ends lie close together. */
function namesOfLines({ lines }: DaySeries, { ink, colours, stroke }: Inks): Plugin<'line'> {
  return {
    id: 'names-of-lines',
    afterDatasetsDraw({ ctx, chartArea, scales }) {
      const scale = scales['y'];
      if (!scale) return;
      const names = lines
        .map((line) => ({ ...line, end: scale.getPixelForValue(line.values.at(-1) ?? 0) }))
        .sort((a, b) => a.end - b.end);
      const places = spread(
        names.map(({ end }) => end),
        { from: chartArea.top + NAME_HEIGHT_PX / 2, to: chartArea.bottom - NAME_HEIGHT_PX / 2 },
      );
      ctx.save();
      ctx.font = `${FONT.size}px ${FONT.family}`;
      ctx.textBaseline = 'middle';
      names.forEach(({ label, end, colour }, index) => {
        const y = places[index] ?? end;
        ctx.strokeStyle = colours[colour];
        ctx.lineWidth = 2 * stroke;
        ctx.beginPath();
        ctx.moveTo(chartArea.right, end);
        ctx.lineTo(chartArea.right + 10, y);
        ctx.stroke();
        ctx.fillStyle = ink;
        ctx.fillText(label, chartArea.right + 14, y);
      });
      ctx.restore();
    },
  };
}

/** Positions at least a name's height apart, in order, as near to the wanted ones as that allows. */
function spread(wanted: readonly number[], { from, to }: { from: number; to: number }): number[] {
  const places: number[] = [];
  for (const place of wanted) places.push(Math.max(place, (places.at(-1) ?? from - NAME_HEIGHT_PX) + NAME_HEIGHT_PX));
  let next = to + NAME_HEIGHT_PX;
  for (let index = places.length - 1; index >= 0; index -= 1) {
    next = Math.min(places[index] ?? to, next - NAME_HEIGHT_PX);
    places[index] = next;
  }
  return places;
}

/** Tints the temperatures beyond a limit. */
function beyondLimits({ limits }: DaySeries, { beyond }: Inks): Plugin<'line'> {
  return {
    id: 'beyond-limits',
    beforeDatasetsDraw({ ctx, chartArea: { left, right, top, bottom }, scales }) {
      const scale = scales['y'];
      if (!scale) return;
      ctx.save();
      ctx.fillStyle = beyond;
      for (const { value, side } of limits) {
        const y = Math.min(bottom, Math.max(top, scale.getPixelForValue(value)));
        if (side === 'upper') ctx.fillRect(left, top, right - left, y - top);
        else ctx.fillRect(left, y, right - left, bottom - y);
      }
      ctx.restore();
    },
  };
}

/** Writes a limit's value above its line and what it limits below, where the line is in view. */
function namesOfLimits({ limits }: DaySeries, { ink, paper }: Inks): Plugin<'line'> {
  return {
    id: 'names-of-limits',
    afterDatasetsDraw({ ctx, chartArea, scales }) {
      const scale = scales['y'];
      if (!scale) return;
      ctx.save();
      ctx.font = `bold ${FONT.size}px ${FONT.family}`;
      ctx.fillStyle = ink;
      // A rim of paper keeps the words legible where a curve passes behind them.
      ctx.strokeStyle = paper;
      ctx.lineWidth = 4;
      ctx.lineJoin = 'round';
      for (const { label, of, value } of limits) {
        if (value < scale.min || value > scale.max) continue;
        const x = chartArea.left + 6;
        const y = scale.getPixelForValue(value);
        ctx.textBaseline = 'bottom';
        ctx.strokeText(label, x, y - 3);
        ctx.fillText(label, x, y - 3);
        ctx.textBaseline = 'top';
        ctx.strokeText(of, x, y + 4);
        ctx.fillText(of, x, y + 4);
      }
      ctx.restore();
    },
  };
}
