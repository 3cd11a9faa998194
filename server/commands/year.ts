import { writeFileSync } from 'node:fs';
import {
  compareYears,
  evaluateYear,
  type Site,
  syntheticYear,
  usualUnits,
  versusBest,
  type WeatherYear,
  writeEpw,
  type YearComparison,
  type YearResult,
} from '../../model/index.ts';
import { notWritten } from '../atomic-file.ts';
import { BadInput } from '../bad-input.ts';
import { type Command, printText, readArgs, readUnits, readWhole, seeHelp } from '../command.ts';
import { yearComparisonText, yearText } from '../report/year-text.ts';
import { readSite, tellingFile } from '../site-file.ts';
import { readWeatherFile } from '../weather-file.ts';

/** `shadeside year`: one wall, or all of them, through a year of weather. */
export const year: Command = {
  summary: 'marches walls through a year of weather',
  help: `shadeside year [SITE.json] [--wall NAME] [--weather FILE] [--json]
               [--seed N] [--write-epw FILE] [--units metric|us]

Marches the box through a year of weather: hours over the limit by month and
hour of the day, peaks, sun on each face, how fast the electronics and a
battery age.

  SITE.json    the site; "-" reads it from standard input. Left out, the
               built-in example is used.
  --wall       the name of a wall in the site; left out, all walls are held
               against each other
  --weather    an EPW, a TMY3 csv, or a typical year of PVGIS as csv; told
               apart by what is in it. Left out, a year is invented from the
               climate sample of the site.
  --seed       which invented year, 0 to 4294967295; 1 when left out
  --write-epw  writes the invented year as an EPW
  --json       the result as JSON: degC, kWh/m2, instants in UTC
  --units      units of the text, metric or us; the usual ones of the place
               when left out`,
  run: async (args) => {
    const { values, positionals } = readArgs(
      'year',
      args,
      {
        wall: { type: 'string' },
        weather: { type: 'string' },
        seed: { type: 'string' },
        'write-epw': { type: 'string' },
        json: { type: 'boolean' },
        units: { type: 'string' },
      },
      1,
    );
    const chosenUnits = readUnits('year', values.units);
    const seed = readWhole('year', 'seed', values.seed, { least: 0, most: 0xffffffff });
    const { weather: file, wall, 'write-epw': epwFile } = values;
    for (const option of ['seed', 'write-epw'] as const) {
      if (file !== undefined && values[option] !== undefined)
        throw new BadInput([
          `year: --${option} is for an invented year, and --weather names a file; ${seeHelp('year')}`,
        ]);
    }
    const { name, site } = await readSite(positionals[0]);
    const weather =
      file !== undefined
        ? readWeatherFile(file)
        : tellingFile(name, () => syntheticYear(site, seed === undefined ? {} : { seed }));
    const units = chosenUnits ?? usualUnits(site.place.timeZone);
    const compared = tellingFile(name, () => yearsOf(site, weather, wall));
    if (epwFile !== undefined) writeEpwFile(epwFile, writeEpw(weather));
    const result = compared.walls.find((one) => one.wall === wall);
    if (values.json) {
      const { bestWall } = compared;
      const told = result ? { ...plain(result), bestWall } : { bestWall, walls: compared.walls.map(plain) };
      const { format, title, source, timeBase, notes } = weather;
      const weatherTold = { format, title, source, timeBase, notes };
      process.stdout.write(`${JSON.stringify({ ...told, weather: weatherTold }, null, 2)}\n`);
    } else if (result) printText(yearText(site, { result, bestWall: compared.bestWall, weather, units }));
    else printText(yearComparisonText(site, { compared, weather, units }));
    return 0;
  },
};

/** The years of all walls; beside a wall that was asked for the others need no shade reference. */
function yearsOf(site: Site, weather: WeatherYear, asked: string | undefined): YearComparison {
  if (asked === undefined) return compareYears(site, weather);
  // First, so that a name that is not there is found before the others are marched.
  const wanted = evaluateYear(site, asked, weather);
  return versusBest(
    site.walls.map(({ name }) =>
      name === asked ? wanted : evaluateYear(site, name, weather, { shadeReference: false }),
    ),
  );
}

/** A result whose numbers JSON can hold. */
function plain<Year extends YearResult>({ hourlyInsideAirC, hourlyLimitedC, ...rest }: Year) {
  return {
    ...rest,
    hourlyInsideAirC: Array.from(hourlyInsideAirC),
    hourlyLimitedC: Array.from(hourlyLimitedC),
  };
}

function writeEpwFile(path: string, text: string): void {
  try {
    writeFileSync(path, text);
  } catch (error) {
    throw notWritten(path, error, 'the EPW cannot be written');
  }
}
