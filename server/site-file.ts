/** Reads the site that a command works on: a file, standard input, or the built-in example; and a company's siting rules. */
import { open } from 'node:fs/promises';
import {
  DEMO_SITE,
  type Lesson,
  parseLesson,
  parseSite,
  parseSitingRules,
  type Site,
  SiteError,
  type SitingRules,
} from '../model/index.ts';
import { BadInput } from './bad-input.ts';

/** Far above any real site; keeps a wrong file from filling the memory. */
const MAX_BYTES = 8 * 1024 * 1024;

/** A site and the name that messages about it carry. */
export interface NamedSite {
  readonly name: string;
  readonly site: Site;
  /** What stands in the file. */
  readonly input: unknown;
}

/**
 * Reads the site at `path`: "-" is standard input, and without a path the built-in example is used, which is said on
 * stderr.
 * @throws BadInput when it cannot be read or is no valid site
 */
export async function readSite(path: string | undefined): Promise<NamedSite> {
  if (path === undefined) {
    process.stderr.write(`No site file given: this is the built-in example, "${DEMO_SITE.title}".\n`);
    return { name: 'built-in example', site: parseSite(DEMO_SITE), input: DEMO_SITE };
  }
  return readSiteInput(path);
}

/**
 * Reads a site file.
 * @throws BadInput when it cannot be read or is no valid site
 */
export async function readSiteInput(path: string): Promise<NamedSite> {
  const name = path === '-' ? 'standard input' : path;
  const input = parseJson(name, decode(name, await readBytes(name, path)));
  return { name, input, site: tellingFile(name, () => parseSite(input)) };
}

/**
 * Reads the siting rules of `--rules`; no options where none were asked for.
 * @throws BadInput when they cannot be read or are no valid rules
 */
export async function readRules(path: string | undefined): Promise<{ rules?: SitingRules }> {
  if (path === undefined) return {};
  const json = parseJson(path, decode(path, await readBytes(path, path)), 'a set of siting rules');
  return { rules: tellingFile(path, () => parseSitingRules(json)) };
}

/**
 * Reads a lesson file.
 * @throws BadInput when it cannot be read or is no valid lesson
 */
export async function readLesson(path: string): Promise<{ readonly name: string; readonly lesson: Lesson }> {
  const name = path === '-' ? 'standard input' : path;
  const input = parseJson(name, decode(name, await readBytes(name, path)), 'a lesson');
  return { name, lesson: tellingFile(name, () => parseLesson(input)) };
}

/**
 * Lets the model work on the site of a file; the problems it finds become the file's.
 * @throws BadInput
 */
export function tellingFile<Result>(name: string, work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    if (error instanceof SiteError) throw BadInput.inFile(name, error.problems);
    throw error;
  }
}

/**
 * The same for work that takes its time.
 * @throws BadInput
 */
export async function tellingFileLater<Result>(name: string, work: () => Promise<Result>): Promise<Result> {
  try {
    return await work();
  } catch (error) {
    return tellingFile(name, () => {
      throw error;
    });
  }
}

async function readBytes(name: string, path: string): Promise<Buffer> {
  try {
    return path === '-' ? await collect(name, process.stdin) : await readFile(name, path);
  } catch (error) {
    if (error instanceof BadInput) throw error;
    throw new BadInput([`${name}: ${readFailure(error)}`]);
  }
}

async function readFile(name: string, path: string): Promise<Buffer> {
  const file = await open(path);
  try {
    return await collect(name, file.createReadStream());
  } finally {
    await file.close();
  }
}

async function collect(name: string, stream: AsyncIterable<Buffer>): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of stream) {
    size += chunk.length;
    if (size > MAX_BYTES) throw new BadInput([`${name}: larger than ${MAX_BYTES / 1024 / 1024} MiB, so no site file`]);
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}

const READ_FAILURES: Record<string, string> = {
  ENOENT: 'there is no such file',
  EISDIR: 'this is a folder, a file is needed',
  EACCES: 'no permission to read this file',
  EPERM: 'no permission to read this file',
  ENOTDIR: 'part of this path is not a folder',
};

/** Why a file cannot be read, in words. */
export function readFailure(error: unknown): string {
  const { code = '', message } = error as NodeJS.ErrnoException;
  return READ_FAILURES[code] ?? `cannot be read (${code || message})`;
}

/** Editors and shells also write UTF-8 with a byte-order mark and UTF-16; the decoder drops the mark. */
function decode(name: string, bytes: Buffer): string {
  const encoding = bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : 'utf-8';
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    throw new BadInput([`${name}: this is not text in UTF-8`]);
  }
}

function parseJson(name: string, text: string, what = 'a site'): unknown {
  if (text.trim() === '') throw new BadInput([`${name}: empty; ${what} in JSON is needed`]);
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new BadInput([`${name}: no valid JSON${jsonPosition(text, (error as Error).message)}`]);
  }
}

/** Where the JSON breaks, as line and column, as far as the engine's message tells. */
function jsonPosition(text: string, message: string): string {
  const position = /end of JSON input/.test(message) ? text.length : Number(/at position (\d+)/.exec(message)?.[1]);
  const what = message.replace(/ in JSON at position.*/s, '').replace(/ \(line \d+ column \d+\)/, '');
  if (!Number.isInteger(position)) return `: ${what}`;
  const before = text.slice(0, position).split('\n');
  return ` at line ${before.length}, column ${(before.at(-1) ?? '').length + 1}: ${what}`;
}
