/** The day's curve of the air inside with the band that eight of ten cases stay in. */
import { useMemo } from 'preact/hooks';
import {
  type DayResult,
  formatQuantity,
  type Site,
  toDisplay,
  type UnitSystem,
  type WallConfidence,
} from '../../../model/index.ts';
import { type DaySeries, daySeries } from '../day-series.ts';
import { limitSubject, unbroken } from '../words.ts';

interface ConfidenceBandProps {
  readonly confidence: WallConfidence;
  readonly day: DayResult;
  readonly site: Site;
  readonly units: UnitSystem;
  /** The same in words. */
  readonly summary: string;
}

/** Of the drawing, in its own units: about pixels on a phone. */
const WIDTH = 360;
const HEIGHT = 230;
const FRAME = { left: 42, right: 352, top: 12, bottom: 200 } as const;

/** A limit farther than this share of the curves' span from them would flatten them: it is left out. */
const LIMIT_REACH = 0.5;

export function ConfidenceBand({ confidence, day, site, units, summary }: ConfidenceBandProps) {
  const drawing = useMemo(
    () => drawingOf(confidence, drawnSeries(day, site, units), day, units),
    [confidence, day, site, units],
  );
  const { band, curve, limit, temperatures, hours, symbol } = drawing;
  return (
    <figure class="confidence-band">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`The air inside through the day. ${summary}`}>
        {temperatures.map(({ at, label }) => (
          <g key={label}>
            <path class="band-grid" d={`M${FRAME.left} ${at}H${FRAME.right}`} />
            <text x={FRAME.left - 6} y={at + 5} text-anchor="end">
              {label}
            </text>
          </g>
        ))}
        {hours.map(({ at, label }) => (
          <text key={at} x={at} y={FRAME.bottom + 20} text-anchor="middle">
            {label}
          </text>
        ))}
        <path class="band-area" d={band} />
        <path class="band-curve" d={curve} />
        {limit && (
          <>
            <path class="band-limit" d={`M${FRAME.left} ${limit.at}H${FRAME.right}`} />
            <text class="band-limit-name" x={FRAME.left + 6} y={limit.at - 6}>
              {limit.label}
            </text>
          </>
        )}
      </svg>
      <figcaption>
        Air inside, {symbol}, by the clock of the place. Line: with the inputs as entered. Band: at each moment eight of
        ten cases lie in it.{limitNote(site, units)}
      </figcaption>
    </figure>
  );
}

/** A limit of another quantity beside the band would be read as one of the air inside. */
function drawnSeries(day: DayResult, site: Site, units: UnitSystem): DaySeries {
  const series = daySeries(day, site, units);
  return site.limits.refersTo === 'insideAir' ? series : { ...series, limits: [] };
}

/** Why there is no line of the limit, where the limit is one of another quantity. */
function limitNote({ limits }: Site, units: UnitSystem): string {
  if (limits.refersTo === 'insideAir') return '';
  const limit = formatQuantity('temperature', limits.maxC, units);
  return unbroken(
    ` The limit of ${limit} is not drawn: it refers to the ${limitSubject(limits.refersTo)}, not to the air inside.`,
  );
}

function drawingOf({ insideAirC }: WallConfidence, series: DaySeries, day: DayResult, units: UnitSystem) {
  const shown = (celsius: readonly number[]) => celsius.map((value) => toDisplay('temperature', value, units));
  const [low, high, inside] = [shown(insideAirC.p10), shown(insideAirC.p90), shown(day.insideAirC)];
  const upper = series.limits.find(({ side }) => side === 'upper');
  const [lowest, highest] = [Math.min(...low, ...inside), Math.max(...high, ...inside)];
  const near = upper !== undefined && Math.abs(upper.value - highest) < LIMIT_REACH * (highest - lowest);
  const step = units === 'us' ? 20 : 10;
  const bottom = Math.floor(lowest / step) * step;
  const top = Math.ceil((Math.max(highest, near ? upper.value : highest) + step / 4) / step) * step;

  const x = (hour: number) => round(FRAME.left + ((FRAME.right - FRAME.left) * hour) / series.length);
  const y = (value: number) => round(FRAME.bottom - ((FRAME.bottom - FRAME.top) * (value - bottom)) / (top - bottom));
  const points = (values: readonly number[]) => values.map((value, k) => `${x(series.hours[k] ?? 0)} ${y(value)}`);
  return {
    band: `M${[...points(high), ...points(low).reverse()].join('L')}Z`,
    curve: `M${points(inside).join('L')}`,
    limit: near ? { at: y(upper.value), label: upper.label } : null,
    temperatures: Array.from({ length: Math.round((top - bottom) / step) + 1 }, (_, k) => ({
      at: y(bottom + k * step),
      label: String(bottom + k * step),
    })),
    hours: series.ticks
      .filter(({ clockHour }) => clockHour % 6 === 0)
      .map(({ hour, clockHour }) => ({ at: x(hour), label: `${clockHour} h` })),
    symbol: series.symbol,
  };
}

/** A tenth of a pixel is finer than anybody sees. */
const round = (value: number): number => Math.round(10 * value) / 10;
