import { expect, test } from 'vitest';
import { compareYears, evaluateYear, syntheticYear, versusBest } from '../../../model/index.ts';
import { siteWith } from '../sites.ts';

const walls = [
  { name: 'north', azimuthDeg: 0 },
  { name: 'west', azimuthDeg: 270 },
];
const site = siteWith({ walls });
const weather = syntheticYear(site);

test('each wall has the year that it has alone; the slowest to age is the measure of the others', () => {
  const { bestWall, walls: compared } = compareYears(site, weather);
  expect(bestWall).toBe('north');
  for (const { ageingVersusBest, ...year } of compared) {
    const alone = evaluateYear(site, year.wall, weather);
    expect(year).toEqual(alone);
    expect(ageingVersusBest).toBeCloseTo(alone.ageingAgainst40C / (compared[0]?.ageingAgainst40C as number), 12);
  }
  expect(compared[0]?.ageingVersusBest).toBe(1);
  // Full shade ages a box more slowly than any wall in the sun.
  for (const { ageingFactor } of compared) expect(ageingFactor).toBeGreaterThan(1);
});

test('of equal walls the first is the best, and of none there is no best', () => {
  const [north] = compareYears(site, weather).walls;
  if (north === undefined) throw new Error('no wall');
  expect(versusBest([north, { ...north, wall: 'other' }]).bestWall).toBe('north');
  expect(() => versusBest([])).toThrow(RangeError);
});
