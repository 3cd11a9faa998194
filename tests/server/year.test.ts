/** `shadeside year` as its own process, with an invented weather file. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
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
  expect(flowing).toContain('Time of the file:');
  for (const said of [...result.assumptions, ...CAUTIONS]) expect(flowing).toContain(said);
  for (const line of stdout.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
});

test('--json is the result with the weather it rests on', async () => {
  const { code, stdout } = await year(siteFile, '--wall', 'west', '--weather', weatherFile, '--json');
  expect(code).toBe(0);
  const told = JSON.parse(stdout);
  expect(told.hourlyInsideAirC).toHaveLength(8760);
  expect(told.weather.timeBase.usedShiftMin).toBeDefined();
  expect(told.hoursOverLimit).toBe(evaluateYear(parseSite(site), 'west', readWeather(text)).hoursOverLimit);
});

test.each([
  [['--wall', 'west'], /--weather FILE is needed/],
  [['--weather', weatherFile], /--wall NAME is needed; walls of this site: north, east, south, west/],
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
