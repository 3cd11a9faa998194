/** Long-wave sky and exchange: closed forms and order. Worked examples stand in checks/surface-balance.ts and longwave-sky.ts. */
import { describe, expect, test } from 'vitest';
import { skyLongwave } from '../../model/index.ts';
import { SIGMA } from '../../model/physical-constants.ts';
import { blackbodyK, parallelPlates, roomExchangeAreas } from '../../model/thermal/radiation.ts';

test('clouds warm the sky, altitude cools it, it never outshines the air', () => {
  const clear = skyLongwave({ airC: 20, dewPointC: 10 });
  expect(skyLongwave({ airC: 20, dewPointC: 10, cloudFraction: 1 })).toBeGreaterThan(clear);
  expect(skyLongwave({ airC: 20, dewPointC: 10, pressurePa: 80_000 })).toBeLessThan(clear);
  expect(skyLongwave({ airC: 20, dewPointC: 35, cloudFraction: 1 })).toBeLessThanOrEqual(SIGMA * 293.15 ** 4 + 1e-9);
  // Drier than the fit reaches: no lower and no higher.
  expect(skyLongwave({ airC: 0, dewPointC: -60 })).toBe(skyLongwave({ airC: 0, dewPointC: -40 }));
});

describe('exchange between surfaces', () => {
  test('two large parallel plates (textbook closed form)', () => {
    expect(parallelPlates(0.8, 0.5)).toBeCloseTo(1 / (1 / 0.8 + 1 / 0.5 - 1), 12);
    expect(parallelPlates(0, 0.5)).toBe(0);
  });

  test('a room of two equal surfaces is exact: two resistances of surfaces and one of view', () => {
    const areas = roomExchangeAreas([
      { areaM2: 2, emittance: 0.8 },
      { areaM2: 2, emittance: 0.5 },
    ]);
    expect(areas[0]?.[1]).toBeCloseTo(2 * parallelPlates(0.8, 0.5), 6);
  });

  test('exchange is mutual and none comes back to its own surface', () => {
    const areas = roomExchangeAreas([
      { areaM2: 1, emittance: 0.9 },
      { areaM2: 0.5, emittance: 0.2 },
      { areaM2: 3, emittance: 0.7 },
    ]);
    for (let i = 0; i < 3; i++) {
      expect(areas[i]?.[i]).toBe(0);
      for (let j = 0; j < 3; j++) expect(areas[i]?.[j]).toBe(areas[j]?.[i]);
    }
  });

  test('a black cube seen as a room: a face sees the five others, a fifth each', () => {
    const areas = roomExchangeAreas(Array.from({ length: 6 }, () => ({ areaM2: 1, emittance: 1 })));
    expect(areas[0]?.[1]).toBeCloseTo(0.2, 6);
  });

  test('the black surface that sends out what a temperature does has that temperature', () => {
    expect(blackbodyK(SIGMA * 300 ** 4)).toBeCloseTo(300, 9);
  });
});
