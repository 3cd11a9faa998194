import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { extname } from 'node:path';
import { BadInput } from '../bad-input.ts';
import { type Command, printable, printText, readArgs, readWhole, seeHelp } from '../command.ts';
import { fileFailure, isFull } from '../file-failure.ts';
import { programName, shellWord } from '../program-name.ts';
import { progressTail, screeningText } from '../report/screening-text.ts';
import { screeningAssumptions } from '../screening/assumptions.ts';
import { readBaseSite } from '../screening/base-site.ts';
import { CLIMATE_NAMES } from '../screening/climate-choice.ts';
import { COLUMN_KINDS, matchColumns, readColumnOption } from '../screening/columns.ts';
import { refuseUnreadable } from '../screening/first-rows.ts';
import { readGrid } from '../screening/grid.ts';
import { FORMATS, type Format } from '../screening/output.ts';
import { problemsOfFiles } from '../screening/run-files.ts';
import type { ScreeningJob } from '../screening/screening.ts';
import { sniffTable } from '../screening/sniff.ts';
import { gridSource, type Source, tableSource } from '../screening/source.ts';
import { readStations } from '../screening/stations.ts';
import { progressOn } from '../terminal/progress.ts';
import { wrap } from '../terminal/wrap.ts';

const MOST_WORKERS = 64;

/** `shadeside screen`: every address of a table or every point of a grid. */
export const screen: Command = {
  summary: 'screens a table of addresses or a grid: best wall, margin, what to bring',
  help: `shadeside screen SITES.csv --out RESULTS.csv [--climate NAME] [--weather FOLDER]
                 [--site SITE.json] [--columns KEY=NAME,...] [--format csv|geojson]
                 [--workers N] [--rejects FILE] [--resume|--restart]
shadeside screen --grid WEST,SOUTH,EAST,NORTH --step DEG --out RESULTS.csv [...]

Screens every address: the best wall, the peak inside and the margin of each
wall, the share of walls inside the limit, the least remedy that suffices and
the kit to bring. Rows that cannot be read go to the rejects file with row,
column and reason, and the run goes on. Rows count as in a spreadsheet: the
header is row 1.

  SITES.csv   a table with a header, in UTF-8, parted by commas, semicolons or
              tabs. Numbers with a decimal point, SI or with a unit ("115 degF").
  --grid      points of a grid instead, degrees; --step is their distance
  --out       where the results go; columns of the table are kept, one that is
              called like a result as input_NAME. Written when all is done: until
              then the run stands in RESULTS.csv.unfinished
  --rejects   where rejected rows go; RESULTS.rejects.csv when left out
  --format    csv or geojson; from the ending of --out when left out
  --climate   the climate of rows that bring none of their own: one of
              ${wrapped(CLIMATE_NAMES.join(', '))}
  --weather   a folder of weather files (EPW, TMY3, PVGIS csv): the design day of
              the nearest one stands for a row, its distance is reported
  --site      a site file: its box, limits, ground and constraints hold for every
              row, and what its first wall says for every wall
  --columns   which column holds what, where names do not tell:
              latitude=Y,longitude=X,power=. (nothing after = leaves one out)
  --workers   worker threads, 1 to ${MOST_WORKERS}; as many as cores when left out
  --resume    goes on with a run that was stopped or killed
  --restart   throws such a run away and begins again

A row brings a named climate or a design day, not both. A design day needs
designMax; where a row lacks it, its date, dailyRange, dewPoint, wind and
turbidity are refused; where the table does, such columns are passed through.
Without a climate in the row, --climate or --weather, the design day is
assumed: blended from the invented samples by latitude and altitude.

Columns that are read; capitals and spaces do not matter, and a unit behind the
name, such as Limit (°F) or altitude_ft, is that of the column's plain numbers:
${COLUMN_KINDS.map(({ key, label, names }) => wrap(`${label} (also ${names.join(', ')})`, `  ${key.padEnd(13)}`)).join('\n')}`,
  run: async (args) => {
    const { values, positionals } = readArgs(
      'screen',
      withWest(args),
      {
        out: { type: 'string' },
        rejects: { type: 'string' },
        format: { type: 'string' },
        grid: { type: 'string' },
        step: { type: 'string' },
        climate: { type: 'string' },
        weather: { type: 'string' },
        site: { type: 'string' },
        columns: { type: 'string' },
        workers: { type: 'string' },
        resume: { type: 'boolean' },
        restart: { type: 'boolean' },
      },
      1,
    );
    const path = positionals[0];
    const { out, resume, restart } = values;
    const workers = readWhole('screen', 'workers', values.workers, { least: 1, most: MOST_WORKERS });
    const problems = out ? problemsOfFiles({ ...values, table: path, out }) : [];
    problems.push(...wrongTogether({ ...values, path }));
    if (problems.length > 0 || out === undefined) throw new BadInput(problems.map((problem) => `screen: ${problem}`));
    // Loaded here, so that the other commands start without database and worker threads.
    const { isUnfinished } = await import('../screening/screening.ts');
    if (resume && !isUnfinished(out) && existsSync(out)) {
      process.stderr.write(`${out} is finished; there is nothing to go on with.\n`);
      return 0;
    }
    const explicit = values.columns === undefined ? {} : readColumnOption(values.columns);
    const source: Source =
      path === undefined ? gridSource(readGrid(values.grid ?? '', values.step)) : tableSource(await sniffTable(path));
    const job: ScreeningJob = {
      source,
      columns: inTable(path ?? '--grid', () => matchColumns(source.header, explicit)),
      base: values.site === undefined ? {} : await readBaseSite(values.site),
      climate: { named: values.climate, stations: values.weather === undefined ? [] : readStations(values.weather) },
      format: (values.format as Format | undefined) ?? formatOf(out),
      ...{ out, rejects: values.rejects },
      workers: workers ?? availableParallelism(),
      unfinished: resume ? 'resume' : restart ? 'restart' : 'refuse',
    };
    refuseUnreadable(path ?? '--grid', source.first, { ...job, header: source.header });
    return screenUntilDone(job, args);
  },
};

/** Runs it with a bar on the terminal; a first Ctrl+C stops it cleanly. */
async function screenUntilDone(job: ScreeningJob, args: readonly string[]): Promise<number> {
  const { isUnfinished, runScreening, ScreeningStopped } = await import('../screening/screening.ts');
  const stop = new AbortController();
  const onSignal = () => stop.abort();
  const signals = ['SIGINT', 'SIGTERM'] as const;
  for (const signal of signals) process.once(signal, onSignal);
  const progress = progressOn(process.stderr, 'Screening');
  try {
    const summary = await runScreening(job, {
      signal: stop.signal,
      onProgress: (now) => progress.tell(now.share, progressTail(now)),
    });
    progress.end();
    printText(
      screeningText(summary, screeningAssumptions(summary.tally, { ...job, header: job.source.header }, 'metric')),
    );
    return 0;
  } catch (error) {
    progress.end();
    if (error instanceof ScreeningStopped) {
      process.stderr.write(`Stopped after ${error.tally.rows} rows. To go on: ${again(args)}\n`);
      return 1;
    }
    const failure = fileFailure(error);
    if (failure === undefined || !isUnfinished(job.out)) throw error;
    const mend = isFull(error) ? ' Free some space; what was done is kept.' : ' What was done is kept.';
    process.stderr.write(`${printable(failure)}${mend} To go on: ${again(args)}\n`);
    return 1;
  } finally {
    for (const signal of signals) process.off(signal, onSignal);
  }
}

/** The same call once more, to go on with what it left; as it is typed in a shell. */
function again(args: readonly string[]): string {
  const end = args.includes('--') ? args.indexOf('--') : args.length;
  const options = args.slice(0, end).filter((word) => word !== '--resume' && word !== '--restart');
  const words = ['screen', ...options, '--resume', ...args.slice(end)];
  return [programName(), ...words.map(shellWord)].join(' ');
}

/** A grid in the west begins with a minus sign, which the parser of options would take for another option. */
function withWest(args: readonly string[]): string[] {
  return args.flatMap((arg, k) => {
    if (args[k - 1] === '--grid' && /^-[\d.]/.test(arg)) return [];
    const next = args[k + 1] ?? '';
    return arg === '--grid' && /^-[\d.]/.test(next) ? [`--grid=${next}`] : [arg];
  });
}

interface Values {
  readonly [option: string]: string | boolean | undefined;
}

/** What is wrong with the options as a whole. */
function wrongTogether({ path, grid, step, out, format, climate, weather, resume, restart }: Values): string[] {
  const problems: string[] = [];
  if (path === undefined && grid === undefined) problems.push(`a table or --grid is needed; ${seeHelp('screen')}`);
  if (path !== undefined && grid !== undefined) problems.push('a table and --grid do not go together');
  if (grid === undefined && step !== undefined) problems.push('--step goes with --grid only');
  if (path === '-') problems.push('standard input cannot be gone on with after a stop; a file is needed');
  if (typeof out !== 'string' || out === '') problems.push(`--out FILE is needed; ${seeHelp('screen')}`);
  if (typeof format === 'string' && !(FORMATS as readonly string[]).includes(format)) {
    problems.push(`--format ${format}: allowed are ${FORMATS.join(' and ')}`);
  }
  if (typeof climate === 'string' && !CLIMATE_NAMES.includes(climate)) {
    problems.push(`--climate ${climate}: allowed are ${CLIMATE_NAMES.join(', ')}`);
  }
  if (climate !== undefined && weather !== undefined) problems.push('--climate and --weather do not go together');
  if (resume && restart) problems.push('--resume and --restart do not go together');
  return problems;
}

function formatOf(out: string): Format {
  return /^\.(geo)?json$/i.test(extname(out)) ? 'geojson' : 'csv';
}

function inTable<Result>(name: string, look: () => Result): Result {
  try {
    return look();
  } catch (error) {
    if (error instanceof BadInput) throw new BadInput(error.lines.map((line) => `${name}: ${line}`));
    throw error;
  }
}

function wrapped(text: string): string {
  return wrap(text, ' '.repeat(14)).trimStart();
}
