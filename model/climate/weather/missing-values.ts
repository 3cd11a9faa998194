/** Fills what a file leaves open, where that is honest, and says so; refuses the rest. */

import { capital } from '../../capital.ts';
import { sinDeg } from '../../solar/angles.ts';
import { pressureAtAltitude } from '../../solar/atmosphere.ts';
import { erbsSplit, LOWEST_BEAM_ELEVATION_DEG } from '../../solar/decomposition.ts';
import { extraterrestrialNormal } from '../../solar/extraterrestrial.ts';
import { dewPoint } from '../humidity.ts';
import { fileError } from './weather-file-error.ts';
import { QUANTITIES, type QuantityName, type WeatherTable } from './weather-table.ts';

/** Longest gap that is bridged by a straight line, hours. */
export const LONGEST_GAP_H = 6;

/** Where the sun stands at a row, for what is made of the irradiance. */
export interface RowSuns {
  elevationDeg(row: number): number;
  utc(row: number): Date;
}

/** A column of noughts where another says that the sun shines stands in a file without that quantity: taken as missing. */
export function openEmptyColumns({ columns, notes }: WeatherTable): void {
  const { ghi, dni, dhi, horizontalInfraredWm2: infrared } = columns;
  const empty = ([, column]: readonly [string, Float64Array]) => column.every((value) => !(value > 0));
  const open = (
    [
      ['global', ghi],
      ['direct', dni],
      ['diffuse', dhi],
    ] as const
  ).filter(empty);
  if (open.length === 3) {
    throw fileError(0, 'there is no irradiance in the whole file', { allowed: 'global irradiance at least' });
  }
  const noughts = open.filter(([, column]) => column.includes(0)).map(([name]) => name);
  for (const [, column] of open) column.fill(Number.NaN);
  if (noughts.length > 0) {
    const are = noughts.length === 1 ? 'is' : 'are';
    notes.push(`${capital(noughts.join(' and '))} irradiance ${are} 0 all year and taken as missing.`);
  }
  // The sky always radiates: 0 is another code for missing.
  for (let row = 0; row < infrared.length; row++) if (infrared[row] === 0) infrared[row] = Number.NaN;
}

/** Night noise below nothing is nothing. */
export function dropNegativeIrradiance({ columns, notes }: WeatherTable): void {
  let count = 0;
  for (const column of [columns.ghi, columns.dni, columns.dhi]) {
    for (let row = 0; row < column.length; row++) {
      if (!((column[row] as number) < 0)) continue;
      column[row] = 0;
      count++;
    }
  }
  if (count > 0) notes.push(`Irradiance below 0 is taken as 0: ${count} values.`);
}

/** @throws WeatherFileError for a gap that is too long to bridge */
export function fillAir(table: WeatherTable): void {
  const { columns, notes, altitudeM } = table;
  bridge(table, 'airC');
  bridge(table, 'windMs');
  const { airC, dewPointC, humidityPercent } = columns;
  const made = fillWhere(dewPointC, (row) => {
    const humidity = humidityPercent[row] as number;
    return humidity > 0 ? dewPoint(airC[row] as number, Math.min(humidity, 100)) : Number.NaN;
  });
  if (made > 0) notes.push(`Dew point made of air temperature and relative humidity: ${hours(made)}.`);
  bridge(table, 'dewPointC');
  if (isOpen(columns.horizontalInfraredWm2) && longestGap(columns.horizontalInfraredWm2).length <= LONGEST_GAP_H) {
    bridge(table, 'horizontalInfraredWm2');
  }
  const pressurePa = pressureAtAltitude(altitudeM);
  const guessed = fillWhere(columns.pressurePa, () => pressurePa);
  if (guessed > 0) notes.push(`Pressure taken from the altitude, ${Math.round(pressurePa)} Pa: ${hours(guessed)}.`);
}

/** @throws WeatherFileError for a gap of the global irradiance by day that is too long to bridge */
export function fillIrradiance(table: WeatherTable, suns: RowSuns): void {
  const { columns, notes } = table;
  const { ghi, dni, dhi } = columns;
  if (!isOpen(ghi) && !isOpen(dni) && !isOpen(dhi)) return;
  const night = (row: number) => suns.elevationDeg(row) <= 0;
  const level = (row: number) => sinDeg(Math.max(suns.elevationDeg(row), 0));
  for (const column of [ghi, dni, dhi]) fillWhere(column, (row) => (night(row) ? 0 : Number.NaN));
  const summed = fillWhere(ghi, (row) => (dni[row] as number) * level(row) + (dhi[row] as number));
  if (summed > 0) notes.push(`Global irradiance made of direct and diffuse: ${hours(summed)}.`);
  bridge(table, 'ghi');
  const rest = fillWhere(dhi, (row) => Math.max(0, (ghi[row] as number) - (dni[row] as number) * level(row)));
  if (rest > 0) notes.push(`Diffuse irradiance made of global and direct: ${hours(rest)}.`);
  const beam = fillWhere(dni, (row) => beamOf(ghi[row] as number, dhi[row] as number, row, suns));
  if (beam > 0) notes.push(`Direct irradiance made of global and diffuse: ${hours(beam)}.`);
  let split = 0;
  for (let row = 0; row < ghi.length; row++) {
    if (!Number.isNaN(dni[row] as number)) continue;
    const utc = suns.utc(row);
    const parts = erbsSplit({
      elevationDeg: suns.elevationDeg(row),
      ghi: ghi[row] as number,
      extraterrestrialWm2: extraterrestrialNormal(utc),
    });
    dni[row] = parts.dni;
    dhi[row] = parts.dhi;
    split++;
  }
  if (split > 0) notes.push(`Global irradiance split into direct and diffuse after Erbs 1982: ${hours(split)}.`);
}

/** Direct irradiance of the global that is not diffuse, W/m2; NaN where the diffuse is missing, too. */
function beamOf(ghi: number, dhi: number, row: number, suns: RowSuns): number {
  if (Number.isNaN(dhi)) return Number.NaN;
  const elevationDeg = suns.elevationDeg(row);
  // Near the horizon the quotient is noise, as in the split below.
  const beam = elevationDeg < LOWEST_BEAM_ELEVATION_DEG ? 0 : Math.max(0, ghi - dhi) / sinDeg(elevationDeg);
  return Math.min(beam, extraterrestrialNormal(suns.utc(row)));
}

const isOpen = (column: Float64Array): boolean => column.some(Number.isNaN);

/** Fills what is open from a rule, which may leave it open; how many rows it filled. */
function fillWhere(column: Float64Array, valueAt: (row: number) => number): number {
  let count = 0;
  for (let row = 0; row < column.length; row++) {
    if (!Number.isNaN(column[row] as number)) continue;
    const value = valueAt(row);
    if (Number.isNaN(value)) continue;
    column[row] = value;
    count++;
  }
  return count;
}

interface Gap {
  readonly first: number;
  readonly length: number;
}

function longestGap(column: Float64Array): Gap {
  return gapsOf(column).reduce((longest, gap) => (gap.length > longest.length ? gap : longest), {
    first: 0,
    length: 0,
  });
}

function gapsOf(column: Float64Array): Gap[] {
  const gaps: Gap[] = [];
  for (let row = 0; row < column.length; row++) {
    if (!Number.isNaN(column[row] as number)) continue;
    const first = row;
    while (row < column.length && Number.isNaN(column[row] as number)) row++;
    gaps.push({ first, length: row - first });
  }
  return gaps;
}

/** Bridges short gaps by straight lines; one at an end of the year is filled with its only neighbour. */
function bridge(table: WeatherTable, name: QuantityName): void {
  const column = table.columns[name];
  const gaps = gapsOf(column);
  if (gaps.length === 0) return;
  for (const { first, length } of gaps) {
    if (length > LONGEST_GAP_H) throw tooLong(table, name, { first, length });
    const before = column[first - 1] ?? (column[first + length] as number);
    const beyond = column[first + length] ?? before;
    for (let k = 0; k < length; k++) column[first + k] = before + ((beyond - before) * (k + 1)) / (length + 1);
  }
  const filled = gaps.reduce((sum, { length }) => sum + length, 0);
  table.notes.push(
    `${capital(QUANTITIES[name].title)} interpolated: ${hours(filled)} in ${count(gaps.length, 'gap')}.`,
  );
}

function tooLong({ lines }: WeatherTable, name: QuantityName, { first, length }: Gap) {
  const wrong = `${QUANTITIES[name].title} is missing for ${length} hours from here on`;
  const found = `${length} hours missing`;
  return fileError(lines[first] as number, wrong, { found, allowed: `gaps of up to ${LONGEST_GAP_H} hours` });
}

const count = (number: number, noun: string): string => `${number} ${noun}${number === 1 ? '' : 's'}`;
const hours = (number: number): string => count(number, 'hour');
