/** What every command of the command line is made of. */
import { type ParseArgsConfig, parseArgs } from 'node:util';
import type { UnitSystem } from '../model/index.ts';
import { BadInput } from './bad-input.ts';
import { programName } from './program-name.ts';

/** What the command line is told about its installation. */
export interface Surroundings {
  /** Folder of the built page. */
  readonly webDir: string;
}

type Options = NonNullable<ParseArgsConfig['options']>;

export interface Command {
  readonly summary: string;
  readonly help: string;
  /** Does the work and gives back the exit code; writes to stdout only when nothing was wrong with the input. */
  readonly run: (args: string[], surroundings: Surroundings) => Promise<number>;
}

/**
 * Parses the arguments of a command.
 * @throws BadInput for unknown options, missing values and more than `maxPositionals` other arguments
 */
export function readArgs<const Known extends Options>(
  command: string,
  args: string[],
  options: Known,
  maxPositionals: number,
) {
  const parsed = parse(command, args, options);
  const surplus = parsed.positionals[maxPositionals];
  if (surplus !== undefined)
    throw new BadInput([`${command}: "${surplus}" is one argument too many; ${seeHelp(command)}`]);
  return parsed;
}

function parse<const Known extends Options>(command: string, args: string[], options: Known) {
  try {
    return parseArgs({ args, options, allowPositionals: true, strict: true });
  } catch (error) {
    if (!(error as NodeJS.ErrnoException).code?.startsWith('ERR_PARSE_ARGS')) throw error;
    // The first sentence says what is wrong; what follows is advice for odd file names.
    const [what = ''] = (error as Error).message.split(/\. |\n/);
    throw new BadInput([`${command}: ${what.charAt(0).toLowerCase()}${what.slice(1)}; ${seeHelp(command)}`]);
  }
}

/** Where to read on, for messages. */
export function seeHelp(command: string): string {
  return `see ${programName()} ${command} --help`;
}

/**
 * Reads `--units`; undefined when it was left out.
 * @throws BadInput for any other word
 */
export function readUnits(command: string, text: string | undefined): UnitSystem | undefined {
  if (text === undefined || text === 'metric' || text === 'us') return text;
  throw new BadInput([`${command}: --units ${text}: allowed are metric and us`]);
}

/**
 * Reads an option that is a whole number; undefined when it was left out.
 * @throws BadInput for anything else
 */
export function readWhole(
  command: string,
  option: string,
  text: string | undefined,
  { least, most }: { least: number; most: number },
): number | undefined {
  if (text === undefined) return undefined;
  const value = Number(text);
  if (/^\d{1,15}$/.test(text) && value >= least && value <= most) return value;
  throw new BadInput([`${command}: --${option} ${text}: allowed are whole numbers from ${least} to ${most}`]);
}

/** Writes what a person reads. Control characters that a site's texts may hold do not reach the terminal. */
export function printText(text: string): void {
  process.stdout.write(`${printable(text)}\n`);
}

/** Text without the characters that steer a terminal or turn the reading direction; line ends stay. */
export function printable(text: string): string {
  return text.replace(/[^\P{Cc}\n]|[\u202a-\u202e\u2066-\u2069]/gu, '�');
}
