/** The map of a year: days across, hours upward, the colour the room to the limit. */
import { useId, useMemo, useState } from 'preact/hooks';
import type { Site, UnitSystem } from '../../../model/index.ts';
import { useWidth } from '../pictures/use-width.ts';
import { unbroken } from '../words.ts';
import { heatMap } from './heat-map.ts';
import { marginClasses } from './margin-classes.ts';
import type { CalendarDay } from './year-calendar.ts';
import { cellWords, monthName } from './year-words.ts';

interface HeatMapPictureProps {
  readonly days: readonly CalendarDay[];
  readonly site: Site;
  readonly units: UnitSystem;
  readonly title: string;
  readonly description: string;
}

const HOURS = [0, 6, 12, 18, 24];

export function HeatMapPicture({ days, site, units, title, description }: HeatMapPictureProps) {
  const id = useId();
  const { ref, widthPx } = useWidth();
  const { limits } = site;
  const map = useMemo(() => heatMap(days, { limits, units, widthPx }), [days, limits, units, widthPx]);
  const [pointed, setPointed] = useState<ReturnType<typeof map.at>>(null);
  const classes = marginClasses(units);
  const point = (event: PointerEvent & { readonly currentTarget: SVGSVGElement }) => {
    const { left, top, width } = event.currentTarget.getBoundingClientRect();
    const scale = widthPx / width;
    setPointed(map.at((event.clientX - left) * scale, (event.clientY - top) * scale));
  };
  return (
    <figure class="heat-map">
      <div ref={ref}>
        <svg
          class="year-map"
          viewBox={`0 0 ${widthPx} ${map.height}`}
          role="img"
          aria-labelledby={`${id}-title`}
          aria-describedby={`${id}-description`}
          onPointerMove={point}
          onPointerDown={point}
          onPointerLeave={() => setPointed(null)}
        >
          <title id={`${id}-title`}>{title}</title>
          <desc id={`${id}-description`}>{description}</desc>
          {map.paths.map(({ index, d }) => (
            <path key={index} class={`margin margin-${index}`} d={d} />
          ))}
          {map.bands.map(({ top, months }) => (
            <g key={top}>
              {HOURS.map((hour) => {
                const y = top + map.bandHeight * (1 - hour / 24);
                return (
                  <g key={hour}>
                    <path class="tick" d={`M${map.left - 4} ${y}H${map.left}`} />
                    <text class="hour" x={map.left - 6} y={y}>
                      {hour}
                    </text>
                  </g>
                );
              })}
              {months.map(({ month, left, width }) => (
                <g key={month}>
                  <path class="tick" d={`M${left} ${top + map.bandHeight}v6`} />
                  <text class="month" x={left + width / 2} y={top + map.bandHeight + 13}>
                    {monthName(month - 1, 'short')}
                  </text>
                </g>
              ))}
              <rect class="frame" x={map.left} y={top} width={map.width} height={map.bandHeight} />
            </g>
          ))}
        </svg>
      </div>
      <p class="pointed" aria-hidden="true">
        {pointed === null ? 'Point at an hour to read it.' : unbroken(cellWords(pointed, site, units))}
      </p>
      <figcaption>
        Each day a column, the hours of the day upward.
        <ul class="margin-key">
          {classes.map(
            ({ name, words }, index) =>
              map.paths.some((path) => path.index === index) && (
                <li key={name}>
                  <svg class="margin-sign" width="22" height="22" aria-hidden="true">
                    <rect class={`margin ${name}`} width="22" height="22" />
                  </svg>
                  {unbroken(words)}
                </li>
              ),
          )}
        </ul>
      </figcaption>
    </figure>
  );
}
