/** Runs the built command line as its own process. */
import { type ChildProcessWithoutNullStreams, type SpawnOptions, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ROOT, SERVER_BUILD, WEB_BUILD } from '../../server/bin/prepare.mjs';

export interface Run {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

type Entry = 'cli' | 'start';

/** Starts `shadeside` (or `npm start`) from the build, without looking whether the build is fresh: `npm test` did. */
export function spawnBuilt(args: string[], entry: Entry = 'cli', options: Pick<SpawnOptions, 'cwd' | 'uid'> = {}) {
  const file = join(SERVER_BUILD, `${entry}.js`);
  if (!existsSync(file)) throw new Error('the program is not built; npm test and npm run build do that');
  const call = entry === 'cli' ? 'main' : 'start';
  const script = `const { ${call} } = await import(${JSON.stringify(pathToFileURL(file).href)});
    process.exitCode = await ${call}(process.argv.slice(1), { webDir: ${JSON.stringify(WEB_BUILD)} });`;
  // A data folder of its own, unless the arguments name one: nothing is left in the folder the tests were started from.
  const env = { ...process.env, SHADESIDE_DATA: join(ROOT, '.test-output/data', randomUUID()) };
  return spawn(process.execPath, ['--input-type=module', '--eval', script, '--', ...args], {
    ...options,
    env,
  }) as ChildProcessWithoutNullStreams;
}

/** Runs a command to its end, with `input` on its standard input. */
export function runBuilt(args: string[], input: string | Buffer = '', options = {}): Promise<Run> {
  const child = spawnBuilt(args, 'cli', options);
  let stdout = '';
  let stderr = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    stdout += text;
  });
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    stderr += text;
  });
  // A command that does not read its input may have ended before the input is written.
  child.stdin.on('error', () => {});
  child.stdin.end(input);
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, stdout, stderr }));
  });
}
