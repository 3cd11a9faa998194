/** What must hold of every day, whatever the numbers: signs, orders, mirrors and limits. */
import { describe, expect, test } from 'vitest';
import { type DayResult, evaluateDay, FACES, parseSite, type Site } from '../../../model/index.ts';
import { siteDay } from '../../../model/siting/design-day.ts';
import { prepareWallShade } from '../../../model/siting/wall-shade.ts';
import { wallSun } from '../../../model/siting/wall-sun.ts';
import { siteWith, wallFacing } from '../sites.ts';

const day = (site: Site): DayResult => evaluateDay(site, 'wall');
const peak = (site: Site): number => day(site).peakInsideAirC;

/** Shadow edges move over sampled points; two runs may differ by this much without a cause, K. */
const SAMPLING_K = 0.1;

function expectFinite(result: DayResult): void {
  const series = [result.insideAirC, result.electronicsC, ...FACES.map((face) => result.skinC[face])];
  const sun = FACES.flatMap((face) => result.faceIrradianceWm2[face]);
  for (const value of series.flat()) expect(Number.isFinite(value)).toBe(true);
  for (const value of sun) expect(value).toBeGreaterThanOrEqual(0);
  expect(Math.abs(result.energyClosure)).toBeLessThan(0.001);
  const ledger = Object.values(result.ledgerAtPeak);
  const incoming = ledger.reduce((total, watts) => total + Math.max(0, watts), 0);
  expect(Math.abs(ledger.reduce((total, watts) => total + watts, 0))).toBeLessThan(0.001 * incoming + 1e-6);
}

describe('order', () => {
  test.each([0, 90, 180, 270])('darker is hotter on a wall that faces %i degrees', (azimuthDeg) => {
    const peaks = [0.1, 0.3, 0.5, 0.7, 0.9].map((solarAbsorptance) =>
      peak(siteWith({ walls: wallFacing(azimuthDeg), box: { solarAbsorptance } })),
    );
    expect(peaks).toEqual([...peaks].sort((a, b) => a - b));
    expect((peaks[4] as number) - (peaks[0] as number)).toBeGreaterThan(3);
  });

  test('more watts are hotter', () => {
    const peaks = [0, 5, 10, 20, 40].map((powerW) => peak(siteWith({ box: { powerW } })));
    for (let i = 1; i < peaks.length; i++) expect(peaks[i]).toBeGreaterThan((peaks[i - 1] as number) + 0.5);
  });

  test.each([
    ['dry-basin', 33, 0],
    ['dry-basin', 33, 180],
    ['dry-basin', 33, 270],
    ['humid-coast', 10, 0],
    ['humid-coast', 10, 90],
    ['temperate-maritime', 52, 180],
    ['temperate-maritime', 52, 315],
    ['high-plateau', 20, 225],
  ])('more eave is not hotter: %s, latitude %i, wall %i', (sample, latitudeDeg, azimuthDeg) => {
    const peaks = [0, 0.3, 0.6, 1, 1.5, 2.2].map((depthM) => {
      const walls = wallFacing(azimuthDeg, { eave: { depthM, heightAboveBoxM: 1 } });
      return peak(siteWith({ climate: { sample }, place: { latitudeDeg }, walls }));
    });
    for (let i = 1; i < peaks.length; i++) expect(peaks[i]).toBeLessThan((peaks[i - 1] as number) + SAMPLING_K);
    expect(peaks[5]).toBeLessThan((peaks[0] as number) - 0.5);
  });

  test('a stronger wind is cooler, thinner air is hotter at equal air temperature', () => {
    const inWind = (windMs: number) => peak(siteWith({ climate: { cycle: 'mil-std-810h-a1', windMs } }));
    expect(inWind(1)).toBeLessThan(inWind(0) - 1);
    expect(inWind(4)).toBeLessThan(inWind(1) - 2);
    const atAltitude = (altitudeM: number) =>
      day(siteWith({ climate: { cycle: 'mil-std-810h-a1', windMs: 2 }, place: { altitudeM } }));
    expect(atAltitude(3000).peakInsideAirC).toBeGreaterThan(atAltitude(0).peakInsideAirC + 0.5);
  });

  test.each(['brick', 'block', 'timber', 'stucco', 'metal', 'insulatedRender'] as const)(
    'flat on a sunny %s wall is hotter than on brackets',
    (construction) => {
      const onBrackets = (standOffM: number) =>
        peak(siteWith({ walls: wallFacing(270, { construction }), box: { standOffM } }));
      expect(onBrackets(0)).toBeGreaterThan(onBrackets(0.05) + 0.2);
    },
  );

  test('a white and a black box are equal at night and differ by many kelvins at noon', () => {
    const [white, black] = [0.15, 0.95].map((solarAbsorptance) => day(siteWith({ box: { solarAbsorptance } })));
    const at = (result: DayResult | undefined, hour: number) => result?.insideAirC[hour * 12] as number;
    expect(Math.abs(at(black, 5) - at(white, 5))).toBeLessThan(0.3);
    expect(at(black, 15) - at(white, 15)).toBeGreaterThan(8);
  });
});

describe('ground', () => {
  test('pale ground before a shaded wall throws more sun and is cooler itself', () => {
    const before = (groundAlbedo: number) => {
      const walls = wallFacing(180, { groundAlbedo, eave: { depthM: 2, heightAboveBoxM: 0.3 } });
      return day(siteWith({ walls, box: { solarAbsorptance: 0.9 } }));
    };
    const [dark, pale] = [before(0.1), before(0.5)];
    expect(pale.ledgerAtPeak.sunReflected).toBeGreaterThan(2 * dark.ledgerAtPeak.sunReflected);
    expect(pale.ledgerAtPeak.longwaveGround).toBeLessThan(dark.ledgerAtPeak.longwaveGround - 3);
  });

  test("a wall without a ground of its own has the site's", () => {
    const own = day(siteWith({ walls: wallFacing(270, { groundAlbedo: 0.45 }) }));
    const shared = day(siteWith({ ground: { albedo: 0.45 } }));
    expect(own.insideAirC).toEqual(shared.insideAirC);
  });
});

describe('mirrors', () => {
  /** Flat air: the same from morning to evening. */
  const flat = { designDay: { date: '2026-06-21', maxC: 35, dailyRangeK: 0, dewPointC: 5, windMs: 1 } };
  // At this longitude the sun crosses the meridian at 12:00 UTC on that day, to a few seconds.
  const place = { latitudeDeg: 40, longitudeDeg: 0.46, altitudeM: 0, timeZone: 'UTC' };
  const NOON = 144;

  test('the sun on an east wall in the morning is that on a west wall in the afternoon, face by face', () => {
    const east = day(siteWith({ climate: flat, place, walls: wallFacing(90) }));
    const west = day(siteWith({ climate: flat, place, walls: wallFacing(270) }));
    for (const [ofEast, ofWest] of [
      ['front', 'front'],
      ['top', 'top'],
      ['bottom', 'bottom'],
      ['left', 'right'],
      ['right', 'left'],
    ] as const) {
      for (let k = 1; k < NOON; k++) {
        const morning = east.faceIrradianceWm2[ofEast][NOON - k] as number;
        const afternoon = west.faceIrradianceWm2[ofWest][NOON + k] as number;
        expect(Math.abs(morning - afternoon), `${ofEast} ${k} steps from noon`).toBeLessThan(3);
      }
    }
    // The step of noon itself counts on one side only.
    expect(Math.abs(east.sunHours - west.sunHours)).toBeLessThan(0.1);
    // The temperatures mirror but for the heat that ground and wall store on the way: the afternoon has more of it.
    expect(west.peakInsideAirC - east.peakInsideAirC).toBeGreaterThan(0);
    expect(west.peakInsideAirC - east.peakInsideAirC).toBeLessThan(1.5);
  });

  test('under a sun that circles level all walls have the same day, hours apart', () => {
    // Near the pole in June the sun circles level: every wall has the same day, hours apart.
    const polar = { ...place, latitudeDeg: 89.9 };
    const peaks = [45, 135, 225, 315].map((azimuthDeg) =>
      peak(siteWith({ climate: flat, place: polar, walls: wallFacing(azimuthDeg) })),
    );
    expect(Math.max(...peaks) - Math.min(...peaks)).toBeLessThan(0.15);
  });

  test('the southern hemisphere mirrors the northern half a year later', () => {
    const summer = (date: string, latitudeDeg: number, azimuthDeg: number) =>
      day(
        siteWith({
          climate: { designDay: { ...flat.designDay, date } },
          place: { ...place, latitudeDeg },
          walls: wallFacing(azimuthDeg),
        }),
      );
    for (const [north, south] of [
      [180, 0],
      [270, 270],
      [0, 180],
      [225, 315],
    ] as const) {
      const a = summer('2026-03-20', 35, north);
      const b = summer('2026-09-23', -35, south);
      // The sun's distance differs by 1 % between the equinoxes.
      expect(Math.abs(a.peakInsideAirC - b.peakInsideAirC)).toBeLessThan(0.4);
    }
  });
});

describe('limits of place and time', () => {
  test.each([
    ['north pole in June', 90, 0, '2026-06-21', 'UTC'],
    ['south pole in December', -90, 0, '2026-12-21', 'UTC'],
    ['polar night', 80, 20, '2026-12-21', 'UTC'],
    ['midnight sun', 70, 25, '2026-06-21', 'Europe/Oslo'],
    ['equator at the equinox', 0, 0, '2026-03-20', 'UTC'],
    ['date line', 10, 180, '2026-03-20', 'Pacific/Fiji'],
    ['sun at the zenith', 23.44, 0, '2026-06-21', 'UTC'],
  ])('%s', (_, latitudeDeg, longitudeDeg, date, timeZone) => {
    for (const azimuthDeg of [0, 90, 180, 270]) {
      const result = day(
        siteWith({
          place: { latitudeDeg, longitudeDeg, timeZone },
          climate: { designDay: { date, maxC: 5, dailyRangeK: 6, dewPointC: -5 } },
          walls: wallFacing(azimuthDeg),
        }),
      );
      expectFinite(result);
      expect(result.stepsUtc).toHaveLength(288);
    }
  });

  test('polar night has no sun at all, the midnight sun goes all the way round', () => {
    const at = (latitudeDeg: number, date: string) =>
      day(
        siteWith({
          place: { latitudeDeg, longitudeDeg: 0, timeZone: 'UTC' },
          climate: { designDay: { date, maxC: 5, dailyRangeK: 0, dewPointC: -5 } },
          walls: wallFacing(0),
        }),
      );
    expect(at(85, '2026-12-21').sunHours).toBe(0);
    expect(Math.max(...at(85, '2026-12-21').faceIrradianceWm2.top)).toBe(0);
    expect(at(85, '2026-06-21').sunHours).toBeGreaterThan(10);
  });

  test.each([
    ['spring forward', '2026-03-29', 276],
    ['fall back', '2026-10-25', 300],
    ['an ordinary day', '2026-07-05', 288],
  ])('a day of the clock change has its own length: %s', (_, date, steps) => {
    const result = day(
      siteWith({
        place: { latitudeDeg: 48, longitudeDeg: 11, timeZone: 'Europe/Berlin' },
        climate: { designDay: { date, maxC: 20, dewPointC: 5 } },
      }),
    );
    expect(result.stepsUtc).toHaveLength(steps);
    expectFinite(result);
  });

  test('0 W, a mirror and a perfect absorber, a tiny and a huge box', () => {
    expectFinite(day(siteWith({ box: { powerW: 0 } })));
    expectFinite(day(siteWith({ box: { solarAbsorptance: 0, emittance: 0 } })));
    expectFinite(day(siteWith({ box: { solarAbsorptance: 1, emittance: 1 } })));
    const tiny = { widthM: 0.02, heightM: 0.02, depthM: 0.01, massKg: 0.05, powerW: 0.1 };
    expectFinite(day(siteWith({ box: tiny })));
    const huge = { widthM: 3, heightM: 2.5, depthM: 2, massKg: 500, powerW: 2000 };
    expectFinite(day(siteWith({ box: { ...huge, mountHeightM: 1.5 } })));
  });

  test('0 W and no sun follow the air between its lowest and highest', () => {
    const result = day(
      siteWith({
        place: { latitudeDeg: 80, longitudeDeg: 0, timeZone: 'UTC' },
        climate: { designDay: { date: '2026-12-21', maxC: -10, dailyRangeK: 10, dewPointC: -25 } },
        box: { powerW: 0 },
      }),
    );
    expect(result.peakInsideAirC).toBeLessThan(-10);
    // The sky is colder than the air: a box that gives off nothing may fall a little below it, not far.
    expect(result.lowestInsideAirC).toBeGreaterThan(-30);
  });

  test('a wall hides the sun behind it: a north wall gets none at noon in winter', () => {
    const result = day(
      siteWith({
        place: { latitudeDeg: 45, longitudeDeg: 0, timeZone: 'UTC' },
        climate: { designDay: { date: '2026-12-21', maxC: 5, dewPointC: 0 } },
        walls: wallFacing(0),
      }),
    );
    expect(result.sunHours).toBe(0);
  });
});

describe('limits of temperature refer to what they name', () => {
  const refersTo = (name: 'insideAir' | 'outsideAir' | 'componentCase') =>
    day(siteWith({ limits: { maxC: 70, minC: -20, refersTo: name } }));

  test('inside air, outside air and electronics each against their own peak', () => {
    const inside = refersTo('insideAir');
    expect(inside.marginK).toBeCloseTo(70 - inside.peakInsideAirC, 9);
    const outside = refersTo('outsideAir');
    expect(outside.marginK).toBeCloseTo(70 - outside.peakOutsideAirC, 9);
    const component = refersTo('componentCase');
    expect(component.marginK).toBeCloseTo(70 - component.peakElectronicsC, 9);
    expect(component.hoursOverLimit).toBeGreaterThan(inside.hoursOverLimit);
    expect(outside.hoursOverLimit).toBe(0);
  });

  test('hours over the limit count the steps above it', () => {
    const result = day(siteWith({ limits: { maxC: 60 } }));
    const over = result.insideAirC.filter((c) => c > 60).length / 12;
    expect(result.hoursOverLimit).toBeCloseTo(over, 9);
    expect(over).toBeGreaterThan(0);
  });

  test('hours of sun count direct sun of 120 W/m2 and more on the box', () => {
    const site = siteWith({ walls: wallFacing(180), climate: { sample: 'temperate-maritime', month: 12 } });
    const theDay = siteDay(site);
    const { steps } = theDay;
    const shade = prepareWallShade(site, site.walls[0] as Site['walls'][number], theDay);
    const sun = wallSun(shade, steps, { albedo: 0.2, wallAbsorptance: 0.7 });
    const onBox = steps.map(({ weather }, k) =>
      FACES.some((f) => (sun.faces[f].beam[k] as number) > 0) ? weather.dni : 0,
    );
    expect(day(site).sunHours).toBeCloseTo(onBox.filter((dni) => dni >= 120).length / 12, 9);
    // Some of it is weaker than that.
    expect(onBox.filter((dni) => dni > 0).length).toBeGreaterThan(onBox.filter((dni) => dni >= 120).length);
  });

  test('the cold end has its margin too', () => {
    const result = day(siteWith({ limits: { minC: 30 } }));
    expect(result.coldMarginK).toBeCloseTo(result.lowestInsideAirC - 30, 9);
  });
});

test('a wall that the site does not have, and a step that does not fit, are errors', () => {
  const site = siteWith();
  expect(() => evaluateDay(site, 'attic')).toThrow(/no wall "attic"; allowed: wall/);
  expect(() => evaluateDay(site, 'wall', { stepS: 301 })).toThrow(/stepS/);
  expect(() => evaluateDay(site, 'wall', { stepS: 7 })).toThrow(/stepS/);
  expect(() => evaluateDay(site, 'wall', { stepS: 0 })).toThrow(/stepS/);
});

test('a site survives the way through a file: same input, same day', () => {
  const site = siteWith();
  expect(day(parseSite(JSON.parse(JSON.stringify(site)))).insideAirC).toEqual(day(site).insideAirC);
});
