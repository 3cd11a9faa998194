/** Weather files of a server: read beside what it answers, and once. */
import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import request from 'supertest';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parseSite, syntheticYear, writeEpw } from '../../../model/index.ts';
import { createApp } from '../../../server/app.ts';
import { openStore } from '../../../server/data/store.ts';
import { readStations } from '../../../server/screening/stations.ts';
import { openScreenings } from '../../../server/screenings/jobs.ts';
import { openWeatherFiles } from '../../../server/screenings/weather-files.ts';
import { SMALL_SITE } from '../sites.ts';

const folder = mkdtempSync(join(tmpdir(), 'shadeside-weather-'));
const weather = join(folder, 'weather');
const path = (k: number) => join(weather, `${k}.epw`);
const FILES = 3;

beforeAll(() => {
  mkdirSync(weather);
  const place = { latitudeDeg: 33, longitudeDeg: -113, altitudeM: 300 };
  writeFileSync(
    path(0),
    writeEpw(syntheticYear(parseSite({ ...SMALL_SITE, place, climate: { sample: 'dry-basin' } }))),
  );
  for (let k = 1; k < FILES; k += 1) copyFileSync(path(0), path(k));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** How often others had their turn while something was worked on. */
async function turnsDuring<Result>(work: () => Promise<Result>): Promise<{ result: Result; turns: number }> {
  let turns = 0;
  let going = true;
  const count = () => {
    turns += 1;
    if (going) setImmediate(count);
  };
  setImmediate(count);
  try {
    return { result: await work(), turns };
  } finally {
    going = false;
  }
}

describe.each([0, 2])('weather files read by %i threads', (threads) => {
  test('are those that the command line reads, while others have their turn', async () => {
    const files = openWeatherFiles(folder, threads);
    const { result, turns } = await turnsDuring(() => files.read());
    expect(result).toEqual(readStations(weather));
    // In this thread once for each file, beside threads as often as there is time.
    expect(turns).toBeGreaterThanOrEqual(threads === 0 ? FILES : 100);
    await files.close();
  });

  test('are not read again while they stay as they are', async () => {
    const files = openWeatherFiles(folder, threads);
    const [before, after] = [new Date(1e12), new Date(2e12)];
    utimesSync(path(1), before, before);
    const [first, second] = await Promise.all([files.read(), files.read()]);
    expect(second?.[0]).toBe(first?.[0]);
    const content = readFileSync(path(1));
    const { size } = statSync(path(1));
    try {
      writeFileSync(path(1), 'x'.repeat(size));
      utimesSync(path(1), before, before);
      expect(await files.read()).toEqual(first);
      utimesSync(path(1), after, after);
      await expect(files.read()).rejects.toThrow(/^weather\/1\.epw: /);
    } finally {
      writeFileSync(path(1), content);
    }
    expect(await files.read()).toEqual(first);
    rmSync(path(2));
    expect((await files.read()).map(({ name }) => name)).toEqual(['0.epw', '1.epw']);
    copyFileSync(path(0), path(2));
  });
});

test('a server that stops does not wait for them', async () => {
  const files = openWeatherFiles(folder, 1);
  const reading = files.read();
  reading.catch(() => {});
  await new Promise((resolve) => setImmediate(resolve));
  await files.close();
  await expect(reading).rejects.toThrow();
});

test('health is answered while a screening that wants them begins', async () => {
  const store = openStore(folder);
  const screenings = openScreenings(store, { workers: 1 });
  const app = createApp({ webDir: 'none', store, screenings });
  const grid = { south: 33, west: -113, north: 33, east: -113, stepDeg: 1 };
  const begun = request(app)
    .post('/api/screenings')
    .send({ grid, settings: { weather: true } });
  let answered = 0;
  let going = true;
  const asking = (async () => {
    while (going) {
      expect((await request(app).get('/api/health')).status).toBe(200);
      answered += 1;
    }
  })();
  const { status } = await begun;
  const meanwhile = answered;
  going = false;
  await asking;
  expect(status).toBe(201);
  expect(meanwhile).toBeGreaterThanOrEqual(10);
  await screenings.stop();
  store.close();
});
