import { existsSync, readdirSync, readFileSync, rmSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { assumedClimate, decidingMarginK, parseSite, rankWalls } from '../../../model/index.ts';
import { ScreeningStopped } from '../../../server/screening/screening.ts';
import { manyRows, ownFolder, rowsOf, screened } from './tables.ts';

const folder = ownFolder();
const out = join(folder, 'results.csv');
const rejectsPath = join(folder, 'results.rejects.csv');
const results = () => readFileSync(out, 'utf8');
const rejects = () => rowsOf(readFileSync(rejectsPath, 'utf8'));

beforeEach(() => {
  for (const name of readdirSync(folder)) rmSync(join(folder, name), { recursive: true });
});

describe('the results', () => {
  test('equal the ranking of the same site to the last digit', async () => {
    await screened(folder, 'lat,lon,power,maxC,altitude\n33.2,-113.4,14,46,330\n51.5,-0.1,30,31,\n');
    const sites = [
      { place: { latitudeDeg: 33.2, longitudeDeg: -113.4, altitudeM: 330 }, powerW: 14, maxC: 46 },
      { place: { latitudeDeg: 51.5, longitudeDeg: -0.1 }, powerW: 30, maxC: 31 },
    ];
    const walls = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'].map((name) => ({ name, azimuthDeg: name }));
    for (const [k, row] of rowsOf(results()).entries()) {
      const { place, powerW, maxC } = sites[k] as (typeof sites)[number];
      const climate = { designDay: { date: '2026-07-21', maxC } };
      const box = { widthM: 0.3, heightM: 0.35, depthM: 0.12, powerW };
      const ranking = rankWalls(parseSite({ place, climate, box, walls }));
      for (const { name, day } of ranking.walls) {
        expect(Number(row[`peak_inside_c_${name}`])).toBe(day.peakInsideAirC);
        expect(Number(row[`margin_k_${name}`])).toBe(decidingMarginK(day));
      }
      expect(row['best_wall']).toBe(ranking.best);
      expect(row['kit'] === 'standard').toBe(ranking.withinLimits);
      const inside = ranking.walls.filter(({ day }) => decidingMarginK(day) >= 0).length;
      expect(Number(row['inside_share'])).toBe(inside / 8);
    }
  });

  test('are those of plain numbers where a place is written with units, and equal the ranking', async () => {
    const rows = '35.2,-106.6,2400,N\n35.2 deg,-106.6 deg,2400 m,N\n-35.2°,18,7874 ft,N\n';
    await screened(folder, `lat,lon,altitude,bearings\n${rows}`);
    const [plain, units, south] = rowsOf(results());
    const told = (row: Record<string, string> | undefined) => Object.entries(row ?? {}).slice(5);
    expect(told(units)).toEqual(told(plain));
    const { day } = assumedClimate({ latitudeDeg: -35.2, altitudeM: 2399.9952 });
    const place = { latitudeDeg: '-35.2°', longitudeDeg: 18, altitudeM: '7874 ft' };
    const box = { widthM: 0.3, heightM: 0.35, depthM: 0.12, powerW: 15 };
    const walls = [{ name: 'N', azimuthDeg: 'N' }];
    const ranking = rankWalls(parseSite({ place, climate: { designDay: { ...day } }, box, walls }));
    expect(Number(south?.['best_peak_inside_c'])).toBe(ranking.walls[0]?.day.peakInsideAirC);
  });

  test('keep every column and every row, whatever it is called twice', async () => {
    const table = 'id;lat;lon;maxC;kit\n7;33;-113;40;=1+1\n7;33;-113;40;-3.50\n7;34;-113;40;"+a;b"\n';
    await screened(folder, table);
    const rows = rowsOf(results(), ';');
    expect(rows.map((row) => [row['row'], row['id'], row['input_kit']])).toEqual([
      ['2', '7', "'=1+1"],
      ['3', '7', '-3.50'],
      ['4', '7', "'+a;b"],
    ]);
    expect(rows[0]?.['best_margin_k']).toBe(rows[1]?.['best_margin_k']);
  });

  test('keep columns that are called like a result, like one told apart, or not at all', async () => {
    const table = 'row,input_row,walls2,,column_4,lat,lon,walls\nR,IR,W,E,C4,33.2,-113.4,brick\n';
    const columns = { latitude: 5, longitude: 6 };
    await screened(folder, table, { columns });
    const names = (results().split('\n')[0] ?? '').split(',');
    expect(new Set(names).size).toBe(names.length);
    const given = { input_row: 'IR', input_row_2: 'R', walls2: 'W', column_4_2: 'E', column_4: 'C4' };
    expect(rowsOf(results())).toMatchObject([{ row: '2', ...given, walls: 'brick' }]);
    const to = join(folder, 'results.geojson');
    await screened(folder, table, { columns, format: 'geojson', out: to });
    const { properties } = JSON.parse(readFileSync(to, 'utf8')).features[0];
    expect(properties).toMatchObject({ row: 2, ...given, input_walls: 'brick' });
    expect(properties.walls).toHaveLength(8);
  });

  test('can be screened again and again', async () => {
    let table = 'id,lat,lon,altitude,walls,kit,\n7,33.2 deg,-113.4 deg,330 m,-8 98,own,=x\n';
    const told: unknown[] = [];
    for (let round = 0; round < 3; round++) {
      await screened(folder, table);
      expect(rejects()).toEqual([]);
      table = results();
      const names = (table.split('\n')[0] ?? '').split(',');
      expect(new Set(names).size).toBe(names.length);
      const [row = {}] = rowsOf(table);
      told.push([row['best_wall'], row['best_margin_k'], row['altitude_used_m'], row['input_kit'], row['column_7']]);
    }
    expect(told[2]).toEqual(told[0]);
    expect(told[1]).toEqual(told[0]);
  });

  test('one per cent of garbage in three thousand rows costs only itself', async () => {
    // A few addresses over and over, which are computed once each.
    const garbage = ['n/a,-113,35', '33.1,,35', '33.1,-113', '"33.1,-113,35', '120,-33,35', '33.1,-113,"hot, very"'];
    const lines = Array.from({ length: 3000 }, (_, k) =>
      k % 100 === 99 ? garbage[Math.floor(k / 100) % garbage.length] : `${33 + (k % 6) / 10},-113,35`,
    );
    const { tally } = await screened(folder, `lat,lon,maxC,bearings\n${lines.map((line) => `${line},N`).join('\n')}\n`);
    expect(tally).toMatchObject({ rows: 3000, screened: 2970, rejected: 30, blank: 0 });
    const rows = rowsOf(results()).map((row) => Number(row['row']));
    const refused = new Set(rejects().map((row) => Number(row['row'])));
    expect([...rows, ...refused].sort((a, b) => a - b)).toEqual(Array.from({ length: 3000 }, (_, k) => k + 2));
    expect(rows).toEqual([...rows].sort((a, b) => a - b));
    expect(rejects()[0]).toMatchObject({ row: '101', column: 'lat', value: 'n/a' });
    expect(Object.values(tally.reasons).reduce((sum, n) => sum + n, 0)).toBe(30);
  });

  test('of no rows are a header', async () => {
    const { tally } = await screened(folder, 'lat,lon\n');
    expect(tally.rows).toBe(0);
    expect(results().split('\n')[0]).toMatch(/^row,lat,lon,best_wall,/);
    expect(rowsOf(results())).toEqual([]);
  });

  test('as GeoJSON are features with their numbers', async () => {
    const to = join(folder, 'results.geojson');
    await screened(folder, `${manyRows(24, 9)}\n`, { format: 'geojson', out: to });
    const { type, features, assumptions } = JSON.parse(readFileSync(to, 'utf8'));
    expect(assumptions).toEqual([
      expect.stringContaining('A clear design day'),
      expect.stringContaining('300 mm by 350 mm by 120 mm'),
    ]);
    expect(type).toBe('FeatureCollection');
    expect(features).toHaveLength(22);
    expect(features[0]).toMatchObject({
      type: 'Feature',
      id: 2,
      geometry: { type: 'Point', coordinates: [-113.4, 33] },
    });
    expect(features[0].properties.walls[0].marginK).toBe(features[0].properties.best_margin_k);
    const none = join(folder, 'none.geojson');
    await screened(folder, 'lat,lon\n', { format: 'geojson', out: none });
    expect(JSON.parse(readFileSync(none, 'utf8')).features).toEqual([]);
  });

  test('say which remedy suffices and what to bring', async () => {
    await screened(
      folder,
      'lat,lon,bearings,maxC,power,finish,limit\n33,-113,W,46,14,dark grey,72\n33,-113,W,46,400,dark grey,65\n',
    );
    const [mended, lost] = rowsOf(results());
    expect(Number(mended?.['best_margin_k'])).toBeLessThan(0);
    expect(mended?.['kit']).toBe('light finish');
    expect(Number(mended?.['remedy_margin_k'])).toBeGreaterThanOrEqual(0);
    expect(mended?.['own_walls']).toMatch(/^W: [\d.]+\/-[\d.]+$/);
    expect(lost).toMatchObject({ kit: 'no wall', remedy: '' });
  });
});

describe('a run', () => {
  test('that was stopped goes on and ends the same', async () => {
    const table = manyRows(56, 13);
    await screened(folder, table);
    const whole = [results(), readFileSync(rejectsPath, 'utf8')];
    rmSync(out);
    for (const rows of [16, 32]) {
      const stop = new AbortController();
      const options = {
        signal: stop.signal,
        onProgress: ({ tally }: { tally: { rows: number } }) => tally.rows >= rows && stop.abort(),
      };
      await expect(screened(folder, table, { unfinished: 'resume', options })).rejects.toThrow(ScreeningStopped);
      expect(existsSync(out)).toBe(false);
    }
    const { resumedAt, tally } = await screened(folder, table, { unfinished: 'resume' });
    expect(resumedAt).toBeGreaterThanOrEqual(16);
    expect(tally.rows).toBe(56);
    expect([results(), readFileSync(rejectsPath, 'utf8')]).toEqual(whole);
    expect(existsSync(`${out}.unfinished`)).toBe(false);
  });

  test('goes on past a line that is too long for a row, and ends the same', async () => {
    const long = `${'x'.repeat(400_000)},33,-113.4,0,35,n`;
    const [, ...more] = manyRows(24).split(/\n(?=place)/);
    const table = [...manyRows(15).split(/\n(?=place)/), long, ...more].join('\n');
    const { tally } = await screened(folder, table);
    expect(tally).toMatchObject({ rows: 40, screened: 39, rejected: 1 });
    expect(rejects()).toMatchObject([{ row: '17', reason: 'the line is too long' }]);
    expect(rowsOf(results()).map(({ row }) => row)).toContain('18');
    const whole = [results(), readFileSync(rejectsPath, 'utf8')];
    rmSync(out);
    const stop = new AbortController();
    const onProgress = ({ tally }: { tally: { rows: number } }) => tally.rows >= 16 && stop.abort();
    const options = { signal: stop.signal, onProgress };
    await expect(screened(folder, table, { options })).rejects.toThrow(ScreeningStopped);
    await screened(folder, table, { unfinished: 'resume' });
    expect([results(), readFileSync(rejectsPath, 'utf8')]).toEqual(whole);
  });

  test('is not overwritten, goes on with the same input only, and tells damage', async () => {
    const stopAtOnce = { signal: AbortSignal.abort() };
    await expect(screened(folder, manyRows(20), { options: stopAtOnce })).rejects.toThrow(ScreeningStopped);
    await expect(screened(folder, manyRows(20))).rejects.toThrow(/--resume goes on with it, --restart/);
    await expect(screened(folder, manyRows(21), { unfinished: 'resume' })).rejects.toThrow(
      /because the table or grid changed/,
    );
    await expect(
      screened(folder, manyRows(20), { unfinished: 'resume', climate: { stations: [], named: 'dry-basin' } }),
    ).rejects.toThrow(/because the climate changed/);
    truncateSync(join(`${out}.unfinished`, 'results.part'), 3);
    await expect(screened(folder, manyRows(20), { unfinished: 'resume' })).rejects.toThrow(/missing or cut short/);
    const { tally } = await screened(folder, manyRows(20), { unfinished: 'restart' });
    expect(tally.screened).toBe(20);
  });
});
