/** Wind by its direction and by a wall's own shelter. */
import { expect, test } from 'vitest';
import { evaluateDay } from '../../../model/index.ts';
import { boxShelter, wallShelter } from '../../../model/siting/wind-shelter.ts';
import { filmAirTable } from '../../../model/thermal/film-air.ts';
import { wallCoefficient } from '../../../model/thermal/outdoor-surface.ts';
import { siteWith, wallFacing } from '../sites.ts';

const climate = (windFromDeg?: number) => ({
  designDay: { date: '2026-07-05', maxC: 40, dailyRangeK: 14, windMs: 4 },
  ...(windFromDeg !== undefined && { windFromDeg }),
});
const site = (windFromDeg?: number, wall: object = {}, box: object = {}) =>
  siteWith({ climate: climate(windFromDeg), walls: wallFacing(270, wall), box });
const peak = (...args: Parameters<typeof site>) => evaluateDay(site(...args), 'wall').peakInsideAirC;
const shelterOf = (s: ReturnType<typeof site>) => wallShelter(s, s.walls[0] as (typeof s.walls)[number]);

test('a wall that the wind meets has all of it, one in the lee a quarter (Sparrow, Ramsey and Mass 1979: beyond 100 degrees)', () => {
  expect(shelterOf(site(270))).toBe(1);
  expect(shelterOf(site(180))).toBe(1);
  expect(shelterOf(site(10))).toBe(1);
  expect(shelterOf(site(11))).toBe(0.25);
  expect(shelterOf(site(90))).toBe(0.25);
  expect(shelterOf(site())).toBe(0.25);
});

test('in the lee the coefficient of a wall is half of that in the wind, as they measured', () => {
  const film = filmAirTable(101_325);
  const forced = (windFromDeg: number) => {
    const lengths = { heightM: 3, lengthM: 10, roughness: 1.67 };
    const wall = wallCoefficient(film, { ...lengths, windShelter: shelterOf(site(windFromDeg)) }, 101_325);
    return wall(300, 300, 5) - wall(300, 300, 0);
  };
  expect(forced(90) / forced(270)).toBeCloseTo(0.5, 9);
});

test('the box in the wind is cooler than in the lee, and the lee is what an unknown direction is taken for', () => {
  expect(peak(270)).toBeLessThan(peak(90) - 1);
  expect(peak(90)).toBe(peak());
});

test("a wall's own shelter goes before the direction", () => {
  expect(shelterOf(site(270, { windShelter: 0.1 }))).toBe(0.1);
  expect(peak(270, { windShelter: 0 })).toBeGreaterThan(peak(270) + 3);
});

test('a post stands in the free wind', () => {
  const post = site(undefined, {}, { mount: 'post' });
  expect(boxShelter(post, post.walls[0] as (typeof post.walls)[number])).toBe(1);
});
