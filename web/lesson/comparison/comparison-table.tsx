/** The figures of two boxes beside each other, each with the equation behind it where there is one. */
import type { ComponentChildren } from 'preact';
import {
  type BoxDay,
  batteryYearsText,
  type Comparison,
  kelvinsBeside,
  temperatureBeside,
  type UnitSystem,
} from '../../../model/index.ts';
import { placeClock } from '../../site/place-clock.ts';
import { hoursText, unbroken } from '../../site/words.ts';
import { ExplainButton } from '../explain/explain-button.tsx';
import { ScrollRegion } from '../scroll-region.tsx';

interface Row {
  readonly words: string;
  cell(box: BoxDay): ComponentChildren;
  readonly apart: string;
}

export function ComparisonTable({ comparison, units }: { comparison: Comparison; units: UnitSystem }) {
  const { a, b } = comparison;
  const rows = rowsOf(comparison, units);
  return (
    <div class="comparison-figures">
      <ScrollRegion kind="table-scroll" label="Figures of both boxes">
        <table>
          <thead>
            <tr>
              <td />
              <th scope="col">
                <b class="box-letter">A</b>
              </th>
              <th scope="col">
                <b class="box-letter">B</b>
              </th>
              <th scope="col">B against A</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ words, cell, apart }) => (
              <tr key={words}>
                <th scope="row">{words}</th>
                <td>{cell(a)}</td>
                <td>{cell(b)}</td>
                <td>
                  <b>{unbroken(apart)}</b>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      <p class="comparison-origin">{batteryYearsText(units)}</p>
    </div>
  );
}

function rowsOf(comparison: Comparison, units: UnitSystem): Row[] {
  const { a, b, peakDifferenceK, marginDifferenceK, hoursOverDifference, ageingFactor } = comparison;
  const kelvins = (k: number) => kelvinsBeside(Math.abs(k), units);
  // What reads as nothing has no sign.
  const signed = (text: string, value: number) => (/[1-9]/.test(text) ? `${value < 0 ? '−' : '+'}${text}` : text);
  const explained = (what: string, box: BoxDay, text: string) => (
    <ExplainButton played={box.played} what={what}>
      {unbroken(text)}
    </ExplainButton>
  );
  const temperature = (celsius: number) => temperatureBeside(celsius, units);
  const [yearsA, yearsB] = [a.ageing.batteryYears, b.ageing.batteryYears];
  // Tenths of a short life would hide what sets two apart, and not add up.
  const years = (of: number) => of.toFixed(Math.min(yearsA, yearsB) < 10 ? 2 : 1);
  return [
    {
      words: 'Air inside at its peak',
      cell: (box) => explained('insideAir', box, temperature(box.played.result.peakInsideAirC)),
      apart: signed(kelvins(peakDifferenceK), peakDifferenceK),
    },
    {
      words: 'Time of the peak',
      cell: ({ played: { result } }) => placeClock(result.timeZone).time(result.peakAtUtc),
      apart: minutesText(clockMinutes(b) - clockMinutes(a)),
    },
    {
      words: 'Room to the limit',
      cell: (box) => explained('margin', box, signed(kelvins(box.played.result.marginK), box.played.result.marginK)),
      apart: signed(kelvins(marginDifferenceK), marginDifferenceK),
    },
    {
      words: 'Over the limit',
      cell: (box) => explained('hoursOverLimit', box, hoursText(box.played.result.hoursOverLimit)),
      apart: signed(`${Math.abs(hoursOverDifference).toFixed(1)} h`, hoursOverDifference),
    },
    {
      words: 'Wear of the electronics',
      cell: (box) => explained('wear', box, `${box.ageing.electronicsAgainst40C.toFixed(2)} ×`),
      apart: `× ${ageingFactor.toFixed(2)}`,
    },
    {
      words: 'A battery lasts, years',
      cell: (box) => explained('batteryYears', box, years(box.ageing.batteryYears)),
      apart: signed(years(Math.abs(yearsB - yearsA)), yearsB - yearsA),
    },
  ];
}

function clockMinutes({ played: { result } }: BoxDay): number {
  return placeClock(result.timeZone).minutes(result.peakAtUtc);
}

function minutesText(minutes: number): string {
  if (minutes === 0) return 'same time';
  const size = Math.abs(minutes);
  const text = size < 60 ? `${size} min` : `${(size / 60).toFixed(1)} h`;
  return `${text} ${minutes < 0 ? 'sooner' : 'later'}`;
}
