/**
 * The standard's own induced condition. MIL-STD-810 Method 501 and AR 70-38 give 71 degC for unventilated enclosures in
 * the sun in category A1 (value from memory), while the open air reaches 49 degC. The region of 65 to 85 degC is a
 * judgement: the standard says neither how dark nor how calm its enclosures were.
 */
import { describe, expect, test } from 'vitest';
import { rankWalls } from '../../model/index.ts';
import { siteWith } from '../model/sites.ts';

function hottestWall(solarAbsorptance: number) {
  const walls = [0, 45, 90, 135, 180, 225, 270, 315].map((azimuthDeg) => ({ name: `w${azimuthDeg}`, azimuthDeg }));
  const climate = { cycle: 'mil-std-810h-a1', windMs: 0 };
  const ranking = rankWalls(siteWith({ climate, walls, box: { solarAbsorptance, powerW: 0 } }));
  return ranking.walls.reduce((a, b) => (b.day.peakInsideAirC > a.day.peakInsideAirC ? b : a));
}

describe('cycle A1: 1120 W/m2, 49 degC, calm air, closed box without dissipation on its sunniest wall', () => {
  const dark = hottestWall(0.9);
  const white = hottestWall(0.2);

  test('a dark one comes out in the region of 71 degC', () => {
    expect(dark.day.peakOutsideAirC).toBeCloseTo(49, 1);
    expect(dark.day.peakInsideAirC).toBeGreaterThan(65);
    expect(dark.day.peakInsideAirC).toBeLessThan(85);
  });

  test('between 13 and 18 h', () => {
    // Phoenix time is UTC-7 all year.
    const hour = ((dark.day.peakAtUtc.getTime() - 7 * 3_600_000) % 86_400_000) / 3_600_000;
    expect(hour).toBeGreaterThan(13);
    expect(hour).toBeLessThan(18);
  });

  test('a white one stays well below it', () => {
    expect(white.day.peakInsideAirC).toBeLessThan(dark.day.peakInsideAirC - 12);
    expect(white.day.peakInsideAirC).toBeGreaterThan(white.day.peakOutsideAirC);
  });
});
