import { expect, test } from 'vitest';
import { placeFrom, whyNot } from '../../../web/site/instruments/device-place.ts';

const read = { latitude: 33.123456789, longitude: -113.9, altitude: null, altitudeAccuracy: null, accuracy: 12 };

test('a position is rounded to the metre; an altitude that is unsure is left out', () => {
  expect(placeFrom(read)).toEqual({ latitudeDeg: 33.12346, longitudeDeg: -113.9, altitudeM: null, accuracyM: 12 });
  expect(placeFrom({ ...read, altitude: 330.4, altitudeAccuracy: 8 }).altitudeM).toBe(330);
  expect(placeFrom({ ...read, altitude: 0, altitudeAccuracy: null }).altitudeM).toBe(0);
  expect(placeFrom({ ...read, altitude: 330, altitudeAccuracy: 500 }).altitudeM).toBeNull();
});

test('each refusal says what to do instead', () => {
  for (const code of [1, 2, 3, 99]) expect(whyNot(code)).toMatch(/type the coordinates\.$/);
  expect(new Set([1, 2, 3].map(whyNot)).size).toBe(3);
});
