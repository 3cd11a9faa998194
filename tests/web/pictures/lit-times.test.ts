import { expect, test } from 'vitest';
import { hiddenBy, hiderOf, litSpans } from '../../../web/site/pictures/lit-times.ts';
import { pathOf, silhouetteBetween } from './suns.ts';

const minutes = (date: Date) => date.getTime() / 60_000;

test('lit spans last from their first point to ten minutes after their last', () => {
  const path = pathOf([0, 1, 1, 0, 0.3].map((lit, k) => ({ minute: k * 10, azimuthDeg: 100 + k, lit })));
  expect(litSpans(path).map(({ from, to }) => [minutes(from), minutes(to)])).toEqual([
    [10, 30],
    [40, 50],
  ]);
  const hours = litSpans(path).reduce((sum, { from, to }) => sum + minutes(to) - minutes(from), 0) / 60;
  expect(hours).toBeCloseTo(path.litHours, 9);
});

const far = silhouetteBetween(90, 200, 50, 'skyline');
const near = silhouetteBetween(100, 120, 35, 'wall');

test('the nearer of two things hides the sun, also across north', () => {
  expect(hiderOf({ azimuthDeg: 110, elevationDeg: 30 }, [far, near])).toBe(near);
  expect(hiderOf({ azimuthDeg: 110, elevationDeg: 40 }, [far, near])).toBe(far);
  expect(hiderOf({ azimuthDeg: 110, elevationDeg: 60 }, [far, near])).toBeUndefined();
  const north = silhouetteBetween(-20, 20, 90, 'building');
  expect(hiderOf({ azimuthDeg: 350, elevationDeg: 10 }, [north])).toBe(north);
});

test('the time without sun is given to what hides it, the longest first', () => {
  const path = pathOf([
    { minute: 0, azimuthDeg: 110 },
    { minute: 10, azimuthDeg: 150 },
    { minute: 20, azimuthDeg: 160 },
    { minute: 30, azimuthDeg: 170, lit: 1 },
  ]);
  expect(hiddenBy(path, [far, near]).map(({ silhouette, hours }) => [silhouette.kind, hours])).toEqual([
    ['skyline', 1 / 3],
    ['wall', 1 / 6],
  ]);
});
