/** The command line: finds the command, and turns bad input and failures of files into lines and an exit code. */
import packageFile from '../package.json';
import { BadInput } from './bad-input.ts';
import { type Command, printable, type Surroundings } from './command.ts';
import { advise } from './commands/advise.ts';
import { backup, restore } from './commands/backup.ts';
import { day } from './commands/day.ts';
import { lesson } from './commands/lesson.ts';
import { rank } from './commands/rank.ts';
import { screen } from './commands/screen.ts';
import { serve } from './commands/serve.ts';
import { sheet } from './commands/sheet.ts';
import { token } from './commands/token.ts';
import { year } from './commands/year.ts';
import { fileFailure } from './file-failure.ts';
import { programName } from './program-name.ts';

/** In the order in which the help tells them: for people, then for whoever runs a server. */
const COMMANDS = new Map<string, Command>(
  Object.entries({
    ...{ rank, day, advise, sheet, year, screen, lesson },
    ...{ serve, token, backup, restore },
  }),
);

/** Runs the command line and gives back the exit code: 0 done, 1 could not be done, 2 bad input. */
export function main(args: string[], surroundings: Surroundings): Promise<number> {
  return withPlainErrors(() => run(args, surroundings));
}

/** Runs `work`; bad input becomes lines on stderr and exit code 2, a disk or file that fails a line and 1. Bugs show their stack. */
export async function withPlainErrors(work: () => Promise<number>): Promise<number> {
  // Stays on: what a pipe has not taken yet still goes out after the end. Once, however often this is called.
  process.stdout.off('error', onBrokenOutput).on('error', onBrokenOutput);
  try {
    return await work();
  } catch (error) {
    if (error instanceof BadInput) {
      for (const line of error.lines) tell(line);
      return 2;
    }
    const failure = fileFailure(error);
    if (failure === undefined) throw error;
    tell(failure);
    return 1;
  }
}

/** A reader such as `head` that has seen enough closes the pipe; that is no failure. A full disk behind a ">" is one. */
function onBrokenOutput(error: NodeJS.ErrnoException): void {
  if (error.code === 'EPIPE') process.exit(0);
  const failure = fileFailure(error);
  if (failure === undefined) throw error;
  tell(`standard output: ${failure}`);
  process.exit(1);
}

function tell(line: string): void {
  process.stderr.write(`${printable(line).replaceAll('\n', ' ')}\n`);
}

async function run([name, ...args]: string[], surroundings: Surroundings): Promise<number> {
  if (name === undefined)
    throw new BadInput([`a command is needed: ${[...COMMANDS.keys()].join(', ')}; see ${programName()} --help`]);
  if (name === '--help' || name === '-h' || name === 'help') return say(help());
  if (name === '--version') return say(packageFile.version);
  const command = COMMANDS.get(name);
  if (!command) {
    const what = name.startsWith('-') ? 'option' : 'command';
    throw new BadInput([
      `"${name}" is no known ${what}: ${[...COMMANDS.keys()].join(', ')}; see ${programName()} --help`,
    ]);
  }
  if (wantsHelp(args)) return say(command.help);
  return command.run(args, surroundings);
}

/** Whether `--help` stands among the options; after "--" it would be a file name. */
function wantsHelp(args: readonly string[]): boolean {
  const options = args.includes('--') ? args.slice(0, args.indexOf('--')) : args;
  return options.includes('--help') || options.includes('-h');
}

function help(): string {
  const lines = [...COMMANDS].map(([name, { summary }]) => `  ${name.padEnd(8)}${summary}`);
  return `shadeside COMMAND [arguments]

Tells which wall of a building keeps an outdoor electronics enclosure coolest,
how hot it gets inside, how much margin is left, and what would help.

${lines.join('\n')}

  shadeside COMMAND --help    what a command takes
  shadeside --version         the version

Exit codes: 0 done, 1 could not be done, 2 something is wrong with the input.`;
}

function say(text: string): number {
  process.stdout.write(`${text}\n`);
  return 0;
}
