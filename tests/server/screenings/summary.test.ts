import { expect, test } from 'vitest';
import { matchColumns } from '../../../server/screening/columns.ts';
import type { RowResult } from '../../../server/screening/output.ts';
import { NO_TALLY } from '../../../server/screening/tally.ts';
import { screeningSummary } from '../../../server/screenings/summary.ts';

const header = ['lat', 'lon', 'climate', 'designMax'];
const settings = { header, columns: matchColumns(header), base: {}, climate: { stations: [] } };

function summaryWith(cells: string[]) {
  const wall = { name: 'N', azimuthDeg: 0, peakInsideAirC: 60, marginK: 5 };
  const row: RowResult = {
    record: { row: 2, line: 2, cells },
    site: { compass: true, climate: { source: 'columns', text: 'columns of the row', distanceKm: null } },
    place: { latitudeDeg: 33, longitudeDeg: -113, altitudeM: 0 },
    result: { walls: [wall], best: wall, insideShare: 1, remedy: null, kit: 'standard' },
  };
  return screeningSummary({ ...NO_TALLY, rows: 1, screened: 1, margins: { 5: 1 } }, settings, { row });
}

test('a summary shows what a row is filled in with', () => {
  expect(summaryWith(['33', '-113', '', '45']).example?.row).toBe(2);
});

test('a row that a former version took and this one refuses is no example, and the counts are told', () => {
  const { example, counts } = summaryWith(['33', '-113', 'high-plateau', '45']);
  expect(example).toBeNull();
  expect(counts).toMatchObject({ addresses: 1, insideLimit: 1 });
});
