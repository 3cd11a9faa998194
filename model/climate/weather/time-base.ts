/**
 * Which instant the rows of a file belong to. No rule of a format holds for every file, and forty minutes turn an east and
 * a west wall round; but global = direct times the cosine of the zenith + diffuse holds at one sun time only, so that the
 * residual over the assumed shift of the sun from the label has one sharp minimum.
 */
import { sinDeg } from '../../solar/angles.ts';
import { sunPosition } from '../../solar/sun-position.ts';
import { startOfYearMs } from './row-calendar.ts';
import { fileError } from './weather-file-error.ts';
import type { WeatherTable } from './weather-table.ts';

/** When the rows' suns stand, and how that was found. */
export interface TimeBase {
  /** What the format, or the file's header, says. */
  readonly declaredRule: string;
  readonly declaredShiftMin: number;
  /** Shift of the sun from the label at which the irradiance closes best, minutes; null where it cannot be found. */
  readonly foundShiftMin: number | null;
  /** The shift in use; against labels in the corrected zone, where that was wrong. */
  readonly usedShiftMin: number;
  /** Root mean square of global less direct and diffuse at the shift in use, W/m2. */
  readonly residualWm2: number | null;
  readonly corrected: boolean;
  /** All of it in a sentence or two. */
  readonly text: string;
}

/** A time base with what it changes of the table. */
export interface CheckedTime {
  readonly timeBase: TimeBase;
  readonly labelZoneH: number;
  /** Whether a row is a sum over the hour round its sun, as against a value of one instant. */
  readonly sums: boolean;
}

/** Below this beam a row says little about where the sun stands, W/m2. */
const LEAST_BEAM_WM2 = 50;

/** So few rows find no minimum. */
const FEWEST_ROWS = 40;

/** The format's rule stands while the minimum is no further from it, minutes. */
const AGREES_WITHIN_MIN = 10;

/** Furthest from its label that the instant of a row is looked for, minutes; beyond it only a wrong zone is. */
const FURTHEST_SHIFT_MIN = 90;

/** Furthest that the instant can lie from the label of an hourly row with a right zone, minutes. */
const WITHIN_ROW_MIN = 60;

/** The minimum is clear where the residual at the format's rule is at least so many times as large. */
const CLEAR_RATIO = 1.25;

/** Nothing fits where the residual at the minimum is more than this share of the global irradiance. */
const LARGEST_SHARE = 0.1;

/** Said to be poor from this share on. */
const POOR_SHARE = 0.03;

const MINUTE_MS = 60_000;
const DAY_MIN = 1440;
const COARSE_STEP_MIN = 30;
const FINE_MIN = 0.05;

/** Days between those looked at in the scan over a whole day, and in the search about its minimum. */
const COARSE_EVERY_DAYS = 15;
const FINE_EVERY_DAYS = 2;

/** Labels of the rows as instants, by the zone of the file or a corrected one, ms. */
export function labelMs({ firstLabelMin }: WeatherTable, zoneH: number, row: number): number {
  return startOfYearMs(zoneH) + (firstLabelMin + row * 60) * MINUTE_MS;
}

/** @throws WeatherFileError with the figures, where no shift within a day fits, or only one that no mend explains */
export function checkTime(table: WeatherTable): CheckedTime {
  const { rule, labelZoneH } = table;
  const declared = { declaredRule: rule.text, declaredShiftMin: round(rule.shiftMin) };
  const coarse = sampleOf(table, COARSE_EVERY_DAYS);
  const fine = sampleOf(table, FINE_EVERY_DAYS);
  if (fine.count < FEWEST_ROWS) {
    const text = `Taken as ${rule.text}. Not checked: too few rows have global, direct and diffuse irradiance.`;
    const timeBase = {
      ...declared,
      foundShiftMin: null,
      usedShiftMin: rule.shiftMin,
      residualWm2: null,
      corrected: false,
      text,
    };
    return { timeBase, labelZoneH, sums: rule.sums };
  }
  const found = bestShift(coarse, fine, rule.shiftMin, table);
  const least = residual(fine, found, table);
  const atRule = residual(fine, rule.shiftMin, table);
  if (least > LARGEST_SHARE * fine.meanSquareRoot) throw nothingFits(table, { fine, found, least, atRule });
  const poor = least > POOR_SHARE * fine.meanSquareRoot ? ' The three irradiances fit each other poorly.' : '';
  const finish = (usedShiftMin: number, answer: Answer): CheckedTime => {
    const { text, residualWm2 = least, zoneH = labelZoneH, corrected = true, sums = rule.sums } = answer;
    const timeBase = {
      ...declared,
      foundShiftMin: round(found),
      usedShiftMin,
      residualWm2: round(residualWm2),
      corrected,
      text: text + poor,
    };
    return { timeBase, labelZoneH: zoneH, sums };
  };

  const off = found - rule.shiftMin;
  const figures = `the irradiance closes ${after(found)} within ${watts(least)}, ${after(rule.shiftMin)} within ${watts(atRule)}`;
  if (Math.abs(off) <= AGREES_WITHIN_MIN) {
    const text = `Taken as ${rule.text}: the irradiance closes ${after(found)} within ${watts(least)}.`;
    return finish(rule.shiftMin, { text, residualWm2: atRule, corrected: false });
  }
  if (atRule < CLEAR_RATIO * least) {
    const text = `Taken as ${rule.text}, though ${figures}: too small a difference to go by.`;
    return finish(rule.shiftMin, { text, residualWm2: atRule, corrected: false });
  }
  const turned = fitsTurnedLongitude(table, found);
  if (turned && zoneSpeaksForTurned(table)) throw signIsWrong(table, figures);
  const hours = Math.round(off / 60);
  const wholeHours = Math.abs(off - hours * 60) <= AGREES_WITHIN_MIN;
  if (wholeHours && Math.abs(found) > WITHIN_ROW_MIN + AGREES_WITHIN_MIN) {
    const zoneH = wrapZone(labelZoneH - hours);
    const text = `Corrected: the file's time zone, ${utc(labelZoneH)}, is taken as ${utc(zoneH)}, because ${figures}. Rows are taken as ${rule.text}.`;
    return finish(rule.shiftMin, { text, zoneH, residualWm2: residual(fine, rule.shiftMin + hours * 60, table) });
  }
  if (Math.abs(found) <= FURTHEST_SHIFT_MIN) {
    const usedShiftMin = round(found);
    const doubt = turned ? ' A wrong sign of the longitude would look the same.' : '';
    const text = `Corrected: the format's rule is ${rule.text}, but ${figures}. The sun is taken ${after(usedShiftMin)}.${doubt}`;
    return finish(usedShiftMin, { text, sums: rule.sums && isHalfHour(found) });
  }
  const wrong = `the sun does not fit the labels: ${figures}; no hourly row lies so far from its label, and no whole hour of time zone explains it. Longitude ${table.longitudeDeg} or zone ${utc(labelZoneH)} of the header is wrong`;
  throw fileError(1, wrong, { found: after(found), allowed: `up to ${FURTHEST_SHIFT_MIN} minutes, or whole hours` });
}

/** How one outcome of the check differs from a corrected shift in the format's own zone. */
interface Answer {
  readonly text: string;
  readonly residualWm2?: number;
  readonly zoneH?: number;
  readonly corrected?: boolean;
  readonly sums?: boolean;
}

/** Rows with a beam, of some days of the year. */
interface Sample {
  readonly count: number;
  readonly labelMs: Float64Array;
  /** Global less diffuse. */
  readonly level: Float64Array;
  readonly dni: Float64Array;
  /** Of the global irradiance, W/m2. */
  readonly meanSquareRoot: number;
}

/** Every so many days, or all of them where those have too few rows. */
function sampleOf(table: WeatherTable, everyDays: number): Sample {
  const sample = rowsWithBeam(table, everyDays);
  return sample.count >= FEWEST_ROWS ? sample : rowsWithBeam(table, 1);
}

function rowsWithBeam(table: WeatherTable, everyDays: number): Sample {
  const { ghi, dni, dhi } = table.columns;
  const rows: number[] = [];
  let squares = 0;
  for (let row = 0; row < ghi.length; row++) {
    if (Math.floor(row / 24) % everyDays !== 0) continue;
    const [global, beam, diffuse] = [ghi[row] as number, dni[row] as number, dhi[row] as number];
    // A comparison with a hole is false.
    if (!(beam > LEAST_BEAM_WM2 && global >= 0 && diffuse >= 0)) continue;
    rows.push(row);
    squares += global * global;
  }
  return {
    count: rows.length,
    labelMs: Float64Array.from(rows, (row) => labelMs(table, table.labelZoneH, row)),
    level: Float64Array.from(rows, (row) => (ghi[row] as number) - (dhi[row] as number)),
    dni: Float64Array.from(rows, (row) => dni[row] as number),
    meanSquareRoot: Math.sqrt(squares / Math.max(rows.length, 1)),
  };
}

type Coordinates = Pick<WeatherTable, 'latitudeDeg' | 'longitudeDeg'>;

function residual(sample: Sample, shiftMin: number, { latitudeDeg, longitudeDeg }: Coordinates): number {
  let squares = 0;
  for (let i = 0; i < sample.count; i++) {
    const utc = new Date((sample.labelMs[i] as number) + shiftMin * MINUTE_MS);
    const { elevationDeg } = sunPosition(utc, latitudeDeg, longitudeDeg);
    const level = elevationDeg > 0 ? (sample.dni[i] as number) * sinDeg(elevationDeg) : 0;
    squares += ((sample.level[i] as number) - level) ** 2;
  }
  return Math.sqrt(squares / sample.count);
}

/** The shift of the least residual within twelve hours of the rule, minutes: a scan, then a golden section. */
function bestShift(coarse: Sample, fine: Sample, ruleMin: number, place: Coordinates): number {
  let best = ruleMin;
  let least = Number.POSITIVE_INFINITY;
  for (let shift = ruleMin - DAY_MIN / 2; shift < ruleMin + DAY_MIN / 2; shift += COARSE_STEP_MIN) {
    const value = residual(coarse, shift, place);
    if (value < least) [best, least] = [shift, value];
  }
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [best - COARSE_STEP_MIN, best + COARSE_STEP_MIN];
  let [a, b] = [high - golden * (high - low), low + golden * (high - low)];
  let [atA, atB] = [residual(fine, a, place), residual(fine, b, place)];
  while (high - low > FINE_MIN) {
    if (atA < atB) {
      [high, b, atB] = [b, a, atA];
      a = high - golden * (high - low);
      atA = residual(fine, a, place);
    } else {
      [low, a, atA] = [a, b, atB];
      b = low + golden * (high - low);
      atB = residual(fine, b, place);
    }
  }
  return (low + high) / 2;
}

/** Whether the format's rule would hold with the longitude's sign turned: a degree is four minutes. */
function fitsTurnedLongitude({ longitudeDeg, rule }: WeatherTable, found: number): boolean {
  const off = found + 8 * longitudeDeg - rule.shiftMin;
  return Math.abs(off - Math.round(off / DAY_MIN) * DAY_MIN) <= AGREES_WITHIN_MIN;
}

/** Clearly nearer to the other longitude, hours. */
const ZONE_SPEAKS_H = 0.25;

function zoneSpeaksForTurned({ longitudeDeg, labelZoneH }: WeatherTable): boolean {
  const solarH = longitudeDeg / 15;
  return Math.abs(labelZoneH - solarH) - Math.abs(labelZoneH + solarH) > ZONE_SPEAKS_H;
}

function signIsWrong({ longitudeDeg, labelZoneH }: WeatherTable, figures: string) {
  const wrong = `longitude ${longitudeDeg} and time zone ${utc(labelZoneH)} contradict each other: ${figures}; with longitude ${-longitudeDeg} the format's rule holds. One of the two signs is wrong`;
  return fileError(1, wrong, { found: `longitude ${longitudeDeg}`, allowed: 'east positive, west negative' });
}

function nothingFits(
  table: WeatherTable,
  { fine, found, least, atRule }: { fine: Sample; found: number; least: number; atRule: number },
) {
  const { latitudeDeg, longitudeDeg, rule } = table;
  const mirrored = { latitudeDeg: -latitudeDeg, longitudeDeg };
  const turned = residual(fine, bestShift(fine, fine, rule.shiftMin, mirrored), mirrored);
  const guess =
    turned < LARGEST_SHARE * fine.meanSquareRoot
      ? `With latitude ${-latitudeDeg} it closes within ${watts(turned)}: its sign is wrong`
      : 'Place, dates (day and month swapped?) or columns are not what the header says';
  const wrong = `the irradiance fits no place of the sun within a day: it closes best ${after(found)}, within ${watts(least)}, and ${after(rule.shiftMin)}, as the format has it, within ${watts(atRule)}, of ${watts(fine.meanSquareRoot)} of global irradiance. ${guess}`;
  const allowed = `a residual of up to ${watts(LARGEST_SHARE * fine.meanSquareRoot)}`;
  return fileError(0, wrong, { found: watts(least), allowed });
}

/** Half past, either way: what sums over whole hours look like. */
const isHalfHour = (shiftMin: number): boolean => Math.abs(Math.abs(shiftMin) - 30) <= 3;

const round = (value: number): number => Math.round(value * 100) / 100;
const watts = (value: number): string => `${value.toFixed(value < 10 ? 1 : 0)} W/m2`;
const utc = (hours: number): string => `UTC${hours < 0 ? '' : '+'}${hours}`;

function wrapZone(hours: number): number {
  if (hours < -12) return hours + 24;
  return hours > 14 ? hours - 24 : hours;
}

function after(shiftMin: number): string {
  const minutes = Math.round(Math.abs(shiftMin) * 10) / 10;
  if (minutes === 0) return 'at the label';
  return `${minutes} minutes ${shiftMin < 0 ? 'before' : 'after'} the label`;
}
