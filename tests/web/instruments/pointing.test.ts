import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type OrientationReading, pointingOf, steadyHeading } from '../../../web/site/instruments/pointing.ts';

const flat = (alpha: number | null, more: Partial<OrientationReading> = {}): OrientationReading => ({
  alpha,
  beta: 0,
  gamma: 0,
  absolute: true,
  ...more,
});

describe('the heading', () => {
  test.each([
    // Alpha counts the other way round: turned by it to the left.
    [0, 0],
    [90, 270],
    [180, 180],
    [270, 90],
    [359, 1],
  ])('of a flat device with alpha %s is %s', (alpha, heading) => {
    expect(pointingOf(flat(alpha), 0).headingDeg).toBeCloseTo(heading, 6);
  });

  test('zero is north, and not nothing', () => {
    expect(pointingOf(flat(0), 0).headingDeg).toBe(0);
    expect(pointingOf(flat(null, { webkitCompassHeading: 0, absolute: false }), 0).headingDeg).toBe(0);
  });

  test('of WebKit goes before alpha, and its negative number is none', () => {
    expect(pointingOf(flat(90, { webkitCompassHeading: 33, absolute: false }), 0).headingDeg).toBe(33);
    expect(pointingOf(flat(90, { webkitCompassHeading: -1, absolute: false }), 0).headingDeg).toBeNull();
  });

  test('is none where alpha counts from anywhere, or is missing', () => {
    expect(pointingOf(flat(90, { absolute: false }), 0).headingDeg).toBeNull();
    expect(pointingOf(flat(null), 0).headingDeg).toBeNull();
    expect(pointingOf(flat(Number.NaN), 0).headingDeg).toBeNull();
  });

  test.each([90, 180, 270])('follows a screen that is turned by %s degrees', (angle) => {
    // The right edge of a device whose top looks north looks east; turned by 90 degrees, that edge is up.
    expect(pointingOf(flat(0), angle).headingDeg).toBeCloseTo(angle, 6);
    expect(pointingOf(flat(null, { webkitCompassHeading: 350 }), angle).headingDeg).toBe((350 + angle) % 360);
  });

  test('does not depend on how far the device is rolled or its top is raised', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 359.9, noNaN: true }),
        fc.integer({ min: -80, max: 80 }),
        fc.integer({ min: -80, max: 80 }),
        (alpha, beta, gamma) => {
          const { headingDeg } = pointingOf(flat(alpha, { beta, gamma }), 0);
          const off = Math.abs((headingDeg ?? Number.NaN) - ((360 - alpha) % 360));
          expect(Math.min(off, 360 - off)).toBeLessThan(1e-6);
        },
      ),
    );
  });

  test('is none straight up', () => {
    expect(pointingOf(flat(10, { beta: 90 }), 0).headingDeg).toBeNull();
  });
});

describe('the elevation', () => {
  test.each([
    [0, 0, 0, 0],
    [35, 0, 0, 35],
    [-20, 0, 0, -20],
    // In landscape the right edge is up, which gamma lowers.
    [0, -35, 90, 35],
    [0, 35, 270, 35],
  ])('with beta %s, gamma %s and a screen turned by %s is %s', (beta, gamma, angle, elevation) => {
    expect(pointingOf(flat(123, { beta, gamma }), angle).elevationDeg).toBeCloseTo(elevation, 6);
  });

  test('needs no north', () => {
    expect(pointingOf(flat(null, { beta: 12, absolute: false }), 0)).toEqual({
      headingDeg: null,
      elevationDeg: expect.closeTo(12, 6),
    });
    expect(pointingOf(flat(0, { beta: null }), 0).elevationDeg).toBeNull();
  });
});

test('headings are averaged round the north point', () => {
  expect(steadyHeading([])).toBeNull();
  expect(steadyHeading([350, 10, 350, 10])).toSatisfy((mean: number) => mean < 10 || mean > 350);
  expect(steadyHeading([90, 90])).toBeCloseTo(90, 6);
});
