/** The coldest night on the shown wall: while the box runs, and after an outage, when it starts from cold. */
import {
  type ColdResult,
  type ColdState,
  type DayResult,
  formatQuantity,
  type Site,
  type UnitSystem,
} from '../../../model/index.ts';
import { hoursText, limitSubject, unbroken } from '../words.ts';
import { differenceText } from './advice-words.ts';

interface ColdNightPanelProps {
  readonly cold: ColdResult;
  readonly site: Site;
  /** The hot day on the same wall. */
  readonly day: DayResult;
  readonly units: UnitSystem;
}

export function ColdNightPanel({ cold, site, day, units }: ColdNightPanelProps) {
  const temperature = (celsius: number) => unbroken(formatQuantity('temperature', celsius, units));
  const rows: readonly { readonly name: string; cell(state: ColdState): string }[] = [
    { name: 'Inside air', cell: ({ insideAirC }) => temperature(insideAirC) },
    { name: 'Electronics', cell: ({ electronicsC }) => temperature(electronicsC) },
    ...(site.box.battery === null
      ? []
      : [{ name: 'Battery', cell: ({ batteryC }: ColdState) => temperature(batteryC ?? Number.NaN) }]),
    { name: 'Coldest skin', cell: ({ lowestSkinC }) => temperature(lowestSkinC) },
    { name: 'Above the lower limit', cell: ({ marginK }) => limitCell(marginK, units) },
    { name: 'Water or frost', cell: ({ condenses }) => (condenses ? '! yes' : '✓ no') },
  ];
  return (
    <>
      <p>
        {unbroken(
          `${cold.text}: ${formatQuantity('temperature', cold.outsideAirC, units)} outside, ` +
            `dew point ${formatQuantity('temperature', cold.dewPointC, units)}.`,
        )}{' '}
        <span class="origin">({cold.origin})</span>
      </p>
      <table class="cold-night">
        <thead>
          <tr>
            <th scope="col">
              <span class="visually-hidden">What</span>
            </th>
            <th scope="col">Running</th>
            <th scope="col">Cold start</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, cell }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{cell(cold.running)}</td>
              <td>{cell(cold.soaked)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>{unbroken(limitSentence(cold, site, units))}</p>
      <p>{unbroken(condensationSentence(cold, day.condensationHours))}</p>
    </>
  );
}

function limitCell(marginK: number, units: UnitSystem): string {
  return unbroken(marginK < 0 ? `✕ −${differenceText(marginK, units)}` : `✓ ${differenceText(marginK, units)}`);
}

function limitSentence({ running, soaked }: ColdResult, { limits }: Site, units: UnitSystem): string {
  const limit = `the lower limit of ${formatQuantity('temperature', limits.minC, units)}`;
  const subject = limitSubject(limits.refersTo);
  if (running.marginK < 0) return `The ${subject} falls below ${limit} even while the box runs.`;
  if (soaked.marginK < 0) {
    return `While the box runs, the ${subject} stays above ${limit}; after an outage it is below it, and a start is a cold start.`;
  }
  return `The ${subject} stays above ${limit}, running or after an outage.`;
}

function condensationSentence({ running, soaked }: ColdResult, hotDayHours: number): string {
  const skin =
    'the skin of the box lies below the dew point: water or frost on it, and on electronics that are as cold';
  const night = running.condenses
    ? `In that night ${skin}.`
    : soaked.condenses
      ? `In that night, after an outage, ${skin}. Its own heat keeps a running box dry.`
      : 'No water forms on the box in that night.';
  return hotDayHours > 0 ? `${night} On the hot day itself the skin is wet for ${hoursText(hotDayHours)}.` : night;
}
