/**
 * The weather files of a data folder as design days. Each takes a good part of a second to read: that is done in threads beside the
 * server, which goes on answering, and not again while a file stays as it is.
 */
import { statSync } from 'node:fs';
import { join } from 'node:path';
import { Piscina } from 'piscina';
import { BadInput } from '../bad-input.ts';
import { WEATHER_FOLDER } from '../data/folders.ts';
import type { Station } from '../screening/climate-choice.ts';
import readHere, { type ReadStation, type WeatherFile } from '../screening/station-worker.ts';
import { weatherNames } from '../screening/stations.ts';
import { workerEntry } from '../worker-entry.ts';

export interface WeatherFiles {
  /**
   * All of them, in the order of their names.
   * @throws BadInput when there is none, and for the first that is wrong
   */
  read(): Promise<Station[]>;
  /** Ends what is being read. */
  close(): Promise<void>;
}

interface Known {
  readonly state: string;
  readonly station: Station;
}

/** Threads give way to the one that answers. */
const NICE = 5;

/** With no threads this one reads, and others have their turn between two files. */
export function openWeatherFiles(dataFolder: string, threads: number): WeatherFiles {
  const folder = join(dataFolder, WEATHER_FOLDER);
  let known = new Map<string, Known>();
  let pool: Piscina<WeatherFile, ReadStation> | null = null;
  // One reading after the other: who comes second finds what the first has read.
  let turn: Promise<unknown> = Promise.resolve();

  async function load(): Promise<Station[]> {
    const files = weatherNames(folder).map((name) => ({ name, state: stateOf(join(folder, name)) }));
    const fresh = files.filter(({ name, state }) => known.get(name)?.state !== state);
    const outcomes = await outcomesOf(fresh.map(({ name }) => ({ folder, name })));
    const read = new Map(fresh.map(({ name }, k) => [name, outcomes[k]]));
    const now = new Map<string, Known>();
    for (const { name, state } of files) {
      const outcome = read.get(name) ?? known.get(name);
      if (outcome !== undefined && 'station' in outcome) now.set(name, { state, station: outcome.station });
    }
    // Before a wrong one is told: the others need not be read again once it is mended.
    known = now;
    for (const outcome of outcomes) if ('lines' in outcome) throw new BadInput(outcome.lines);
    return [...now.values()].map(({ station }) => station);
  }

  async function outcomesOf(files: readonly WeatherFile[]): Promise<ReadStation[]> {
    if (threads > 0 && files.length > 0) return inThreads(files);
    const outcomes: ReadStation[] = [];
    for (const file of files) {
      await new Promise((resolve) => setImmediate(resolve));
      outcomes.push(readHere(file));
    }
    return outcomes;
  }

  async function inThreads(files: readonly WeatherFile[]): Promise<ReadStation[]> {
    const opened = new Piscina<WeatherFile, ReadStation>({
      filename: workerEntry('station-worker'),
      maxThreads: Math.min(threads, files.length),
      minThreads: 1,
      niceIncrement: NICE,
      // Options of this process may not suit a thread.
      execArgv: [],
    });
    pool = opened;
    try {
      // A thread that cannot start ends the reading, which would wait for it for ever.
      const lost = new Promise<never>((_, reject) => opened.on('error', reject));
      return await Promise.race([Promise.all(files.map((file) => opened.run(file))), lost]);
    } finally {
      pool = null;
      await opened.destroy();
    }
  }

  return {
    read() {
      const mine = turn.then(load).catch((error: unknown) => {
        throw error instanceof BadInput ? withoutFolder(error, folder) : error;
      });
      turn = mine.catch(() => {});
      return mine;
    },
    close: async () => pool?.destroy(),
  };
}

/** Differs once a file was written; it is looked up before the file is read. */
function stateOf(path: string): string {
  const at = statSync(path, { throwIfNoEntry: false });
  return at === undefined ? '' : `${at.size} ${at.mtimeMs}`;
}

/** Where the data folder lies is nobody's business outside. */
function withoutFolder({ lines }: BadInput, folder: string): BadInput {
  return new BadInput(lines.map((line) => line.replace('--weather ', '').replaceAll(folder, WEATHER_FOLDER)));
}
