/** Weather files of an invented clear year, made by the model's own clear sky: nothing of a real file is in them. */
import { clearSky, sunPosition } from '../../../../model/index.ts';

/** What is planted in a file. The header says what `header` says, the sun shines at `place`. */
export interface Planted {
  readonly place?: { latitudeDeg: number; longitudeDeg: number; altitudeM: number };
  /** Zone that the labels are in. */
  readonly zoneH?: number;
  /** The sun against the label. */
  readonly sunShiftMin?: number;
  readonly header?: { latitudeDeg?: number; longitudeDeg?: number; zoneH?: number };
  /** Whether the sun of 4 March shines on 3 April, and so on. */
  readonly swappedSun?: boolean;
  /** Changes a row before it is written. */
  readonly change?: (row: InventedRow, index: number) => void;
}

export interface InventedRow {
  month: number;
  day: number;
  /** 1 to 24. */
  hour: number;
  airC: string;
  dewPointC: string;
  humidity: string;
  pressurePa: string;
  infrared: string;
  ghi: string;
  dni: string;
  dhi: string;
  windMs: string;
}

export const INVENTED_PLACE = { latitudeDeg: 34.5, longitudeDeg: -112.25, altitudeM: 900 };
export const INVENTED_ZONE_H = -7;

const YEAR = 2026;

export function inventedRows({ change, ...sun }: Planted = {}): InventedRow[] {
  return rowsUnder(sun).map((made, index) => {
    const row = { ...made };
    change?.(row, index);
    return row;
  });
}

const made = new Map<string, readonly InventedRow[]>();

function rowsUnder(sun: Planted): readonly InventedRow[] {
  const { place, zoneH, sunShiftMin, swappedSun } = sun;
  const key = JSON.stringify({ place, zoneH, sunShiftMin, swappedSun });
  const rows = made.get(key) ?? makeRows(sun);
  made.set(key, rows);
  return rows;
}

function makeRows({
  place = INVENTED_PLACE,
  zoneH = INVENTED_ZONE_H,
  sunShiftMin = -30,
  swappedSun = false,
}: Planted): InventedRow[] {
  return Array.from({ length: 8760 }, (_, index) => {
    const start = new Date(Date.UTC(YEAR, 0, 1, index));
    const [month, day] = [start.getUTCMonth() + 1, start.getUTCDate()];
    const swap = swappedSun && day <= 12;
    const label = Date.UTC(YEAR, (swap ? day : month) - 1, swap ? month : day, start.getUTCHours() + 1 - zoneH);
    const utc = new Date(label + sunShiftMin * 60_000);
    const { elevationDeg } = sunPosition(utc, place.latitudeDeg, place.longitudeDeg);
    const { ghi, dni, dhi } = clearSky({ utc, elevationDeg, altitudeM: place.altitudeM, linkeTurbidity: 3 });
    const airC = 18 - 9 * Math.cos((2 * Math.PI * index) / 8760) - 6 * Math.cos((2 * Math.PI * (index - 4)) / 24);
    return {
      month,
      day,
      hour: start.getUTCHours() + 1,
      airC: airC.toFixed(1),
      dewPointC: '2.0',
      humidity: '40',
      pressurePa: '90900',
      infrared: '310',
      ghi: ghi.toFixed(1),
      dni: dni.toFixed(1),
      dhi: dhi.toFixed(1),
      windMs: (2 + (index % 5) / 2).toFixed(1),
    };
  });
}

const headed = ({ header = {}, place = INVENTED_PLACE, zoneH = INVENTED_ZONE_H }: Planted) => ({
  ...place,
  zoneH,
  ...header,
});

export function epwLines(planted: Planted = {}): string[] {
  const { latitudeDeg, longitudeDeg, altitudeM, zoneH } = headed(planted);
  return [
    `LOCATION,Invented Wells,-,NIL,made for tests,000000,${latitudeDeg},${longitudeDeg},${zoneH},${altitudeM}`,
    'DESIGN CONDITIONS,0',
    'TYPICAL/EXTREME PERIODS,0',
    'GROUND TEMPERATURES,0',
    'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
    'COMMENTS 1,"invented, clear all year"',
    'COMMENTS 2,',
    'DATA PERIODS,1,1,Data,Thursday, 1/ 1,12/31',
    ...inventedRows(planted).map(epwRow),
  ];
}

export function epwRow(row: InventedRow): string {
  const { month, day, hour, airC, dewPointC, humidity, pressurePa, infrared, ghi, dni, dhi, windMs } = row;
  const measured = `${airC},${dewPointC},${humidity},${pressurePa},9999,9999,${infrared},${ghi},${dni},${dhi}`;
  return `2003,${month},${day},${hour},60,?9?9,${measured},999999,999999,999999,9999,180,${windMs},99,99,9999,99999,9,999999999,999,.999,999,99,999.000,999,99`;
}

export function tmy3Lines(planted: Planted = {}): string[] {
  const { latitudeDeg, longitudeDeg, altitudeM, zoneH } = headed(planted);
  const two = (number: number) => String(number).padStart(2, '0');
  return [
    `999999,"WELLS, INVENTED",XX,${zoneH}.0,${latitudeDeg},${longitudeDeg},${altitudeM}`,
    'Date (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),GHI source,DNI (W/m^2),DNI source,DHI (W/m^2),Dry-bulb (C),Dew-point (C),RHum (%),Pressure (mbar),Wspd (m/s)',
    ...inventedRows(planted).map((row) => {
      const date = `${two(row.month)}/${two(row.day)}/1991,${two(row.hour)}:00`;
      const air = `${row.airC},${row.dewPointC},${row.humidity},${Number(row.pressurePa) / 100},${row.windMs}`;
      return `${date},${row.ghi},1,${row.dni},1,${row.dhi},${air}`;
    }),
  ];
}

/** Rows of UTC, labelled 00:00 to 23:00. */
export function pvgisLines(planted: Planted = {}, offsetH: string | null = '0.1761'): string[] {
  const sunShiftMin = (planted.sunShiftMin ?? 10.566) - 60;
  const { latitudeDeg, longitudeDeg, altitudeM } = headed(planted);
  const two = (number: number) => String(number).padStart(2, '0');
  return [
    `Latitude (decimal degrees): ${latitudeDeg}`,
    `Longitude (decimal degrees): ${longitudeDeg}`,
    `Elevation (m): ${altitudeM}`,
    ...(offsetH === null ? [] : [`Irradiance Time Offset (h): ${offsetH}`]),
    'month,year',
    ...Array.from({ length: 12 }, (_, k) => `${k + 1},${2005 + k}`),
    'time(UTC),T2m,RH,G(h),Gb(n),Gd(h),IR(h),WS10m,WD10m,SP',
    ...inventedRows({ ...planted, zoneH: 0, sunShiftMin }).map((row) => {
      const time = `${2004 + row.month}${two(row.month)}${two(row.day)}:${two(row.hour - 1)}00`;
      const { airC, humidity, ghi, dni, dhi, infrared, windMs, pressurePa } = row;
      return `${time},${airC},${humidity},${ghi},${dni},${dhi},${infrared},${windMs},180.0,${pressurePa}`;
    }),
    '',
    'T2m: 2-m air temperature (degree Celsius)',
    'SP: Surface (air) pressure (Pa)',
    '',
    'PVGIS (c) European Union, 2001-2025',
  ];
}

export const textOf = (lines: readonly string[], end = '\n'): string => lines.join(end) + end;
