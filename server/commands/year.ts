import { evaluateYear, usualUnits } from '../../model/index.ts';
import { BadInput } from '../bad-input.ts';
import { type Command, printText, readArgs, readUnits, seeHelp } from '../command.ts';
import { yearText } from '../report/year-text.ts';
import { readSite, tellingFile } from '../site-file.ts';
import { readWeatherFile } from '../weather-file.ts';

/** `shadeside year`: one wall through a year of weather. */
export const year: Command = {
  summary: 'marches one wall through a year of weather from a file',
  help: `shadeside year [SITE.json] --wall NAME --weather FILE [--json]
               [--units metric|us]

Marches the box on one wall through a year of weather: hours over the limit by
month and hour of the day, peaks, sun on each face, how fast the electronics
and a battery age.

  SITE.json   the site; "-" reads it from standard input. Left out, the
              built-in example is used.
  --wall      the name of the wall in the site
  --weather   an EPW, a TMY3 csv, or a typical year of PVGIS as csv; told apart
              by what is in it
  --json      the result as JSON: degC, kWh/m2, instants in UTC
  --units     units of the text, metric or us; the usual ones of the place
              when left out`,
  run: async (args) => {
    const { values, positionals } = readArgs(
      'year',
      args,
      { wall: { type: 'string' }, weather: { type: 'string' }, json: { type: 'boolean' }, units: { type: 'string' } },
      1,
    );
    const chosenUnits = readUnits('year', values.units);
    const { weather: file } = values;
    if (file === undefined) throw new BadInput([`year: --weather FILE is needed; ${seeHelp('year')}`]);
    const { name, site } = await readSite(positionals[0]);
    const { wall } = values;
    if (wall === undefined) {
      const walls = site.walls.map((candidate) => candidate.name).join(', ');
      throw new BadInput([`year: --wall NAME is needed; walls of this site: ${walls}`]);
    }
    const weather = readWeatherFile(file);
    const result = tellingFile(name, () => evaluateYear(site, wall, weather));
    const { format, title, source, timeBase, notes } = weather;
    const told = { ...result, weather: { format, title, source, timeBase, notes } };
    if (values.json) {
      const { hourlyInsideAirC, hourlyLimitedC } = result;
      const plain = {
        ...told,
        hourlyInsideAirC: Array.from(hourlyInsideAirC),
        hourlyLimitedC: Array.from(hourlyLimitedC),
      };
      process.stdout.write(`${JSON.stringify(plain, null, 2)}\n`);
    } else printText(yearText(site, { result, weather, units: chosenUnits ?? usualUnits(site.place.timeZone) }));
    return 0;
  },
};
