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
