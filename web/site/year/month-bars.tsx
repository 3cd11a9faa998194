/** The months of a year beside each other: hours and degree-hours over the limit as bars with their numbers, and peaks. */
import { formatQuantity, type UnitSystem, unitSymbol, type YearHours } from '../../../model/index.ts';
import { degreeHours, monthName, yearHours } from './year-words.ts';

export function MonthBars({ months, units }: { months: readonly YearHours[]; units: UnitSystem }) {
  const most = Math.max(...months.map(({ hoursOverLimit }) => hoursOverLimit));
  const mostDegrees = Math.max(...months.map(({ degreeHoursOverLimit }) => degreeHoursOverLimit));
  const temperature = (celsius: number | null) =>
    celsius === null ? '–' : formatQuantity('temperature', celsius, units);
  return (
    <>
      {most <= 0 && <p>No month has an hour over the limit: there are no bars.</p>}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section class="table-scroll" tabIndex={0} aria-label="Months of the year">
        <table class="year-months">
          <thead>
            <tr>
              <th scope="col">Month</th>
              <th scope="col">Hours over</th>
              <th scope="col">{unitSymbol('temperatureDifference', units)}·h over</th>
              <th scope="col">Peak inside</th>
              <th scope="col">Mean inside</th>
            </tr>
          </thead>
          <tbody>
            {months.map((month, index) => (
              <tr key={monthName(index)}>
                <th scope="row">{monthName(index, 'short')}</th>
                <td>
                  {yearHours(month.hoursOverLimit)}
                  <Bar share={month.hoursOverLimit / most} />
                </td>
                <td>
                  {degreeHours(month.degreeHoursOverLimit, units)}
                  <Bar share={month.degreeHoursOverLimit / mostDegrees} striped />
                </td>
                <td>{temperature(month.peakInsideAirC)}</td>
                <td>{temperature(month.meanInsideAirC)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}

function Bar({ share, striped = false }: { share: number; striped?: boolean }) {
  if (!(share > 0)) return null;
  return (
    <span class="month-track" aria-hidden="true">
      <span class={striped ? 'month-bar month-striped' : 'month-bar'} style={{ width: `${100 * share}%` }} />
    </span>
  );
}
