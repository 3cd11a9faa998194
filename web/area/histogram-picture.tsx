/** How many addresses have how much room to the limit. */
import { type UnitSystem, unitSymbol } from '../../model/index.ts';
import { useWidth } from '../site/pictures/use-width.ts';
import { unbroken } from '../site/words.ts';
import type { Summary } from './api.ts';
import { histogram, histogramWords } from './histogram.ts';
import { marginBands } from './margin-bands.ts';
import { countText } from './run-words.ts';

const HEIGHT_PX = 190;
const [LEFT_PX, RIGHT_PX, TOP_PX, BOTTOM_PX] = [52, 16, 44, 46];

export function HistogramPicture({ margins, units }: { margins: Summary['marginHistogram']; units: UnitSystem }) {
  const { ref, widthPx } = useWidth();
  const inner = { widthPx: widthPx - LEFT_PX - RIGHT_PX, heightPx: HEIGHT_PX };
  const { bars, ticks, limitX, most } = histogram(margins, { units, ...inner });
  const bands = marginBands(units);
  const words = histogramWords(margins, units);
  return (
    <figure class="histogram">
      <div ref={ref}>
        {bars.length > 0 && (
          <svg
            viewBox={`0 0 ${widthPx} ${HEIGHT_PX + TOP_PX + BOTTOM_PX}`}
            role="img"
            aria-label={`Addresses by room to the limit. ${words}`}
          >
            <g transform={`translate(${LEFT_PX} ${TOP_PX})`}>
              {bars.map(({ x, width, height, count, band }) => (
                <g key={x}>
                  <rect
                    x={x + 1}
                    y={HEIGHT_PX - height}
                    width={Math.max(1, width - 2)}
                    height={height}
                    fill={bands[band]?.fill}
                    stroke="#000"
                    stroke-width={count > 0 ? 1.25 : 0}
                  />
                  {count > 0 && width > 26 && (
                    <text x={x + width / 2} y={HEIGHT_PX - height - 5} class="middle">
                      {countText(count)}
                    </text>
                  )}
                </g>
              ))}
              <path d={`M0 ${HEIGHT_PX}H${inner.widthPx}M0 0V${HEIGHT_PX}`} class="axis" />
              {ticks.map(({ x, label }) => (
                <g key={x}>
                  <path d={`M${x} ${HEIGHT_PX}v5`} class="axis" />
                  <text x={x} y={HEIGHT_PX + 19} class="middle">
                    {label}
                  </text>
                </g>
              ))}
              {limitX !== null && (
                <>
                  <path d={`M${limitX} ${-TOP_PX + 4}V${HEIGHT_PX}`} class="limit" />
                  <text
                    x={limitX < inner.widthPx / 2 ? limitX + 6 : limitX - 6}
                    y={-TOP_PX + 15}
                    class={limitX < inner.widthPx / 2 ? 'start' : 'end'}
                  >
                    limit
                  </text>
                </>
              )}
              <text x="-6" y="5" class="end">
                {countText(most)}
              </text>
              <text x="-6" y={HEIGHT_PX} class="end">
                0
              </text>
              <text x={inner.widthPx / 2} y={HEIGHT_PX + 40} class="middle">
                room to the limit on the best wall, {unitSymbol('temperatureDifference', units)}
              </text>
            </g>
          </svg>
        )}
      </div>
      <figcaption>{unbroken(words)}</figcaption>
    </figure>
  );
}
