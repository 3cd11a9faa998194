/** Whatever the schema lets in has a day: random sites over the whole of the permitted ranges. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { FIELDS, type FieldPath } from '../../../model/fields.ts';
import {
  CLIMATE_SAMPLES,
  CONSTRUCTION_NAMES,
  DUTY_NAMES,
  evaluateColdNight,
  evaluateDay,
  FINISH_NAMES,
  parseSite,
  remediesFor,
  SiteError,
  STANDARD_CYCLES,
  sunDiagram,
  wallPlan,
} from '../../../model/index.ts';

const within = (path: FieldPath) => {
  const { min, max } = FIELDS[path];
  return fc.oneof(fc.constantFrom(min, max), fc.double({ min, max, noNaN: true }));
};

const site = fc.record({
  place: fc.record({
    latitudeDeg: within('place.latitudeDeg'),
    longitudeDeg: within('place.longitudeDeg'),
    altitudeM: within('place.altitudeM'),
  }),
  climate: fc.oneof(
    fc.record({
      sample: fc.constantFrom(...CLIMATE_SAMPLES.map(({ name }) => name)),
      month: fc.integer({ min: 1, max: 12 }),
    }),
    fc.record({
      cycle: fc.constantFrom(...STANDARD_CYCLES.map(({ name }) => name)),
      date: fc.constantFrom('2026-01-15', '2026-06-21', '1916-10-01', '2100-12-31'),
      windMs: within('climate.windMs'),
    }),
    fc.record({
      designDay: fc.record({
        date: fc.constantFrom('1972-01-07', '2026-03-29', '2026-12-21'),
        maxC: within('climate.designDay.maxC'),
        dailyRangeK: within('climate.designDay.dailyRangeK'),
        windMs: within('climate.designDay.windMs'),
        linkeTurbidity: within('climate.designDay.linkeTurbidity'),
      }),
    }),
  ),
  building: fc.oneof(
    fc.constant(null),
    // Edges all round, so that many bearings find one.
    fc.record({ outlineM: fc.constant(octagon()), heightM: within('building.heightM') }),
  ),
  ground: fc.record({ albedo: within('ground.albedo') }),
  box: fc.record({
    widthM: within('box.widthM'),
    heightM: within('box.heightM'),
    depthM: within('box.depthM'),
    solarAbsorptance: within('box.solarAbsorptance'),
    emittance: within('box.emittance'),
    powerW: within('box.powerW'),
    massKg: within('box.massKg'),
    mountHeightM: within('box.mountHeightM'),
    mount: fc.constantFrom('wall' as const, 'wall' as const, 'post' as const),
    standOffM: within('box.standOffM'),
    postDistanceM: within('box.postDistanceM'),
    duty: fc.constantFrom(...DUTY_NAMES),
    finish: fc.constantFrom(null, ...FINISH_NAMES),
    vents: fc.oneof(
      fc.constant(null),
      fc.record({ lowAreaM2: within('box.vents.lowAreaM2'), highAreaM2: within('box.vents.highAreaM2') }),
    ),
    battery: fc.oneof(
      fc.constant(null),
      fc.record({ massKg: within('box.battery.massKg'), powerW: within('box.battery.powerW') }),
    ),
    compartments: fc.oneof(fc.constant(null), fc.record({ lowerShare: within('box.compartments.lowerShare') })),
    hood: fc.oneof(
      fc.constant(null),
      fc.record({
        gapM: within('box.hood.gapM'),
        solarAbsorptance: within('box.hood.solarAbsorptance'),
        emittance: within('box.hood.emittance'),
        openTop: fc.boolean(),
      }),
    ),
  }),
  walls: fc.tuple(
    fc.record({
      name: fc.constant('wall'),
      azimuthDeg: within('walls[].azimuthDeg'),
      construction: fc.constantFrom(...CONSTRUCTION_NAMES),
      solarAbsorptance: within('walls[].solarAbsorptance'),
      emittance: within('walls[].emittance'),
      eave: fc.oneof(
        fc.constant(null),
        fc.record({ depthM: within('walls[].eave.depthM'), heightAboveBoxM: within('walls[].eave.heightAboveBoxM') }),
      ),
      obstructions: fc.oneof(
        fc.constant([]),
        fc.tuple(
          fc.record({
            kind: fc.constant('front' as const),
            distanceM: within('walls[].obstructions[].distanceM'),
            heightM: within('walls[].obstructions[].heightM'),
            transmittance: within('walls[].obstructions[].transmittance'),
          }),
        ),
      ),
      horizon: fc.oneof(
        fc.constant([]),
        fc.array(fc.tuple(within('walls[].horizon.bearingDeg'), within('walls[].horizon.elevationDeg')), {
          maxLength: 5,
        }),
      ),
    }),
  ),
});

function octagon(): [number, number][] {
  return Array.from({ length: 8 }, (_, k) => [20 * Math.sin((k * Math.PI) / 4), 20 * Math.cos((k * Math.PI) / 4)]);
}

test('a site within the ranges is refused with its problems or has a day that closes', () => {
  let evaluated = 0;
  fc.assert(
    fc.property(site, (input) => {
      let parsed: ReturnType<typeof parseSite>;
      try {
        parsed = parseSite(input);
      } catch (error) {
        if (error instanceof SiteError) return;
        throw error;
      }
      evaluated += 1;
      if (evaluated % 10 === 0) {
        const { paths } = sunDiagram(parsed, 'wall');
        for (const { lit } of paths.flatMap(({ points }) => points)) expect(lit >= 0 && lit <= 1 + 1e-9).toBe(true);
        expect(wallPlan(parsed, 'wall').sun.length).toBeGreaterThan(100);
      }
      if (evaluated % 15 === 0) {
        for (const { gainK } of remediesFor(parsed, 'wall').remedies) expect(Number.isFinite(gainK)).toBe(true);
        const { running, soaked } = evaluateColdNight(parsed, 'wall');
        expect(Number.isFinite(running.insideAirC + soaked.insideAirC)).toBe(true);
      }
      const day = evaluateDay(parsed, 'wall');
      expect(Number.isFinite(day.peakInsideAirC)).toBe(true);
      expect(Math.abs(day.energyClosure)).toBeLessThan(0.001);
    }),
    { numRuns: 500, seed: 20261125 },
  );
  expect(evaluated).toBeGreaterThan(100);
});
