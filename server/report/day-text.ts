/** The day of one wall as a person reads it in a terminal: a line an hour, then what matters. */
import {
  capital,
  clockTime,
  type DayResult,
  FACES,
  type Face,
  formatQuantity,
  type Site,
  SUNSHINE,
  SUNSHINE_ORIGIN,
  toDisplay,
  touchText,
  type UnitSystem,
  unitSymbol,
} from '../../model/index.ts';
import { type Column, table } from '../terminal/table.ts';
import { wrap } from '../terminal/wrap.ts';
import { assumptionLines } from './assumption-lines.ts';
import { cautionLines } from './caution-lines.ts';
import { ledgerWords } from './ledger-words.ts';
import { placeLines } from './place-lines.ts';

/** Place, hourly table, peak, margins, heat balance at the peak, assumptions and cautions. */
export function dayText(site: Site, day: DayResult, units: UnitSystem): string {
  const symbol = unitSymbol('temperature', units);
  return [
    ...placeLines(site, day, units).map((line) => wrap(line)),
    wrap(`wall ${day.wall}`),
    '',
    table(fullHours(day), columns(day, facesOf(site), units)),
    '',
    wrap(
      `temperatures in ${symbol}; front to ${facesOf(site).at(-1)}: sun on that face of the box in W/m², left and right as seen by a person who faces the wall.`,
    ),
    '',
    ...summary(site, day, units).map((line) => wrap(line)),
    '',
    'Assumed:',
    ...assumptionLines(day.assumptions),
    '',
    ...cautionLines(),
  ].join('\n');
}

/** Indices of the steps at full hours of the local clock. */
function fullHours(day: DayResult): number[] {
  return day.stepsUtc.flatMap((at, index) => (clockTime(at, day.timeZone).endsWith(':00') ? [index] : []));
}

/** The faces that the sun can reach: the back of a box on a wall is hidden. */
function facesOf({ box }: Site): readonly Face[] {
  return box.mount === 'post' ? FACES : FACES.filter((face) => face !== 'back');
}

function columns(day: DayResult, faces: readonly Face[], units: UnitSystem): Column<number>[] {
  const temperatures = { outside: day.outsideAirC, inside: day.insideAirC, electronics: day.electronicsC };
  return [
    { head: 'time', text: (step) => clockTime(day.stepsUtc[step] ?? new Date(Number.NaN), day.timeZone) },
    ...Object.entries(temperatures).map(([head, valuesC]) => ({
      head,
      text: (step: number) =>
        toDisplay('temperature', valuesC[step] ?? Number.NaN, units).toFixed(units === 'us' ? 0 : 1),
    })),
    ...faces.map((face) => ({
      head: face,
      text: (step: number) => (day.faceIrradianceWm2[face][step] ?? Number.NaN).toFixed(0),
    })),
  ];
}

function summary(site: Site, day: DayResult, units: UnitSystem): string[] {
  const temperature = (valueC: number) => formatQuantity('temperature', valueC, units);
  const { minC, maxC } = site.limits;
  const touch = touchText(day.touch, units);
  const room = (marginK: number, limit: string) =>
    `${formatQuantity('temperatureDifference', Math.abs(marginK), units)} ${marginK < 0 ? 'past' : 'inside'} the ${limit}`;
  return [
    `Peak: ${temperature(day.peakInsideAirC)} in the air inside the box at ${clockTime(day.peakAtUtc, day.timeZone)}; electronics up to ` +
      `${temperature(day.peakElectronicsC)}, outside air up to ${temperature(day.peakOutsideAirC)}.`,
    ...partsInside(day, units),
    `Margin: ${room(day.marginK, `upper limit of ${temperature(maxC)}`)}, ${day.hoursOverLimit.toFixed(1)} h over it; ` +
      `${room(day.coldMarginK, `lower limit of ${temperature(minC)}`)}.`,
    `${capital(SUNSHINE)} (${SUNSHINE_ORIGIN}) on the box: ${day.sunHours.toFixed(1)} h.`,
    ...(day.condensationHours > 0
      ? [`Condensation: for ${day.condensationHours.toFixed(1)} h a face of the box is below the dew point of the air.`]
      : []),
    ...(touch === '' ? [] : [`Touch: ${touch}`]),
    `Heat balance at the peak. ${ledgerWords(day.ledgerAtPeak, units)}`,
    `Energy: in minus out minus stored over the day is ${closure(day.energyClosure)} of what came in.`,
  ];
}

/** How hot the battery and the lower room get, where the box has them. */
function partsInside({ batteryC, lowerAirC }: DayResult, units: UnitSystem): string[] {
  const parts = [
    { what: 'the battery', valuesC: batteryC },
    { what: 'the air in the lower room', valuesC: lowerAirC },
  ].flatMap(({ what, valuesC }) =>
    valuesC === null ? [] : [`${what} up to ${formatQuantity('temperature', Math.max(...valuesC), units)}`],
  );
  return parts.length === 0 ? [] : [`Also inside: ${parts.join(', ')}.`];
}

/** A relative residual in per cent; more digits than three say nothing. */
function closure(relative: number): string {
  const percent = Math.abs(relative) * 100;
  return percent < 0.001 ? 'less than 0.001 %' : `${percent.toFixed(3)} %`;
}
