/**
 * What the server is told when it starts, in one place: options of the command line, then environment variables, then defaults.
 *
 *     --port N    SHADESIDE_PORT   0 to 65535, 0 takes any free port
 *     --host H    SHADESIDE_HOST   the address to listen on
 *     --data DIR  SHADESIDE_DATA   the folder that sites and screenings are kept in
 */
import { resolve } from 'node:path';
import { z } from 'zod';
import { BadInput } from './bad-input.ts';
import { readArgs } from './command.ts';

export const DEFAULT_PORT = 8046;
export const DEFAULT_HOST = '127.0.0.1';
export const DEFAULT_DATA = '.shadeside-data';

export interface ServerSettings {
  /** Undefined where nobody asked for one. */
  readonly port: number | undefined;
  readonly host: string;
  /** Absolute path of the data folder; it need not exist yet. */
  readonly dataDir: string;
}

type Environment = Readonly<Record<string, string | undefined>>;

const OPTIONS = { port: { type: 'string' }, host: { type: 'string' }, data: { type: 'string' } } as const;

const VARIABLES = { port: 'SHADESIDE_PORT', host: 'SHADESIDE_HOST', data: 'SHADESIDE_DATA' } as const;

const Settings = z.object({
  port: z
    .string()
    .refine((text) => /^\d{1,5}$/.test(text) && Number(text) <= 65535, {
      error: 'allowed are whole numbers from 0 to 65535',
    })
    .transform(Number)
    .optional(),
  host: z
    .string()
    .refine((text) => text.trim() !== '', { error: 'is empty; an address is needed' })
    .default(DEFAULT_HOST),
  data: z
    .string()
    .refine((text) => text.trim() !== '', { error: 'is empty; the path of a folder is needed' })
    .default(DEFAULT_DATA),
});

/**
 * Reads the settings of a command that serves.
 * @throws BadInput with a line for each wrong one
 */
export function readServerSettings(command: string, args: string[], environment: Environment): ServerSettings {
  const { values } = readArgs(command, args, OPTIONS, 0);
  const names = Object.keys(VARIABLES) as (keyof typeof VARIABLES)[];
  const given = Object.fromEntries(names.map((name) => [name, values[name] ?? environment[VARIABLES[name]]]));
  const parsed = Settings.safeParse(given);
  if (parsed.success) {
    const { port, host, data } = parsed.data;
    return { port, host, dataDir: resolve(data) };
  }
  throw new BadInput(
    parsed.error.issues.map(({ path, message }) => {
      const name = path[0] as keyof typeof VARIABLES;
      const [source, text] =
        values[name] === undefined ? [VARIABLES[name], environment[VARIABLES[name]]] : [`--${name}`, values[name]];
      return text?.trim() ? `${command}: ${source} ${text}: ${message}` : `${command}: ${source} ${message}`;
    }),
  );
}
