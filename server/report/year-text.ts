import {
  type ComparedYear,
  FACES,
  formatQuantity,
  type Site,
  type UnitSystem,
  type WeatherYear,
  type YearComparison,
  type YearResult,
} from '../../model/index.ts';
import { table } from '../terminal/table.ts';
import { wrap } from '../terminal/wrap.ts';
import { cautionLines } from './caution-lines.ts';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** A year on one wall for the terminal. */
export function yearText(
  site: Site,
  {
    result,
    bestWall,
    weather,
    units,
  }: { result: ComparedYear; bestWall: string; weather: WeatherYear; units: UnitSystem },
): string {
  const temperature = (celsius: number) => formatQuantity('temperature', celsius, units);
  const { maxC, minC } = site.limits;
  const hours = (count: number) => `${Math.round(count)} h`;
  const degreeHours = (kelvinHours: number) => `${Math.round(units === 'us' ? 1.8 * kelvinHours : kelvinHours)}`;
  const months = result.months.map((month, index) => ({ ...month, name: MONTHS[index] ?? '' }));
  const shade = (result.ageingFactor ?? Number.NaN).toFixed(1);
  const best =
    result.wall === bestWall
      ? 'slower than on any other wall'
      : `${result.ageingVersusBest.toFixed(2)} times as fast as on the wall where they age slowest, ${bestWall}`;
  return [
    wrap(
      `${site.title}: wall ${result.wall}, weather of ${weather.title || 'a place without a name'} (${weather.format})`,
    ),
    '',
    wrap(
      `Over ${temperature(maxC)} for ${hours(result.hoursOverLimit)} of the year; peak of the air inside ${temperature(result.peakInsideAirC)} at ${result.peakAtUtc.toISOString().slice(0, 16).replace('T', ' ')} UTC. Below ${temperature(minC)} for ${hours(result.coldHours)}.`,
    ),
    wrap(
      `The electronics age ${shade} times as fast as in full shade, ${best}, ${result.ageingAgainst40C.toFixed(1)} times as fast as at ${temperature(40)} all year. A battery lives ${result.batteryLifeFactor.toFixed(2)} times as long as at ${temperature(25)}.`,
    ),
    '',
    table(months, [
      { head: 'month', text: ({ name }) => name, align: 'left' },
      { head: 'hours over', text: ({ hoursOverLimit }) => String(Math.round(hoursOverLimit)) },
      { head: units === 'us' ? '°F·h over' : 'K·h over', text: ({ degreeHoursOverLimit: over }) => degreeHours(over) },
      { head: 'peak', text: ({ peakInsideAirC: peak }) => (peak === null ? '-' : temperature(peak)) },
      { head: 'mean', text: ({ meanInsideAirC: mean }) => (mean === null ? '-' : temperature(mean)) },
    ]),
    '',
    wrap(`Hours over the limit by hour of the day: ${byHour(result)}.`),
    wrap(`Sun in the year, kWh/m²: ${faces(site, result)}.`),
    wrap(`Energy closes within ${(100 * Math.abs(result.energyClosure)).toFixed(3)} %.`),
    '',
    ...groundwork(weather, result),
  ].join('\n');
}

/** All walls side by side for the terminal. */
export function yearComparisonText(
  site: Site,
  { compared, weather, units }: { compared: YearComparison; weather: WeatherYear; units: UnitSystem },
): string {
  const temperature = (celsius: number) => formatQuantity('temperature', celsius, units);
  const [first] = compared.walls;
  return [
    wrap(`${site.title}: all walls, weather of ${weather.title || 'a place without a name'} (${weather.format})`),
    '',
    table(compared.walls, [
      { head: 'wall', text: ({ wall }) => wall, align: 'left', shrinks: true },
      {
        head: `over ${temperature(site.limits.maxC)}`,
        text: ({ hoursOverLimit }) => `${Math.round(hoursOverLimit)} h`,
      },
      { head: 'peak', text: ({ peakInsideAirC }) => temperature(peakInsideAirC) },
      { head: `below ${temperature(site.limits.minC)}`, text: ({ coldHours }) => `${Math.round(coldHours)} h` },
      { head: 'ages', text: ({ ageingVersusBest }) => ageingVersusBest.toFixed(2) },
      { head: 'battery', text: ({ batteryLifeFactor }) => batteryLifeFactor.toFixed(2) },
    ]),
    '',
    wrap(
      `Ages: how fast the electronics age against the wall where they age slowest, ${compared.bestWall}. Battery: its life against one at ${temperature(25)} all year. Whether a wall is permitted is not asked here.`,
    ),
    '',
    ...(first ? groundwork(weather, first) : []),
  ].join('\n');
}

/** What a year rests on, and the cautions. */
function groundwork(weather: WeatherYear, { assumptions }: YearResult): string[] {
  return [
    wrap(`Time of the rows: ${weather.timeBase.text}`),
    ...weather.notes.map((note) => wrap(`Weather: ${note}`)),
    ...assumptions.map((assumption) => wrap(`Assumed: ${assumption}`)),
    '',
    ...cautionLines(),
  ];
}

function byHour({ hoursOverByHour }: YearResult): string {
  const sums = Array.from({ length: 24 }, (_, hour) =>
    hoursOverByHour.reduce((sum, month) => sum + (month[hour] as number), 0),
  );
  const over = sums.flatMap((sum, hour) => (sum >= 0.5 ? [`${hour} h: ${Math.round(sum)}`] : []));
  return over.length === 0 ? 'none' : over.join(', ');
}

function faces({ box }: Site, { faceInsolationKwhM2 }: YearResult): string {
  return FACES.filter((face) => face !== 'back' || box.mount === 'post')
    .map((face) => `${face} ${Math.round(faceInsolationKwhM2[face])}`)
    .join(', ');
}
