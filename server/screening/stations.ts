/** A folder of weather files, each reduced to its design day. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { designDayOfYear } from '../../model/index.ts';
import { BadInput } from '../bad-input.ts';
import { readFailure } from '../site-file.ts';
import { readWeatherFile } from '../weather-file.ts';
import type { Station } from './climate-choice.ts';

const WEATHER_FILE = /\.(epw|csv)$/i;

/**
 * Reads every weather file of a folder (.epw, .csv), in the order of their names.
 * @throws BadInput when there is none, and for the first that is wrong
 */
export function readStations(folder: string): Station[] {
  return weatherNames(folder).map((name) => readStation(folder, name));
}

/**
 * The weather files of a folder, in order.
 * @throws BadInput when there is none
 */
export function weatherNames(folder: string): string[] {
  const names = namesIn(folder)
    .filter((name) => WEATHER_FILE.test(name))
    .sort();
  if (names.length === 0) throw new BadInput([`--weather ${folder}: no .epw and no .csv file in this folder`]);
  return names;
}

/** @throws BadInput when it is no weather file */
export function readStation(folder: string, name: string): Station {
  const weather = readWeatherFile(join(folder, name));
  const { latitudeDeg, longitudeDeg, altitudeM } = weather;
  return { name, latitudeDeg, longitudeDeg, altitudeM, day: designDayOfYear(weather) };
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch (error) {
    const isFile = (error as NodeJS.ErrnoException).code === 'ENOTDIR';
    throw new BadInput([`--weather ${folder}: ${isFile ? 'this is a file, a folder is needed' : readFailure(error)}`]);
  }
}
