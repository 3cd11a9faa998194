/** The year on one wall as a map, bars and words, and that of all walls beside each other. */
import { useId, useMemo } from 'preact/hooks';
import type { UnitSystem } from '../../../model/index.ts';
import { unbroken } from '../words.ts';
import { HeatMapPicture } from './heat-map-picture.tsx';
import { MonthBars } from './month-bars.tsx';
import type { ReckonedYears } from './use-year.ts';
import { WallsTable } from './walls-table.tsx';
import { hottestDays, yearDays } from './year-calendar.ts';
import { YearTables } from './year-tables.tsx';
import { clockWords, dayPeakWords, overWords } from './year-words.ts';

export interface YearResultsProps {
  readonly reckoned: ReckonedYears;
  readonly units: UnitSystem;
  readonly chosen: string | null;
  choose(wall: string): void;
}

/** So many days are named as the worst. */
const WORST_DAYS = 5;

export function YearResults({ reckoned, units, chosen, choose }: YearResultsProps) {
  const { years, weather, result } = reckoned;
  const { site } = result;
  const id = useId();
  const year = years.find(({ wall }) => wall === chosen) ?? years[0];
  const days = useMemo(() => (year === undefined ? [] : yearDays(year)), [year]);
  if (year === undefined) return null;
  const over = overWords(year, site, units);
  const worst = hottestDays(days, WORST_DAYS).map((peak) => dayPeakWords(peak, site, units));
  return (
    <>
      <WallsTable reckoned={reckoned} units={units} />
      <div class="year-wall">
        <label for={`${id}-wall`}>The year on wall</label>
        <select id={`${id}-wall`} value={year.wall} onChange={({ currentTarget }) => choose(currentTarget.value)}>
          {years.map(({ wall }) => (
            <option key={wall} value={wall}>
              {wall}
            </option>
          ))}
        </select>
      </div>
      <p>{unbroken(over)}</p>
      <HeatMapPicture
        days={days}
        site={site}
        units={units}
        title={`Map of the year on wall ${year.wall}`}
        description={`${over} The hottest days: ${worst.join('; ')}.`}
      />
      <p>{clockWords(year.zoneOffsetH, site.place.timeZone)}</p>
      <h3>The hottest days</h3>
      <ol class="worst-days">
        {worst.map((words) => (
          <li key={words}>{unbroken(words)}</li>
        ))}
      </ol>
      <YearTables year={year} days={days} site={site} units={units} />
      <h3>Month by month</h3>
      <MonthBars months={year.months} units={units} />
      <ul class="year-assumptions origin" aria-label="What the year rests on">
        {[`Weather: ${[weather.title, weather.format].filter(Boolean).join(', ')}.`, ...year.assumptions].map(
          (text) => (
            <li key={text}>{unbroken(text)}</li>
          ),
        )}
        <li>Energy closes within {(100 * Math.abs(year.energyClosure)).toFixed(3)} %.</li>
      </ul>
    </>
  );
}
