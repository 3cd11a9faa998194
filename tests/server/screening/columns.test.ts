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

test('columns may change places', () => {
  expect(matched('latitude=lon,longitude=lat')).toEqual({ latitude: 1, longitude: 0, power: 2 });
});
