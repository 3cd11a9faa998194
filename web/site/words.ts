/** Words that several parts of the page share. */
import {
  coldDecides,
  type DaySummary,
  type DecidingFigure,
  decidingMarginK,
  formatQuantity,
  type LedgerPath,
  type Site,
  type UnitSystem,
} from '../../model/index.ts';

const LIMIT_SUBJECTS: Record<Site['limits']['refersTo'], string> = {
  insideAir: 'air inside the box',
  outsideAir: 'outside air',
  componentCase: 'case of the electronics',
};

/** What a limit is a limit of. */
export function limitSubject(reference: Site['limits']['refersTo']): string {
  return LIMIT_SUBJECTS[reference];
}

/** The names of a day's curves, by what a limit may refer to. */
export const LINE_NAMES: Record<Site['limits']['refersTo'], string> = {
  insideAir: 'inside air',
  outsideAir: 'outside air',
  componentCase: 'electronics',
};

/** How far the day stays from the limit that decides: "7.2 K below the upper limit", "3.1 K over the upper limit". */
export function marginText(day: DaySummary, units: UnitSystem): string {
  const cold = coldDecides(day);
  const margin = decidingMarginK(day);
  const size = formatQuantity('temperatureDifference', Math.abs(margin), units);
  if (cold) return `${size} under the lower limit`;
  return `${size} ${margin < 0 ? 'over' : 'below'} the upper limit`;
}

/** "Electronics at the peak 69.4 °C, peak inside 60.1 °C": the air inside at its peak beside what decides. */
export function figuresText(
  { name, valueC, isInsidePeak }: DecidingFigure,
  peakInsideAirC: number,
  units: UnitSystem,
): string {
  const temperature = (celsius: number) => formatQuantity('temperature', celsius, units);
  if (isInsidePeak) return `Peak inside ${temperature(valueC)}`;
  return `${name} ${temperature(valueC)}, peak inside ${temperature(peakInsideAirC)}`;
}

/** Keeps a number and its unit on one line. */
export function unbroken(sentence: string): string {
  return sentence.replace(/(\d) (?=(?:°[CF]|K|W|h|min|mm?|ft|in|mph|m\/s|kg|lb)(?![A-Za-z]))/g, '$1\u00a0');
}

/** "none", "20 min", "3.5 h" */
export function hoursText(hours: number): string {
  if (hours <= 0) return 'none';
  return hours < 1 ? `${Math.round(hours * 60)} min` : `${Number(hours.toFixed(1))} h`;
}

export const LEDGER_WORDS: Record<LedgerPath, string> = {
  sunBeam: 'Direct sun',
  sunDiffuse: 'Light of the sky',
  sunReflected: 'Sunlight off the ground and the wall',
  dissipation: 'Heat of the electronics',
  convection: 'Outside air along the box',
  longwaveSky: 'Heat radiation, sky',
  longwaveGround: 'Heat radiation, ground',
  longwaveWall: 'Heat radiation, wall',
  longwaveSurroundings: 'Heat radiation, eaves and other things around',
  mounting: 'Back of the box and its fixings',
  hood: 'Hood and the air behind it',
  vents: 'Air through the vents',
  storage: 'Warming or cooling of the box itself',
};
