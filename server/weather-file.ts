/** Reads a weather file line by line, so that a wrong one of any size is refused at its first wrong line. */
import { closeSync, openSync, readSync } from 'node:fs';
import { readWeatherLines, type WeatherYear } from '../model/index.ts';
import { BadInput } from './bad-input.ts';
import { readFailure, tellingFile } from './site-file.ts';

const CHUNK_BYTES = 64 * 1024;

/** No weather file has longer lines; what has is handed on in pieces and refused. */
const LONGEST_LINE = 100_000;

/**
 * Reads a year of weather from a file.
 * @throws BadInput when it cannot be read or is no such file
 */
export function readWeatherFile(path: string): WeatherYear {
  return tellingFile(path, () => readWeatherLines(linesOfFile(path)));
}

function* linesOfFile(path: string): Generator<string> {
  const file = opened(path);
  try {
    const bytes = Buffer.alloc(CHUNK_BYTES);
    // Old files hold single bytes of other encodings in their titles; what is read here are numbers.
    const decoder = new TextDecoder('utf-8');
    let rest = '';
    for (let size = chunk(path, file, bytes); size > 0; size = chunk(path, file, bytes)) {
      const lines = (rest + decoder.decode(bytes.subarray(0, size), { stream: true })).split('\n');
      rest = lines.pop() ?? '';
      yield* lines;
      if (rest.length > LONGEST_LINE) {
        yield rest;
        rest = '';
      }
    }
    if (rest !== '') yield rest;
  } finally {
    closeSync(file);
  }
}

function opened(path: string): number {
  return telling(path, () => openSync(path, 'r'));
}

function chunk(path: string, file: number, into: Buffer): number {
  return telling(path, () => readSync(file, into, 0, into.length, null));
}

function telling<Result>(path: string, work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    throw new BadInput([`${path}: ${readFailure(error)}`]);
  }
}
