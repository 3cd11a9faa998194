/** Real weather files, which are not in the repository: the folder that SHADESIDE_WEATHER names. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

export const WEATHER_FOLDER = process.env['SHADESIDE_WEATHER'] ?? '';

export const NO_WEATHER =
  'SHADESIDE_WEATHER names no folder with the real weather files of tests/reference/wall-year-pvlib.json';

export const REAL_FILES = {
  tmy3: 'sand-point-ak-703165-tmy3.csv',
  pvgisCsv: 'tmy_45.000_8.000_2005_2023.csv',
  pvgisEpw: 'tmy_45.000_8.000_2005_2023.epw',
} as const;

export const realFile = (name: keyof typeof REAL_FILES): string =>
  readFileSync(join(WEATHER_FOLDER, REAL_FILES[name]), 'utf8');
