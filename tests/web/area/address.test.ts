import { expect, test } from 'vitest';
import { screeningAddress, screeningAt } from '../../../web/area/address.ts';

test('an address leads to its screening and back', () => {
  expect(screeningAt(screeningAddress('0b5c-1'))).toBe('0b5c-1');
  for (const other of ['#/area', '#/area/', '#/area/a/b', '#/site', '#/area/<x>'])
    expect(screeningAt(other)).toBeNull();
});
