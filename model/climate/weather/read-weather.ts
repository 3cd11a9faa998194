/** The door for weather files: which format it is, by its first lines, and what year it holds. */
import { isEpw, readEpw } from './epw.ts';
import { type FileLines, fileLines, isBlank, linesOf } from './file-lines.ts';
import { isPvgisCsv, readPvgisCsv } from './pvgis-csv.ts';
import { isTmy3, readTmy3 } from './tmy3.ts';
import { fileError, quoted } from './weather-file-error.ts';
import { WEATHER_FORMATS, type WeatherTable } from './weather-table.ts';
import { type WeatherYear, weatherYearOf } from './weather-year.ts';

/**
 * Reads a year of weather from the text of an EPW, a TMY3 csv or a typical year of PVGIS as csv.
 * @throws WeatherFileError, naming the line, for a file that cannot be used
 */
export const readWeather = (text: string): WeatherYear => readWeatherLines(linesOf(text));

/**
 * The same from lines, with or without their ends, so that no file need be held as a whole. It stops taking lines at the
 * first error.
 * @throws WeatherFileError
 */
export const readWeatherLines = (lines: Iterable<string>): WeatherYear => weatherYearOf(readTable(fileLines(lines)));

function readTable(file: FileLines): WeatherTable {
  const [first, second] = file.start();
  if (first === undefined) throw fileError(0, 'the file is empty', { found: 'nothing', allowed: known() });
  if (isEpw(first)) return readEpw(file);
  if (isPvgisCsv(first)) return readPvgisCsv(file);
  if (second !== undefined && isTmy3(second)) return readTmy3(file);
  const wrong = isBlank(first)
    ? 'the first line is blank'
    : `${quoted(first)} starts no weather file that is read here`;
  throw fileError(1, wrong, { found: quoted(first), allowed: known() });
}

const known = (): string => WEATHER_FORMATS.join(', ');
