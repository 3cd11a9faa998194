/** A hood takes the sun in place of the faces behind it. */
import { describe, expect, test } from 'vitest';
import { openFaces } from '../../../model/faces.ts';
import { evaluateDay, type SiteInput } from '../../../model/index.ts';
import { KELVIN, SIGMA } from '../../../model/physical-constants.ts';
import { wallNetwork } from '../../../model/siting/day-forcing.ts';
import { siteDay } from '../../../model/siting/design-day.ts';
import { prepareWallShade } from '../../../model/siting/wall-shade.ts';
import { parallelPlates } from '../../../model/thermal/radiation.ts';
import { siteWith, wallFacing } from '../sites.ts';

type Hood = NonNullable<SiteInput['box']['hood']>;

const day = (hood: Hood | null, box: object = {}, azimuthDeg = 270) =>
  evaluateDay(siteWith({ walls: wallFacing(azimuthDeg), box: { solarAbsorptance: 0.7, hood, ...box } }), 'wall');

describe('a hood on a sunny wall', () => {
  const bare = day(null);
  const white = day({});

  test('cools the box by many kelvins', () => {
    expect(white.peakInsideAirC).toBeLessThan(bare.peakInsideAirC - 6);
  });

  test('never adds sun: whatever its colour, the box is no hotter than bare and black', () => {
    for (const solarAbsorptance of [0, 0.3, 0.7, 1]) {
      const hooded = day({ solarAbsorptance }, { solarAbsorptance: 1 });
      expect(hooded.peakInsideAirC).toBeLessThan(day(null, { solarAbsorptance: 1 }).peakInsideAirC);
    }
  });

  test('a dark one is worse than a white one, a closed one than an open one', () => {
    expect(day({ solarAbsorptance: 0.95 }).peakInsideAirC).toBeGreaterThan(white.peakInsideAirC + 2);
    expect(day({ openTop: false }).peakInsideAirC).toBeGreaterThan(white.peakInsideAirC);
  });

  test('keeps the sun off the faces behind it, and their colour no longer matters', () => {
    for (const face of ['front', 'left', 'right', 'top'] as const)
      expect(Math.max(...white.faceIrradianceWm2[face])).toBe(0);
    expect(white.sunHours).toBe(0);
    expect(white.ledgerAtPeak.sunBeam).toBe(0);
    const onlyFloorSeesLight = day({}, { solarAbsorptance: 0.1 });
    expect(white.peakInsideAirC - onlyFloorSeesLight.peakInsideAirC).toBeLessThan(3);
  });

  test('over the lid alone leaves the front in the sun', () => {
    const lid = day({ faces: ['top'] });
    expect(Math.max(...lid.faceIrradianceWm2.front)).toBeGreaterThan(400);
    expect(lid.peakInsideAirC).toBeLessThan(bare.peakInsideAirC);
    expect(lid.peakInsideAirC).toBeGreaterThan(white.peakInsideAirC);
  });

  test('energy closes and the ledger sums to zero, with heat coming through the hood', () => {
    for (const hooded of [
      white,
      day({ openTop: false, gapM: 0.003 }),
      day({ faces: [...openFaces('wall')], gapM: 0.2 }),
    ]) {
      expect(Math.abs(hooded.energyClosure)).toBeLessThan(0.001);
      const flows = Object.values(hooded.ledgerAtPeak);
      const incoming = flows.reduce((sum, watts) => sum + Math.max(0, watts), 0);
      expect(Math.abs(flows.reduce((sum, watts) => sum + watts, 0))).toBeLessThan(0.002 * incoming);
    }
  });

  test('keeps the sky from a warm box at night: the box is a little warmer than bare', () => {
    const before = (result: typeof bare) => result.insideAirC[5 * 12] as number;
    expect(before(white)).toBeGreaterThan(before(bare));
    expect(before(white) - before(bare)).toBeLessThan(4);
  });
});

test('skin and sheet trade as large parallel plates and through the air between (hand calculation)', () => {
  const site = siteWith({ box: { hood: { gapM: 0.02, openTop: false, emittance: 0.5 } } });
  const wall = site.walls[0] as (typeof site.walls)[number];
  const network = wallNetwork(site, wall, prepareWallShade(site, wall, siteDay(site)));
  const t = new Float64Array(network.names.length).fill(300);
  t[network.indexOf('front')] = 50 + KELVIN;
  t[network.indexOf('hood-front')] = 70 + KELVIN;
  const between = network.links
    .map((link, k) => ({ link, k }))
    .filter(({ link }) => link.from === 'front' && link.to === 'hood-front')
    .reduce((sum, { k }) => sum + network.linkFlowW(k, t, 0), 0);
  const area = 0.3 * 0.35;
  const radiated = parallelPlates(0.9, 0.5) * SIGMA * ((70 + KELVIN) ** 4 - (50 + KELVIN) ** 4);
  // Air at 60 degC conducts 0.0288 W/(m K) (Incropera table A.4, value from memory).
  const conducted = (0.0288 / 0.02) * 20;
  expect(Math.abs(-between / (area * (radiated + conducted)) - 1)).toBeLessThan(0.02);
});
