/** What a screening found as a whole: counts by kit class, margin and climate, and what all of it rests on. */
import { dayAssumptions, KIT_CLASSES, type Site, type UnitSystem, usualUnits } from '../../model/index.ts';
import { screeningAssumptions } from '../screening/assumptions.ts';
import type { RowResult } from '../screening/output.ts';
import { parseRowSite, RowError, type RowSettings, rowSite } from '../screening/row-site.ts';
import { MARGIN_STEP_K, type Tally } from '../screening/tally.ts';

const CLIMATE_TEXTS: Readonly<Record<string, string>> = {
  columns: 'design temperatures in the columns of the row',
  named: 'a climate sample or standard cycle',
  'weather file': 'the nearest weather file',
  assumed: 'assumed: blended from the invented samples by latitude and altitude',
};

interface SummaryOptions {
  /** One of the screened rows; null where there is none. */
  readonly row: RowResult | null;
  /** Of the assumptions; those of the place of the row when left out. */
  readonly units?: UnitSystem | undefined;
}

/** Counts of a tally, and what the figures rest on: what is said of all rows, and what one of them is filled in with. */
export function screeningSummary(tally: Tally, settings: RowSettings, { row, units: asked }: SummaryOptions) {
  const site = row === null ? null : siteOf(row, settings);
  const units = asked ?? (site === null ? 'metric' : usualUnits(site.place.timeZone));
  const margins = Object.entries(tally.margins).map(([low, count]) => ({ low: Number(low), count }));
  return {
    counts: {
      rows: tally.rows,
      addresses: tally.screened,
      insideLimit: margins.reduce((sum, { low, count }) => sum + (low >= 0 ? count : 0), 0),
      rejected: tally.rejected,
      blank: tally.blank,
    },
    kitClasses: KIT_CLASSES.map(({ name, text }) => ({ kit: name, label: text, count: tally.kits[name] ?? 0 })),
    marginHistogram: histogram(margins),
    assumptions: screeningAssumptions(tally, settings, units),
    example: row === null || site === null ? null : exampleOf(row, site, units),
    climates: byCount(tally.climates).map(([used, count]) => ({ used, text: CLIMATE_TEXTS[used] ?? used, count })),
    rejectReasons: byCount(tally.reasons).map(([reason, count]) => ({ reason, count })),
  };
}

/** Null for a row that a former version of the program took and this one refuses. */
function siteOf({ record }: RowResult, settings: RowSettings): Site | null {
  try {
    return parseRowSite(rowSite(record, settings), record, settings);
  } catch (error) {
    if (error instanceof RowError) return null;
    throw error;
  }
}

/** Steps without gaps from the least margin to the greatest. */
function histogram(margins: readonly { readonly low: number; readonly count: number }[]) {
  if (margins.length === 0) return { edgesK: [], counts: [] };
  const lows = margins.map(({ low }) => low);
  const least = Math.min(...lows);
  const steps = (Math.max(...lows) - least) / MARGIN_STEP_K + 1;
  const counts = Array.from({ length: steps }, () => 0);
  for (const { low, count } of margins) counts[(low - least) / MARGIN_STEP_K] = count;
  return { edgesK: Array.from({ length: steps + 1 }, (_, k) => least + k * MARGIN_STEP_K), counts };
}

function byCount(counts: Readonly<Record<string, number>>): [string, number][] {
  return Object.entries(counts).sort(([, a], [, b]) => b - a);
}

/** Rows differ in what they bring; one of them shows what the rest of a site is filled in with. */
function exampleOf({ record }: RowResult, site: Site, units: UnitSystem) {
  return { row: record.row, assumptions: dayAssumptions(site, units).filter(({ subject }) => subject !== 'climate') };
}
