/** The figures of the map, folded away: by month and hour of the day. */
import { formatQuantity, type Site, type UnitSystem, unitSymbol, type YearResult } from '../../../model/index.ts';
import { type CalendarDay, hottestByMonthAndHour } from './year-calendar.ts';
import { hourName, monthName } from './year-words.ts';

interface YearTablesProps {
  readonly year: YearResult;
  readonly days: readonly CalendarDay[];
  readonly site: Site;
  readonly units: UnitSystem;
}

export function YearTables({ year, days, site, units }: YearTablesProps) {
  const hottest = hottestByMonthAndHour(days);
  const unit = unitSymbol('temperatureDifference', units);
  const margin = (celsius: number | null | undefined) =>
    celsius == null
      ? '–'
      : formatQuantity('temperatureDifference', site.limits.maxC - celsius, units)
          .replace(` ${unit}`, '')
          .replace('-', '−');
  const over = (hours = 0) => (hours > 0 && hours < 1 ? '<1' : String(Math.round(hours)));
  return (
    <details class="hours">
      <summary>The figures by month and hour of the day</summary>
      <MonthHourTable
        title={`Least room to the limit, ${unit}; over it negative`}
        cell={(month, hour) => margin(hottest[month]?.[hour])}
      />
      <MonthHourTable title="Hours over the limit" cell={(month, hour) => over(year.hoursOverByHour[month]?.[hour])} />
    </details>
  );
}

const MONTHS = Array.from({ length: 12 }, (_, month) => month);
const HOURS = Array.from({ length: 24 }, (_, hour) => hour);

function MonthHourTable({ title, cell }: { title: string; cell(month: number, hour: number): string }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="table-scroll" tabIndex={0} aria-label={title}>
      <table class="month-hours">
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">From</th>
            {MONTHS.map((month) => (
              <th key={month} scope="col">
                {monthName(month, 'short')}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {HOURS.map((hour) => (
            <tr key={hour}>
              <th scope="row">{hourName(hour)}</th>
              {MONTHS.map((month) => (
                <td key={month}>{cell(month, hour)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
