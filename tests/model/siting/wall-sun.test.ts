/** The sun on the faces of a box, from the functions that the reference cases check, piece by piece. */
import { describe, expect, test } from 'vitest';
import { clearSky, FACES, irradianceOnPlane, type Site } from '../../../model/index.ts';
import { siteDay } from '../../../model/siting/design-day.ts';
import { prepareWallShade } from '../../../model/siting/wall-shade.ts';
import { wallSun } from '../../../model/siting/wall-sun.ts';
import { sinDeg } from '../../../model/solar/angles.ts';
import { siteWith, wallFacing } from '../sites.ts';

const firstWall = (site: Site) => site.walls[0] as Site['walls'][number];

function sunOf(site: Site, wallAbsorptance = firstWall(site).solarAbsorptance) {
  const day = siteDay(site);
  const shade = prepareWallShade(site, firstWall(site), day);
  const { steps } = day;
  return { shade, steps, sun: wallSun(shade, steps, { albedo: site.ground.albedo, wallAbsorptance }) };
}

describe.each([
  ['south wall at sea level', { altitudeM: 0 }, 180, 2.5],
  ['west wall at 2600 m, hazy', { altitudeM: 2600, latitudeDeg: 20 }, 270, 5],
])('%s', (_, place, azimuthDeg, linkeTurbidity) => {
  const designDay = { date: '2026-05-10', maxC: 30, dailyRangeK: 10, dewPointC: 5, linkeTurbidity };
  const site = siteWith({ place, climate: { designDay }, walls: wallFacing(azimuthDeg) });
  const { shade, steps, sun } = sunOf(site);

  test('the front gets the beam, glow, dome and horizon band of an upright plane under the clear sky of the place', () => {
    let lit = 0;
    steps.forEach(({ utc, sun: position }, k) => {
      const { altitudeM } = site.place;
      const sky = clearSky({ utc, elevationDeg: position.elevationDeg, altitudeM, linkeTurbidity });
      const plane = irradianceOnPlane({ utc, sun: position, ...sky, tiltDeg: 90, azimuthDeg, albedo: 0.2 });
      // Near the horizon Perez's parts are of a size with their differences from one day to the next.
      if (position.elevationDeg < 3) return;
      lit += 1;
      const front = sun.faces.front;
      expect(Math.abs((front.beam[k] as number) - plane.beam - plane.circumsolar)).toBeLessThan(2);
      expect(Math.abs((front.diffuse[k] as number) - Math.max(0, plane.isotropic + plane.horizon))).toBeLessThan(2);
    });
    expect(lit).toBeGreaterThan(100);
  });

  test('the top gets level beam and the dome that the wall leaves open', () => {
    let grazing = 0;
    steps.forEach(({ sun: position, weather, sky }, k) => {
      if (position.elevationDeg < 3) return;
      const seen = shade.faces.top.view.factors.sky;
      expect(sun.faces.top.diffuse[k]).toBeCloseTo(sky.isotropic * seen, 6);
      const level = (weather.dni + sky.circumsolarNormal) * sinDeg(position.elevationDeg);
      const beam = sun.faces.top.beam[k] as number;
      const share = beam / level;
      // Sun that grazes the top of the wall reaches a part of the lid.
      if (share > 1e-9 && share < 1 - 1e-9) grazing += 1;
      expect(share).toBeLessThan(1 + 1e-9);
    });
    expect(grazing).toBeLessThan(0.1 * steps.length);
  });

  test('a side gets half of the horizon band and the dome of its own view', () => {
    steps.forEach(({ sky }, k) => {
      const { factors, horizonBand } = shade.faces.left.view;
      const expected = Math.max(0, sky.isotropic * factors.sky + sky.horizon * horizonBand);
      expect(sun.faces.left.diffuse[k]).toBeCloseTo(expected, 6);
      expect(horizonBand).toBeCloseTo(0.5, 2);
      expect(factors.sky).toBeCloseTo(0.25, 1);
    });
  });

  test('a white wall throws (1 - alpha) of its sun onto the faces that see it, none onto the front', () => {
    const white = sunOf(site, 0.1).sun;
    const black = sunOf(site, 1).sun;
    for (let k = 0; k < steps.length; k += 12) {
      const wall = white.wall.total[k] as number;
      for (const face of shade.open) {
        const more = (white.faces[face].reflected[k] as number) - (black.faces[face].reflected[k] as number);
        expect(more).toBeCloseTo(0.9 * wall * shade.faces[face].view.factors.wall, 6);
      }
    }
    expect(shade.faces.front.view.factors.wall).toBe(0);
  });
});

test('the wall beside the box gets the sun that the front of the box gets, whatever stands far off', () => {
  const obstructions = [{ kind: 'block', rightM: 300, outM: 300, widthM: 1, depthM: 1, heightM: 1 }];
  const { sun } = sunOf(siteWith({ walls: wallFacing(243, { obstructions }) }));
  const sum = (values: Float64Array) => values.reduce((a, b) => a + b, 0);
  expect(sum(sun.wall.beam)).toBeCloseTo(sum(sun.faces.front.beam), 6);
});

describe('the ground', () => {
  test('in the open gets the global irradiance', () => {
    const { steps, sun } = sunOf(siteWith({ walls: wallFacing(180, { heightM: 2 }) }));
    const noon = steps.findIndex(({ sun: s }) => s.elevationDeg === Math.max(...steps.map((x) => x.sun.elevationDeg)));
    const ghi = steps[noon]?.weather.ghi as number;
    expect(sun.ground[noon]).toBeGreaterThan(0.93 * ghi);
    expect(sun.ground[noon]).toBeLessThanOrEqual(ghi + 1);
  });

  test('without any sky gets nothing, and neither does the box', () => {
    const { sun } = sunOf(siteWith({ walls: wallFacing(180, { horizon: [[0, 90]] }) }));
    for (const face of FACES) expect(Math.max(...sun.faces[face].total)).toBe(0);
    expect(Math.max(...sun.ground)).toBe(0);
  });
});

describe('the standard cycles stay possible wherever they are laid', () => {
  test.each([
    [33, '2026-12-21'],
    [0, '2026-06-21'],
    [60, '2026-12-21'],
    [-60, '2026-06-21'],
    [80, '2026-12-21'],
    [80, '2026-06-21'],
    [45, '2026-03-20'],
  ])('latitude %i on %s: no face gets more than the sun sends', (latitudeDeg, date) => {
    for (const azimuthDeg of [0, 90, 180, 270]) {
      const climate = { cycle: 'mil-std-810h-a1', date };
      const { steps, sun } = sunOf(siteWith({ climate, place: { latitudeDeg }, walls: wallFacing(azimuthDeg) }));
      for (const face of FACES) expect(Math.max(...sun.faces[face].total)).toBeLessThan(1400);
      for (const { weather, sun: position } of steps) {
        if (position.elevationDeg <= 0) expect(weather.ghi).toBe(0);
        expect(weather.dhi).toBeGreaterThanOrEqual(0);
        expect(weather.dni).toBeLessThan(1100);
      }
    }
  });

  test('at the latitude that they were made for they are as tabulated', () => {
    const { steps } = sunOf(siteWith({ climate: { cycle: 'mil-std-810h-a1' } }));
    expect(Math.max(...steps.map(({ weather }) => weather.ghi))).toBeCloseTo(1120, 0);
  });
});
