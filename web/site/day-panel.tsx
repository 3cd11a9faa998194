/** The hot day on the chosen wall: curves, words, hourly figures, and the heat at the peak. */
import { useMemo } from 'preact/hooks';
import {
  capital,
  type DayResult,
  formatQuantity,
  type Site,
  SUNSHINE,
  SUNSHINE_ORIGIN,
  type UnitSystem,
} from '../../model/index.ts';
import type { SiteResult } from '../compute/protocol.ts';
import { TouchNote } from './advice/touch-note.tsx';
import { DayChart } from './day-chart.tsx';
import { daySeries, fullHours } from './day-series.ts';
import { HeatLedger } from './heat-ledger.tsx';
import { dateText, placeClock } from './place-clock.ts';
import { hoursText, limitSubject, marginText, unbroken } from './words.ts';

export function DayPanel({ result, units }: { result: SiteResult; units: UnitSystem }) {
  const { day, site } = result;
  const series = useMemo(() => daySeries(day, site, units), [day, site, units]);
  const clock = placeClock(day.timeZone);
  const summary = daySummary(day, site, units);
  return (
    <section class="day" aria-labelledby="day-heading">
      <h2 id="day-heading">
        The day on wall “{day.wall}”, {dateText(day.date, units)}
      </h2>
      <DayChart series={series} summary={summary} />
      <p>{unbroken(summary)}</p>
      <TouchNote touch={day.touch} units={units} />
      <p>Clock time of the place ({day.timeZone}).</p>
      <HourTable day={day} units={units} />
      <HeatLedger ledger={day.ledgerAtPeak} units={units} at={clock.time(day.peakAtUtc)} />
    </section>
  );
}

function daySummary(day: DayResult, site: Site, units: UnitSystem): string {
  const temperature = (celsius: number) => formatQuantity('temperature', celsius, units);
  const { minC, maxC, refersTo } = site.limits;
  const over = day.hoursOverLimit > 0 ? `, ${hoursText(day.hoursOverLimit)} of the day over it` : '';
  return [
    `Outside air reaches ${temperature(day.peakOutsideAirC)}.`,
    `The air inside lies between ${temperature(day.lowestInsideAirC)} and ${temperature(day.peakInsideAirC)}, hottest at ${placeClock(day.timeZone).time(day.peakAtUtc)}.`,
    `The electronics reach ${temperature(day.peakElectronicsC)}.`,
    ...roomsOf(day).map(({ reaches, celsius }) => `${reaches} ${temperature(Math.max(...celsius))}.`),
    `The limits, ${temperature(minC)} to ${temperature(maxC)}, hold for the ${limitSubject(refersTo)}: the day stays ${marginText(day, units)}${over}.`,
    `${capital(SUNSHINE)} (${SUNSHINE_ORIGIN}) on the box: ${hoursText(day.sunHours)}.`,
  ].join(' ');
}

/** What else is in the box, where there is more than the electronics. */
function roomsOf({ lowerAirC, batteryC }: DayResult) {
  return [
    { name: 'Lower room', reaches: 'The air in the lower room reaches', celsius: lowerAirC },
    { name: 'Battery', reaches: 'The battery reaches', celsius: batteryC },
  ].flatMap(({ celsius, ...words }) => (celsius === null ? [] : [{ ...words, celsius }]));
}

function HourTable({ day, units }: { day: DayResult; units: UnitSystem }) {
  const clock = placeClock(day.timeZone);
  const rows = fullHours(day, clock);
  const repeated = new Set(rows.map(({ clockHour }) => clockHour)).size < rows.length;
  const cell = (values: readonly number[], step: number) =>
    formatQuantity('temperature', values[step] ?? Number.NaN, units);
  return (
    <details class="hours">
      <summary>The figures by the hour</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section class="table-scroll" tabIndex={0} aria-label="Figures by the hour">
        <table>
          <thead>
            <tr>
              <th scope="col">Time</th>
              <th scope="col">Outside air</th>
              <th scope="col">Inside air</th>
              <th scope="col">Electronics</th>
              {roomsOf(day).map(({ name }) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
              <th scope="col">Sun on the front</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ step }) => {
              const instant = day.stepsUtc[step] ?? day.peakAtUtc;
              return (
                <tr key={step}>
                  <th scope="row">{repeated ? clock.timeWithOffset(instant) : clock.time(instant)}</th>
                  <td>{cell(day.outsideAirC, step)}</td>
                  <td>{cell(day.insideAirC, step)}</td>
                  <td>{cell(day.electronicsC, step)}</td>
                  {roomsOf(day).map(({ name, celsius }) => (
                    <td key={name}>{cell(celsius, step)}</td>
                  ))}
                  <td>{formatQuantity('irradiance', day.faceIrradianceWm2.front[step] ?? Number.NaN, units)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </section>
    </details>
  );
}
