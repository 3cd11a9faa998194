/**
 * What the server is told when it starts, in one place: options of the command line, then environment variables, then defaults.
 *
 *     --port N       SHADESIDE_PORT     0 to 65535, 0 takes any free port
 *     --host H       SHADESIDE_HOST     the address to listen on
 *     --data DIR     SHADESIDE_DATA     the folder that sites and screenings are kept in
 *     --workers N    SHADESIDE_WORKERS  threads that work on rankings, days and advice, and on a screening
 *     --waiting N    SHADESIDE_WAITING  requests that may wait for one of them
 *     --limit S      SHADESIDE_LIMIT    seconds that one request may be worked on
 *     --table-mb N   SHADESIDE_TABLE_MB largest table that may be uploaded, MB
 *     --proxy N      SHADESIDE_PROXY    reverse proxies before the server, whose word on the caller's address counts
 *     --https yes    SHADESIDE_HTTPS    whether people reach it by https
 *     --rate N       SHADESIDE_RATE     API requests a minute from one address, 0 for any number
 *     --log LEVEL    SHADESIDE_LOG      what is told on stderr
 */
import { availableParallelism } from 'node:os';
import { resolve } from 'node:path';
import { z } from 'zod';
import { BadInput } from './bad-input.ts';
import { readArgs } from './command.ts';
import { LOG_LEVELS, type LogLevel } from './logs/levels.ts';

export const DEFAULT_PORT = 8046;
export const DEFAULT_HOST = '127.0.0.1';
export const DEFAULT_DATA = '.shadeside-data';
export const DEFAULT_WAITING = 128;
export const DEFAULT_LIMIT_S = 120;
export const DEFAULT_TABLE_MB = 500;
export const DEFAULT_RATE = 1200;

export interface ServerSettings {
  /** Undefined where nobody asked for one. */
  readonly port: number | undefined;
  readonly host: string;
  /** Absolute path of the data folder; it need not exist yet. */
  readonly dataDir: string;
  readonly workers: number;
  readonly waiting: number;
  readonly limitS: number;
  readonly tableMb: number;
  readonly proxies: number;
  readonly https: boolean;
  readonly perMinute: number;
  readonly log: LogLevel;
}

type Environment = Readonly<Record<string, string | undefined>>;

const VARIABLES = {
  port: 'SHADESIDE_PORT',
  host: 'SHADESIDE_HOST',
  data: 'SHADESIDE_DATA',
  workers: 'SHADESIDE_WORKERS',
  waiting: 'SHADESIDE_WAITING',
  limit: 'SHADESIDE_LIMIT',
  'table-mb': 'SHADESIDE_TABLE_MB',
  proxy: 'SHADESIDE_PROXY',
  https: 'SHADESIDE_HTTPS',
  rate: 'SHADESIDE_RATE',
  log: 'SHADESIDE_LOG',
} as const;

type Name = keyof typeof VARIABLES;

const NAMES = Object.keys(VARIABLES) as Name[];

const OPTIONS = Object.fromEntries(NAMES.map((name) => [name, { type: 'string' }])) as Record<Name, { type: 'string' }>;

function whole(least: number, most: number) {
  return z
    .string()
    .refine((text) => /^\d{1,9}$/.test(text) && Number(text) >= least && Number(text) <= most, {
      error: `allowed are whole numbers from ${least} to ${most}`,
    })
    .transform(Number);
}

function filled(what: string) {
  return z.string().refine((text) => text.trim() !== '', { error: `is empty; ${what} is needed` });
}

function oneOf<const Word extends string>(words: readonly [Word, ...Word[]]) {
  return z.enum(words, { error: `allowed are ${words.join(', ')}` });
}

const Settings = z.object({
  port: whole(0, 65535).optional(),
  host: filled('an address').default(DEFAULT_HOST),
  data: filled('the path of a folder').default(DEFAULT_DATA),
  workers: whole(1, 64).default(() => availableParallelism()),
  waiting: whole(0, 10_000).default(DEFAULT_WAITING),
  limit: whole(1, 3600).default(DEFAULT_LIMIT_S),
  'table-mb': whole(1, 100_000).default(DEFAULT_TABLE_MB),
  proxy: whole(0, 9).default(0),
  https: oneOf(['yes', 'no']).default('no'),
  rate: whole(0, 1_000_000).default(DEFAULT_RATE),
  log: oneOf(LOG_LEVELS).optional(),
});

/**
 * Reads the settings of a command that serves.
 * @throws BadInput with a line for each wrong one
 */
export function readServerSettings(command: string, args: string[], environment: Environment): ServerSettings {
  const { values } = readArgs(command, args, OPTIONS, 0);
  const given = Object.fromEntries(NAMES.map((name) => [name, values[name] ?? environment[VARIABLES[name]]]));
  const parsed = Settings.safeParse(given);
  if (parsed.success) {
    const { port, host, data, workers, waiting, limit, 'table-mb': tableMb, proxy, https, rate, log } = parsed.data;
    return {
      port,
      host,
      dataDir: resolve(data),
      workers,
      waiting,
      limitS: limit,
      tableMb,
      proxies: proxy,
      https: https === 'yes',
      perMinute: rate,
      // What `npm start` prints is read by a person.
      log: log ?? (command === 'start' ? 'warn' : 'info'),
    };
  }
  throw new BadInput(
    parsed.error.issues.map(({ path, message }) => {
      const name = path[0] as Name;
      const [source, text] =
        values[name] === undefined ? [VARIABLES[name], environment[VARIABLES[name]]] : [`--${name}`, values[name]];
      return text?.trim() ? `${command}: ${source} ${text}: ${message}` : `${command}: ${source} ${message}`;
    }),
  );
}

/**
 * The data folder of a command that works on one without serving.
 * @throws BadInput
 */
export function dataFolder(command: string, option: string | undefined, environment: Environment): string {
  return readServerSettings(command, option === undefined ? [] : ['--data', option], {
    [VARIABLES.data]: environment[VARIABLES.data],
  }).dataDir;
}
