/**
 * The files of a run while it is under way: they stand in a folder of their own beside the results and take their places only when
 * everything is written.
 */
import { closeSync, existsSync, fsyncSync, ftruncateSync, openSync, rmSync, statSync, writeSync } from 'node:fs';
import { dirname, extname, join } from 'node:path';
import { moveWhole } from '../atomic-file.ts';
import { makeFolders } from '../make-folders.ts';

export interface RunPaths {
  readonly out: string;
  readonly rejects: string;
  readonly folder: string;
  readonly queue: string;
  readonly outPart: string;
  readonly rejectsPart: string;
}

/** Where the files of a run with results at `out` lie. */
export function runPaths(out: string, rejects = rejectsBeside(out)): RunPaths {
  const folder = `${out}.unfinished`;
  return {
    ...{ out, rejects, folder },
    queue: join(folder, 'queue.sqlite'),
    outPart: join(folder, 'results.part'),
    rejectsPart: join(folder, 'rejects.part'),
  };
}

function rejectsBeside(out: string): string {
  const extension = extname(out);
  return `${out.slice(0, out.length - extension.length)}.rejects.csv`;
}

/** A file that grows at its end; what lies beyond `bytes` when it is opened is cut off. */
export class GrowingFile {
  readonly #file: number;
  #bytes: number;

  constructor(path: string, bytes: number) {
    this.#file = openSync(path, bytes === 0 ? 'w' : 'r+');
    ftruncateSync(this.#file, bytes);
    this.#bytes = bytes;
  }

  get bytes(): number {
    return this.#bytes;
  }

  append(text: string): void {
    const data = Buffer.from(text, 'utf8');
    for (let at = 0; at < data.length; ) {
      const written = writeSync(this.#file, data, at, data.length - at, this.#bytes);
      at += written;
      this.#bytes += written;
    }
  }

  /** Returns when the disk has it. */
  sync(): void {
    fsyncSync(this.#file);
  }

  close(): void {
    closeSync(this.#file);
  }
}

/** Whether a file is there and has at least so many bytes. */
export function holdsBytes(path: string, bytes: number): boolean {
  return existsSync(path) && statSync(path).size >= bytes;
}

export function makeFolder({ folder }: RunPaths): void {
  makeFolders(folder);
}

/** Puts the finished files in their places; may be repeated after a crash. */
export function placeFiles({ out, rejects, outPart, rejectsPart }: RunPaths): void {
  for (const [part, place] of [
    [rejectsPart, rejects],
    [outPart, out],
  ] as const) {
    if (!existsSync(part)) continue;
    moveWhole(part, place);
    syncFolder(dirname(place));
  }
}

/** Takes the folder of a run away. */
export function removeFolder({ folder }: RunPaths): void {
  rmSync(folder, { recursive: true, force: true });
}

/** Makes new names in a folder safe; systems that cannot do without. */
function syncFolder(path: string): void {
  try {
    const folder = openSync(path, 'r');
    fsyncSync(folder);
    closeSync(folder);
  } catch {
    // Windows opens no folders.
  }
}
