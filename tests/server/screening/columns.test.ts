import { expect, test } from 'vitest';
import { matchColumns, readColumnOption } from '../../../server/screening/columns.ts';

const matched = (text: string) => matchColumns(['lat', 'lon', 'Watts'], readColumnOption(text));

test('a column stands for one field only, however its name is written', () => {
  expect(() => matched('latitude=lat,longitude=lat')).toThrow(
    '--columns longitude=lat: column "lat" stands for latitude already',
  );
  expect(() => matched('power=Watts,limit=watts')).toThrow(
    '--columns limit=watts: column "watts" stands for power already',
  );
});

test("a name without end is nobody's, at once", () => {
  expect(matchColumns(['('.repeat(200_000), 'lat', 'lon'])).toEqual({ latitude: 1, longitude: 2 });
});

test('columns may change places', () => {
  expect(matched('latitude=lon,longitude=lat')).toEqual({ latitude: 1, longitude: 0, power: 2 });
});

test('what goes with a design day is passed through where the table has no highest temperature of one', () => {
  expect(matchColumns(['lat', 'lon', 'date', 'wind', 'range'])).toEqual({ latitude: 0, longitude: 1 });
  expect(matchColumns(['lat', 'lon', 'date', 'maxC'])).toEqual({ latitude: 0, longitude: 1, date: 2, designMax: 3 });
  expect(matchColumns(['lat', 'lon', 'date'], { date: 'date' })).toEqual({ latitude: 0, longitude: 1, date: 2 });
});
