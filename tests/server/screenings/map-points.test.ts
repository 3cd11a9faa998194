import fc from 'fast-check';
import { expect, test } from 'vitest';
import { worstOfCells } from '../../../server/screenings/map-points.ts';

const point = fc.record({
  latitude: fc.double({ min: -90, max: 90, noNaN: true }),
  longitude: fc.double({ min: -180, max: 180, noNaN: true }),
  margin: fc.option(fc.double({ min: -40, max: 40, noNaN: true })),
});

const worth = ({ margin }: { margin: number | null }) => margin ?? Number.NEGATIVE_INFINITY;

test('few enough are left, each no better than any other of its cell, and the worst of all is among them', () => {
  fc.assert(
    fc.property(fc.array(point, { minLength: 1, maxLength: 300 }), fc.integer({ min: 9, max: 60 }), (given, most) => {
      const points = given.map((one, row) => ({ ...one, row, kit: 0 }));
      const cells = worstOfCells(most);
      for (const one of points) cells.add(one);
      const left = cells.points();
      const size = cells.sizeDeg();
      const cellOf = ({ latitude, longitude }: (typeof points)[number]) =>
        `${Math.floor(latitude / size)} ${Math.floor(longitude / size)}`;
      expect(left.length).toBeLessThanOrEqual(most);
      const byCell = new Map(left.map((one) => [cellOf(one), one]));
      expect(byCell.size).toBe(left.length);
      for (const one of points) {
        const kept = byCell.get(cellOf(one));
        expect(kept && worth(kept) <= worth(one)).toBe(true);
      }
      expect(left.map(({ row }) => row)).toEqual(left.map(({ row }) => row).sort((a, b) => a - b));
    }),
  );
});

test('cells grow no more than they must', () => {
  const cells = worstOfCells(10);
  for (let row = 0; row < 1000; row++) {
    cells.add({ row, latitude: row / 1000, longitude: 0, margin: row % 7, kit: 0 });
  }
  expect(cells.points().length).toBeGreaterThan(4);
});
