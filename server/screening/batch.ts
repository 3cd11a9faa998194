/** The work on a batch of rows: sites, results and their text. Runs in a worker thread, or in place for a small table. */
import { type ScreenedSite, type Site, SiteError, screenSite, shadeMemory } from '../../model/index.ts';
import { type OutputSettings, type RowResult, rejectsText, resultsText } from './output.ts';
import type { TableRecord } from './records.ts';
import { parseRowSite, RowError, type RowProblem, rowErrorOf, rowSite } from './row-site.ts';
import { addTallies, marginStep, NO_TALLY, type Tally } from './tally.ts';

/** Rows that are worked on together. */
export interface Batch {
  /** From 0, without gaps. */
  readonly seq: number;
  readonly records: readonly TableRecord[];
}

/** What comes of a batch. */
export interface Outcome {
  readonly seq: number;
  readonly results: string;
  readonly rejects: string;
  readonly tally: Tally;
  /** Where the settings ask for them. */
  readonly rows?: readonly RowResult[];
}

/** Results of this many different sites are kept by each worker, so that an address that is listed again costs nothing. */
const KEPT = 2000;

/** A worker on batches. */
export function batchWorker(settings: OutputSettings): (batch: Batch) => Outcome {
  const kept = new Map<string, { site: Site; result: ScreenedSite }>();
  /** Most addresses of a table have the same box under the same eave, which see the same of sky and ground. */
  const shades = shadeMemory();

  const screened = (record: TableRecord): RowResult => {
    const found = rowSite(record, settings);
    const key = JSON.stringify(found.input);
    const known = kept.get(key) ?? screen(parseRowSite(found, record, settings), record);
    // The oldest goes first.
    kept.delete(key);
    kept.set(key, known);
    if (kept.size > KEPT) kept.delete(kept.keys().next().value ?? '');
    return { record, site: found, place: known.site.place, result: known.result };
  };

  const screen = (site: Site, record: TableRecord) => {
    try {
      return { site, result: screenSite(site, { units: 'metric', shades }) };
    } catch (error) {
      // A date that the place does not have turns up only now.
      throw error instanceof SiteError ? rowErrorOf(error, record, settings) : error;
    }
  };

  return ({ seq, records }) => {
    const results: RowResult[] = [];
    const rejects: { record: TableRecord; problems: readonly RowProblem[] }[] = [];
    let tally: Tally = { ...NO_TALLY, rows: records.length };
    for (const record of records) {
      if (record.fault === undefined && record.cells.every((cell) => cell.trim() === '')) {
        tally = addTallies(tally, { ...NO_TALLY, blank: 1 });
        continue;
      }
      try {
        const row = screened(record);
        results.push(row);
        tally = addTallies(tally, tallyOf(row));
      } catch (error) {
        if (!(error instanceof RowError)) throw error;
        const { problems } = error;
        rejects.push({ record, problems });
        tally = addTallies(tally, { ...NO_TALLY, rejected: 1, reasons: { [reasonKind(problems[0])]: 1 } });
      }
    }
    return {
      seq,
      results: results.length === 0 ? '' : resultsText(results, settings),
      rejects: rejects.length === 0 ? '' : rejectsText(rejects, settings),
      tally,
      ...(settings.keepRows && { rows: results.map(withoutSite) }),
    };
  };
}

/** A result without what its row says already. */
function withoutSite({ record, site, place, result }: RowResult): RowResult {
  const { latitudeDeg, longitudeDeg, altitudeM } = place;
  const { source, text, distanceKm } = site.climate;
  return {
    record,
    site: { compass: site.compass, climate: { source, text, distanceKm } },
    place: { latitudeDeg, longitudeDeg, altitudeM },
    result,
  };
}

function tallyOf({ result, site }: RowResult): Tally {
  return {
    ...NO_TALLY,
    screened: 1,
    kits: { [result.kit]: 1 },
    climates: { [site.climate.source]: 1 },
    margins: result.best === null ? {} : { [marginStep(result.best.marginK)]: 1 },
  };
}

/** A reason without the value in it, so that rows with the same trouble are counted together. */
function reasonKind(problem: RowProblem | undefined): string {
  const reason = (problem?.reason ?? '').split(/; (?:write|allowed)/)[0] ?? '';
  const general = reason.replace(/^("[^"]*…?"?|-?[\d.e+]+) (?=is )/, '');
  return `${problem?.column === '' ? '' : `${problem?.column}: `}${general}`.slice(0, 100);
}
