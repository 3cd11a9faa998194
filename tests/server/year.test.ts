/** `shadeside year` as its own process, with an invented weather file. */
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { CAUTIONS, DEMO_SITE, evaluateYear, parseSite, readWeather } from '../../model/index.ts';
import { epwLines, INVENTED_PLACE, textOf } from '../model/climate/weather/invented-files.ts';
import { runBuilt } from './run-built.ts';

const folder = mkdtempSync(join(tmpdir(), 'shadeside-year-'));
afterAll(() => rmSync(folder, { recursive: true }));

const text = textOf(epwLines());
const weatherFile = join(folder, 'invented.epw');
writeFileSync(weatherFile, text);
const site = { ...DEMO_SITE, place: { ...DEMO_SITE.place, ...INVENTED_PLACE } };
const siteFile = join(folder, 'site.json');
writeFileSync(siteFile, JSON.stringify(site));
const year = (...args: string[]) => runBuilt(['year', ...args]);

test('tells hours, months, sun, ageing, the time of the file, assumptions and cautions', async () => {
  const { code, stdout } = await year(siteFile, '--wall', 'west', '--weather', weatherFile, '--units', 'metric');
  expect(code).toBe(0);
  const flowing = stdout.replace(/\s+/g, ' ');
  const result = evaluateYear(parseSite(site), 'west', readWeather(text));
  expect(flowing).toContain(`for ${Math.round(result.hoursOverLimit)} h of the year`);
  expect(flowing).toContain(`peak of the air inside ${result.peakInsideAirC.toFixed(1)} °C`);
  expect(stdout.match(/^(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) /gm)).toHaveLength(12);
  expect(flowing).toContain('Time of the rows:');
  expect(flowing).toMatch(/slower than on any other wall|times as fast as on the wall where they age slowest/);
  for (const said of [...result.assumptions, ...CAUTIONS]) expect(flowing).toContain(said);
  for (const line of stdout.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
});

test('--json is the result with the weather it rests on', async () => {
  const { code, stdout } = await year(siteFile, '--wall', 'west', '--weather', weatherFile, '--json');
  expect(code).toBe(0);
  const told = JSON.parse(stdout);
  expect(told.hourlyInsideAirC).toHaveLength(8760);
  expect(told.weather.timeBase.usedShiftMin).toBe(-30);
  expect(told.hoursOverLimit).toBe(evaluateYear(parseSite(site), 'west', readWeather(text)).hoursOverLimit);
});

test.each([
  [['--weather', weatherFile, '--seed', '2'], /--seed is for an invented year, and --weather names a file/],
  [['--weather', weatherFile, '--write-epw', join(folder, 'never.epw')], /--write-epw is for an invented year/],
  [['--seed', '-1'], /seed/],
  [['--write-epw', join(folder, 'no-folder', 'year.epw')], /the EPW cannot be written \(ENOENT\)/],
  [['--wall', 'attic', '--weather', weatherFile], /no wall "attic"/],
  [['--wall', 'west', '--weather', join(folder, 'none.epw')], /there is no such file/],
  [['--wall', 'west', '--weather', siteFile], /line 1: .*starts no weather file/],
])('year %j is one clear error', async (args, message) => {
  const { code, stdout, stderr } = await year(siteFile, ...args);
  expect(code).toBe(2);
  expect(stdout).toBe('');
  expect(stderr).toMatch(message);
});

test('weather of another part of the world is refused', async () => {
  const far = join(folder, 'far.json');
  writeFileSync(far, JSON.stringify({ ...site, place: { ...site.place, longitudeDeg: 8, timeZone: undefined } }));
  const { code, stderr } = await year(far, '--wall', 'west', '--weather', weatherFile);
  expect(code).toBe(2);
  expect(stderr).toMatch(/weather: the weather is that of another place, 34\.5, -112\.25; allowed: within 5 degrees/);
});

test('without a wall all of them stand side by side; the slowest to age is the measure', async () => {
  const { code, stdout } = await year(siteFile, '--weather', weatherFile, '--json');
  expect(code).toBe(0);
  const told: { bestWall: string; walls: { wall: string; ageingVersusBest: number }[] } = JSON.parse(stdout);
  expect(told.walls.map(({ wall }) => wall)).toEqual(site.walls.map(({ name }) => name));
  for (const { wall, ageingVersusBest } of told.walls) {
    if (wall === told.bestWall) expect(ageingVersusBest).toBe(1);
    else expect(ageingVersusBest).toBeGreaterThan(1);
  }
  expect(existsSync(join(folder, 'never.epw'))).toBe(false);
});

test('without a file a year is invented; written as an EPW and read back it is the same year', async () => {
  const sample = join(folder, 'sample.json');
  writeFileSync(sample, JSON.stringify({ ...site, climate: { sample: 'dry-basin' } }));
  const epw = join(folder, 'written.epw');
  const invented = await year(sample, '--wall', 'west', '--seed', '7', '--write-epw', epw, '--json');
  const readBack = await year(sample, '--wall', 'west', '--weather', epw, '--json');
  expect([invented.code, readBack.code]).toEqual([0, 0]);
  const { weather: _one, ...told } = JSON.parse(invented.stdout);
  const { weather: _other, ...again } = JSON.parse(readBack.stdout);
  expect(again).toEqual(told);
});

test('a site whose climate is a single day has no invented year', async () => {
  const single = join(folder, 'single.json');
  const designDay = { date: '2026-07-05', maxC: 46, dailyRangeK: 14, dewPointC: 8 };
  writeFileSync(single, JSON.stringify({ ...site, climate: { designDay } }));
  const { code, stdout, stderr } = await year(single, '--wall', 'west');
  expect(code).toBe(2);
  expect(stdout).toBe('');
  expect(stderr).toMatch(/climate/);
});
