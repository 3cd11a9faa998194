/** What a screening is made of, as it is kept: everything that a restart needs to go on with it. */
import { copyFileSync, existsSync, linkSync, mkdirSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import packageFile from '../../package.json';
import { TABLE_FILE } from '../data/folders.ts';
import type { ClimateSettings, Station } from '../screening/climate-choice.ts';
import type { ColumnMatch } from '../screening/columns.ts';
import type { Grid } from '../screening/grid.ts';
import type { BaseSite, RowSettings } from '../screening/row-site.ts';
import type { ScreeningJob } from '../screening/screening.ts';
import type { TableFile } from '../screening/sniff.ts';
import { gridSource, type Source, tableSource } from '../screening/source.ts';
import type { Order } from './requests.ts';

export interface JobSpec {
  /** Of the program that began it: another one does not go on with its files. */
  readonly version: string;
  readonly from: { readonly table: Omit<TableFile, 'path'> } | { readonly grid: Grid };
  readonly columns: ColumnMatch;
  readonly base: BaseSite;
  /** The design days themselves, so that a weather file that changes later changes nothing. */
  readonly climate: ClimateSettings;
  readonly workers: number | null;
}

/** The files of a screening, all within its folder. */
export function jobFiles(folder: string) {
  return {
    folder,
    table: join(folder, TABLE_FILE),
    results: join(folder, 'results.csv'),
    rejects: join(folder, 'rejects.csv'),
    rows: join(folder, 'rows.sqlite'),
  };
}

export type JobFiles = ReturnType<typeof jobFiles>;

/** Makes the folder of a screening, with a table of its own: the uploaded one may go. */
export function prepareJob(order: Order, files: JobFiles, stations: readonly Station[]): JobSpec {
  const { from, columns, base, climate, workers } = order;
  mkdirSync(files.folder, { recursive: true });
  return {
    version: packageFile.version,
    from: 'grid' in from ? { grid: from.grid } : { table: tableFor(from.table.file, files.table) },
    ...{ columns, base },
    climate: { ...(climate !== undefined && { named: climate }), stations },
    workers: workers ?? null,
  };
}

function tableFor({ path, ...table }: TableFile, to: string): Omit<TableFile, 'path'> {
  try {
    linkSync(path, to);
  } catch {
    // Some file systems know no second name for a file.
    copyFileSync(path, to);
  }
  return table;
}

export function sourceOf({ from }: JobSpec, files: JobFiles): Source {
  return 'grid' in from ? gridSource(from.grid) : tableSource({ ...from.table, path: files.table });
}

/** What its rows are read with. */
export function rowSettingsOf(spec: JobSpec): RowSettings {
  const { columns, base, climate } = spec;
  const header = 'grid' in spec.from ? gridSource(spec.from.grid).header : spec.from.table.header;
  return { header, columns, base, climate };
}

/** The job for the engine; `usualWorkers` where the screening asks for none of its own. */
export function engineJob(spec: JobSpec, files: JobFiles, usualWorkers = availableParallelism()): ScreeningJob {
  const sameProgram = spec.version === packageFile.version && existsSync(files.rows);
  return {
    source: sourceOf(spec, files),
    ...{ columns: spec.columns, base: spec.base, climate: spec.climate },
    format: 'csv',
    ...{ out: files.results, rejects: files.rejects },
    workers: spec.workers ?? usualWorkers,
    unfinished: sameProgram ? 'resume' : 'restart',
  };
}
