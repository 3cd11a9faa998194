/** Results and rejected rows of a screening that is done, as files. */
import { open } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Response } from 'express';
import { HttpError } from '../errors.ts';
import { type OutputSettings, resultsFoot, resultsHead, resultsText } from '../screening/output.ts';
import { rowSettingsOf } from './job.ts';
import type { Screenings } from './jobs.ts';
import { allRows } from './row-queries.ts';
import { openRows } from './row-store.ts';

export const DOWNLOADS = ['results.csv', 'results.geojson', 'rejects.csv'] as const;

export type Download = (typeof DOWNLOADS)[number];

/** Rows that are put into words at once. */
const AT_ONCE = 100;

/**
 * Streams one of the files of a screening.
 * @throws HttpError where it is not done
 */
export async function sendDownload(
  response: Response,
  screenings: Screenings,
  { id, what }: { readonly id: string; readonly what: Download },
): Promise<void> {
  const { status, name } = screenings.record(id);
  if (status !== 'done') throw new HttpError(409, `the screening is ${status}; its files can be had once it is done`);
  // Express encodes names of any script; what no file system takes goes.
  response.attachment(
    `${name
      .replace(/\.(csv|tsv|txt)$/i, '')
      .replace(/[\p{Cc}\\/:*?"<>|]+/gu, ' ')
      .trim()}.${what}`,
  );
  const { results, rejects } = screenings.files(id);
  if (what === 'results.geojson') {
    response.type('application/geo+json');
    await stream(Readable.from(geojson(screenings, id)), response);
    return;
  }
  const file = await open(what === 'results.csv' ? results : rejects);
  response.type('text/csv').set('Content-Length', String((await file.stat()).size));
  await stream(file.createReadStream(), response);
}

/** The same features as the command line writes. */
function* geojson(screenings: Screenings, id: string): Generator<string> {
  const settings: OutputSettings = { ...rowSettingsOf(screenings.spec(id)), format: 'geojson', delimiter: ',' };
  yield resultsHead(settings, false);
  const db = openRows(screenings.files(id).rows);
  try {
    let gathered: string[] = [];
    let first = true;
    for (const row of db === null ? [] : allRows(db)) {
      const text = resultsText([row], settings);
      gathered.push(first ? text.replace(/^,/, '') : text);
      first = false;
      if (gathered.length < AT_ONCE) continue;
      yield gathered.join('');
      gathered = [];
    }
    yield gathered.join('');
  } finally {
    db?.close();
  }
  yield resultsFoot(settings, screenings.record(id).tally);
}

async function stream(from: Readable, response: Response): Promise<void> {
  try {
    await pipeline(from, response);
  } catch (error) {
    // Whoever breaks off a download wants no answer.
    if ((error as NodeJS.ErrnoException).code !== 'ERR_STREAM_PREMATURE_CLOSE') throw error;
  }
}
