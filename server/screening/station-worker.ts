/** The entry of a thread that reads weather files. */
import { BadInput } from '../bad-input.ts';
import type { Station } from './climate-choice.ts';
import { readStation } from './stations.ts';

export interface WeatherFile {
  readonly folder: string;
  readonly name: string;
}

/** Errors lose their class on the way between threads: what is wrong with a file travels as its lines. */
export type ReadStation = { readonly station: Station } | { readonly lines: readonly string[] };

export default function read({ folder, name }: WeatherFile): ReadStation {
  try {
    return { station: readStation(folder, name) };
  } catch (error) {
    if (error instanceof BadInput) return { lines: error.lines };
    throw error;
  }
}
