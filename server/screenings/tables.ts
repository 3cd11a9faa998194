/** Tables that were uploaded: each in a folder of its own, kept for a day so that a screening can be made of it. */
import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { open } from 'node:fs/promises';
import type { IncomingMessage } from 'node:http';
import { join } from 'node:path';
import { BadInput } from '../bad-input.ts';
import { HttpError } from '../errors.ts';
import { isFull } from '../file-failure.ts';
import { sniffTable, type TableFile } from '../screening/sniff.ts';
import { problemsOfLines } from './problems.ts';

export interface StoredTable {
  readonly id: string;
  /** Of the file that it was. */
  readonly name: string;
  readonly bytes: number;
  readonly file: TableFile;
}

const KEPT_MS = 24 * 3600 * 1000;
/** So many times the largest table is read of one that is too large. */
const MOST_READ = 2;
const ID = /^[0-9a-f-]{36}$/;
/** Folders of uploads that are under way. */
const PART = '.part';

export interface TablesOptions {
  readonly folder: string;
  readonly mostBytes: number;
}

/** The uploaded tables below a folder. */
export function openTables({ folder, mostBytes }: TablesOptions) {
  const under = new Set<string>();
  const place = (id: string) => ({ csv: join(folder, id, 'table.csv'), note: join(folder, id, 'table.json') });

  /** Takes away tables that are too old, and uploads of a process that is no more. */
  function tidy(now = Date.now()): void {
    if (!existsSync(folder)) return;
    for (const name of readdirSync(folder)) {
      const path = join(folder, name);
      const isOld = () => now - statSync(path).mtimeMs > KEPT_MS;
      if (name.endsWith(PART) ? !under.has(name) : isOld()) rmSync(path, { recursive: true, force: true });
    }
  }

  /**
   * Writes the body of a request down as it comes and looks the table through. A failed one leaves nothing.
   * @throws HttpError
   */
  async function receive(request: IncomingMessage, name: string): Promise<StoredTable> {
    tidy();
    const id = randomUUID();
    const part = `${id}${PART}`;
    const path = join(folder, part, 'table.csv');
    under.add(part);
    try {
      mkdirSync(join(folder, part), { recursive: true });
      const bytes = await written(request, path, mostBytes);
      const file = await sniffTable(path, name);
      const stored: StoredTable = { id, name, bytes, file: { ...file, path: place(id).csv } };
      writeFileSync(join(folder, part, 'table.json'), JSON.stringify(stored), { flush: true });
      renameSync(join(folder, part), join(folder, id));
      return stored;
    } catch (error) {
      rmSync(join(folder, part), { recursive: true, force: true });
      if (error instanceof BadInput) throw new HttpError(400, 'the table cannot be screened', problemsOfLines(error));
      if (isFull(error)) throw new HttpError(507, 'the disk of the server is full; the table was not kept');
      throw error;
    } finally {
      under.delete(part);
    }
  }

  /** @throws HttpError where there is none */
  function get(id: string): StoredTable {
    const found = find(id);
    if (found === null) throw new HttpError(404, 'there is no such table (tables are kept for a day); upload it again');
    return found;
  }

  function find(id: string): StoredTable | null {
    if (!ID.test(id) || !existsSync(place(id).note)) return null;
    const stored = JSON.parse(readFileSync(place(id).note, 'utf8')) as StoredTable;
    // The data folder may have moved.
    return { ...stored, file: { ...stored.file, path: place(id).csv } };
  }

  const remove = (id: string): void => rmSync(join(folder, id), { recursive: true, force: true });

  return { receive, get, find, remove, tidy };
}

export type Tables = ReturnType<typeof openTables>;

/**
 * Writes a body to a file and gives back its length. What fails is told when the body has come to its end: a client that is
 * still sending reads no answer. One that goes on and on is cut off.
 */
async function written(request: IncomingMessage, path: string, mostBytes: number): Promise<number> {
  const tooLarge = () => new HttpError(413, `the table is larger than ${mostBytes / 1e6} MB; cut it into several`);
  const told = Number(request.headers['content-length']);
  if (told > mostBytes) {
    request.resume();
    throw tooLarge();
  }
  const file = await open(path, 'wx');
  let bytes = 0;
  let failure: unknown;
  try {
    for await (const chunk of request as AsyncIterable<Buffer>) {
      bytes += chunk.length;
      if (bytes > mostBytes) failure ??= tooLarge();
      if (bytes > MOST_READ * mostBytes) break;
      if (failure !== undefined) continue;
      try {
        await file.appendFile(chunk);
      } catch (error) {
        failure = error;
      }
    }
    if (failure !== undefined) throw failure;
    await file.sync();
    return bytes;
  } finally {
    await file.close();
  }
}
