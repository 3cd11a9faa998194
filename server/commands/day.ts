import { evaluateDay, usualUnits } from '../../model/index.ts';
import { BadInput } from '../bad-input.ts';
import { type Command, printable, printText, readArgs, readUnits, seeHelp } from '../command.ts';
import { assumptionLines } from '../report/assumption-lines.ts';
import { dayCsv } from '../report/day-csv.ts';
import { dayText } from '../report/day-text.ts';
import { readSite, tellingFile } from '../site-file.ts';

/** `shadeside day`: the design day of one wall, step by step. */
export const day: Command = {
  summary: 'shows the design day of one wall, step by step',
  help: `shadeside day [SITE.json] --wall NAME [--json|--csv] [--units metric|us]

Shows the design day of one wall: temperatures and sun by the hour, the peak,
the margin to the limit and where the heat comes from at the peak.

  SITE.json   the site; "-" reads it from standard input. Left out, the
              built-in example is used.
  --wall      the name of the wall in the site
  --json      every step as JSON: degC, W, W/m2, instants in UTC
  --csv       every step as CSV in the same units, with UTC and local time; what
              it rests on goes to standard error
  --units     units of the text, metric or us; the usual ones of the place
              when left out`,
  run: async (args) => {
    const { values, positionals } = readArgs(
      'day',
      args,
      { wall: { type: 'string' }, json: { type: 'boolean' }, csv: { type: 'boolean' }, units: { type: 'string' } },
      1,
    );
    if (values.json && values.csv) throw new BadInput([`day: --json and --csv exclude each other; ${seeHelp('day')}`]);
    const chosenUnits = readUnits('day', values.units);
    const { name, site } = await readSite(positionals[0]);
    const { wall } = values;
    if (wall === undefined) {
      const walls = site.walls.map((candidate) => candidate.name).join(', ');
      throw new BadInput([`day: --wall NAME is needed; walls of this site: ${walls}`]);
    }
    const units = chosenUnits ?? usualUnits(site.place.timeZone);
    const result = tellingFile(name, () => evaluateDay(site, wall, { units }));
    if (values.json) process.stdout.write(`${JSON.stringify(result, null, 2)}\n`);
    else if (values.csv) {
      process.stdout.write(dayCsv(result));
      // Not among the figures, where a spreadsheet would stumble over it, and yet not without it.
      process.stderr.write(`${printable(['Assumed:', ...assumptionLines(result.assumptions)].join('\n'))}\n`);
    } else printText(dayText(site, result, units));
    return 0;
  },
};
