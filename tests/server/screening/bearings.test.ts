import { expect, test } from 'vitest';
import { bearingsIn } from '../../../server/screening/bearings.ts';

test.each([
  ['8 98 SW', ['8', '98', 'SW']],
  ['8;98|188, 278', ['8', '98', '188', '278']],
  ['8 deg 98 deg', ['8 deg', '98 deg']],
  ['8deg; 98° SW 1.5 rad', ['8deg', '98°', 'SW', '1.5 rad']],
  ['8 ° 98', ['8 °', '98']],
  // A point of the compass is no unit, and what is neither stays by itself for the message.
  ['8 S', ['8', 'S']],
  ['N deg', ['N', 'deg']],
  ['8 m', ['8', 'm']],
  ['deg', ['deg']],
  [' ; ', []],
])('%j holds %j', (cell, bearings) => {
  expect(bearingsIn(cell)).toEqual(bearings);
});
