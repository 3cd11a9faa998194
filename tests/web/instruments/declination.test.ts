import { describe, expect, test } from 'vitest';
import { conversionText, declinationAt, trueBearing } from '../../../web/site/instruments/declination.ts';

const at = (latitudeDeg: number, longitudeDeg: number, altitudeM = 0) => ({ latitudeDeg, longitudeDeg, altitudeM });

describe('the declination', () => {
  // The test values of the World Magnetic Model 2025 (NOAA/NCEI), as the package carries them in test/values.csv.
  test.each([
    [at(43, 93, 65_000), '2025-01-01T00:00Z', 0.5],
    [at(-33, 109, 51_000), '2025-01-01T00:00Z', -5.49],
    [at(33, -118, 44_000), '2025-07-02T12:00Z', 11.1],
    [at(-66, 17, 8000), '2025-07-02T12:00Z', -33.14],
  ])('at %o on %s is %s degrees', async (place, date, degrees) => {
    const { declinationDeg, origin } = await declinationAt(place, new Date(date));
    expect(Math.abs(declinationDeg - degrees)).toBeLessThan(0.02);
    expect(origin).toBe('WMM-2025');
  });

  test('is refused where no model covers the date', async () => {
    await expect(declinationAt(at(33, -113), new Date('2031-01-01'))).rejects.toThrow(
      'does not cover the present date',
    );
    await expect(declinationAt(at(33, -113), new Date('1990-01-01'))).rejects.toThrow('true north');
  });

  test('says where a compass can hardly be relied on', async () => {
    const now = new Date('2026-06-01');
    expect((await declinationAt(at(33, -113), now)).weak).toBe(false);
    expect((await declinationAt(at(82, -100), now)).weak).toBe(true);
  });
});

describe('the conversion', () => {
  test.each([
    [10, 11.2, 21.2, 'magnetic 10°, declination +11.2°, true 21.2°'],
    [355, 11.2, 6.2, 'magnetic 355°, declination +11.2°, true 6.2°'],
    [3, -12.34, 350.7, 'magnetic 3°, declination −12.3°, true 350.7°'],
    [0, 0, 0, 'magnetic 0°, declination 0.0°, true 0°'],
    [359.98, 0, 0, 'magnetic 360°, declination 0.0°, true 0°'],
  ])('of %s with %s is %s', (magnetic, declination, bearing, text) => {
    expect(trueBearing(magnetic, declination)).toBeCloseTo(bearing, 9);
    expect(conversionText(magnetic, declination)).toBe(text);
  });

  test('has no more than a tenth of a degree, also at the end of the circle', () => {
    for (let magnetic = 0; magnetic <= 360; magnetic += 1) {
      const bearing = trueBearing(magnetic, 8.8);
      expect(String(bearing)).toMatch(/^\d{1,3}(\.\d)?$/);
      expect(bearing).toBeLessThan(360);
    }
    expect(trueBearing(359.98, 0)).toBe(0);
  });
});
