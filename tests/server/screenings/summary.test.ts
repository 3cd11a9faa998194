import { expect, test } from 'vitest';
import { evaluateDay, parseSite, type UnitSystem } from '../../../model/index.ts';
import { matchColumns } from '../../../server/screening/columns.ts';
import type { RowResult } from '../../../server/screening/output.ts';
import { rowSite } from '../../../server/screening/row-site.ts';
import { NO_TALLY } from '../../../server/screening/tally.ts';
import { screeningSummary } from '../../../server/screenings/summary.ts';

const record = { row: 2, line: 2, cells: ['33.2', '-113.4', '41'] };
const header = ['lat', 'lon', 'maxC'];
const obstructions = Array.from({ length: 40 }, (_, k) => ({
  ...{ kind: 'block', rightM: 3 * k - 60, outM: 6 + k, widthM: 2, depthM: 2, heightM: 4 },
}));
const settings = { header, columns: matchColumns(header), base: { wall: { obstructions } }, climate: { stations: [] } };
const row = { record } as unknown as RowResult;
const summary = (units?: UnitSystem) => screeningSummary(NO_TALLY, settings, { row, units });

test.each(['metric', 'us'] as const)(
  'the example is filled in with what its design day rests on, in %s units',
  (units) => {
    const site = parseSite(rowSite(record, settings).input);
    const { assumptions } = evaluateDay(site, site.walls[0]?.name ?? '', { units });
    expect(summary(units).example).toEqual({
      row: 2,
      assumptions: assumptions.filter(({ subject }) => subject !== 'climate'),
    });
  },
);

test('nobody waits for a day of many obstructions to be computed for it', () => {
  const took = (work: () => unknown) => {
    const start = performance.now();
    work();
    return performance.now() - start;
  };
  const site = parseSite(rowSite(record, settings).input);
  // Once, so that neither is charged with what loads at first use.
  summary();
  const day = took(() => evaluateDay(site, site.walls[0]?.name ?? ''));
  expect(took(summary)).toBeLessThan(day / 5);
});

const both = ['lat', 'lon', 'climate', 'designMax'];
const plainSettings = { header: both, columns: matchColumns(both), base: {}, climate: { stations: [] } };

function summaryWith(cells: string[]) {
  const wall = { name: 'N', azimuthDeg: 0, peakInsideAirC: 60, marginK: 5 };
  const row: RowResult = {
    record: { row: 2, line: 2, cells },
    site: { compass: true, climate: { source: 'columns', text: 'columns of the row', distanceKm: null } },
    place: { latitudeDeg: 33, longitudeDeg: -113, altitudeM: 0 },
    result: { walls: [wall], best: wall, insideShare: 1, remedy: null, kit: 'standard' },
  };
  return screeningSummary({ ...NO_TALLY, rows: 1, screened: 1, margins: { 5: 1 } }, plainSettings, { row });
}

test('a summary shows what a row is filled in with', () => {
  expect(summaryWith(['33', '-113', '', '45']).example?.row).toBe(2);
});

test('a row that a former version took and this one refuses is no example, and the counts are told', () => {
  const { example, counts } = summaryWith(['33', '-113', 'high-plateau', '45']);
  expect(example).toBeNull();
  expect(counts).toMatchObject({ addresses: 1, insideLimit: 1 });
});
