/** Remedies, confidence, the cold end and the touch of a hot skin. */
import { describe, expect, test } from 'vitest';
import { wettingPoint } from '../../../model/climate/humidity.ts';
import {
  choiceConfidence,
  DEMO_SITE,
  evaluateColdNight,
  evaluateDay,
  parseSite,
  rankWalls,
  remediesFor,
  type Site,
  touchText,
  type Wall,
  wallConfidence,
} from '../../../model/index.ts';
import { seeded } from '../../../model/random.ts';
import { INPUT_SPREADS, valueWithin } from '../../../model/siting/input-spreads.ts';
import { latinHypercube, quantile, rankCorrelation } from '../../../model/siting/latin-hypercube.ts';
import { changed, changesFor, possible } from '../../../model/siting/remedy-changes.ts';
import { BURN_THRESHOLDS_C, burnsWithinS, TOUCH_TIMES_S } from '../../../model/siting/touch.ts';
import { siteWith, wallFacing } from '../sites.ts';

function finish<Result>(steps: Generator<number, Result>): { result: Result; shares: number[] } {
  const shares: number[] = [];
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return { result: step.value, shares };
    shares.push(step.value);
  }
}

describe('remedies', () => {
  const demo = parseSite(DEMO_SITE);
  const list = remediesFor(demo, 'west', { units: 'metric' });
  const remedy = (id: string) => list.remedies.find((one) => one.id === id);

  test('gains are what the day with the remedy says against the day without', () => {
    expect(list.peakInsideAirC).toBe(evaluateDay(demo, 'west').peakInsideAirC);
    const hooded = parseSite({ ...DEMO_SITE, box: { ...DEMO_SITE.box, hood: { solarAbsorptance: 0.35 } } });
    const day = evaluateDay(hooded, 'west');
    expect(remedy('whiteHood')?.peakInsideAirC).toBeCloseTo(day.peakInsideAirC, 9);
    expect(remedy('whiteHood')?.gainK).toBeCloseTo(list.peakInsideAirC - day.peakInsideAirC, 9);
    expect(remedy('wall:south')?.marginK).toBeCloseTo(evaluateDay(demo, 'south').marginK, 9);
  });

  test('every practical one is there, largest gain first; a dark hood is shown to do little', () => {
    const gains = list.remedies.map(({ gainK }) => gainK);
    expect(gains).toEqual([...gains].sort((a, b) => b - a));
    for (const id of [
      'whiteHood',
      'darkHood',
      'lighterFinish',
      'awning',
      'brackets',
      'vents',
      'lessPower',
      'lower:1.2',
    ]) {
      expect(remedy(id), id).toBeDefined();
    }
    expect(remedy('darkHood')?.gainK).toBeLessThan((remedy('whiteHood')?.gainK ?? 0) - 4);
  });

  test('a wall that cannot be earthed is no remedy', () => {
    expect(remedy('wall:north')).toMatchObject({ permitted: false });
    expect(list.bestPair?.id).not.toContain('north');
  });

  test('the best two together gain more than either, change different things, and say both', () => {
    const best = list.bestPair;
    const single = Math.max(...list.remedies.filter(({ permitted }) => permitted).map(({ gainK }) => gainK));
    expect(best?.gainK).toBeGreaterThan(single);
    expect(best?.id.split('+')).toHaveLength(2);
    expect(best?.effort.hours).toBeGreaterThan(0);
  });

  test('what harms is shown with its loss', () => {
    const shaded: Partial<Parameters<typeof siteWith>[0]> = {
      walls: wallFacing(0, { eave: { depthM: 3, heightAboveBoxM: 0.2 }, construction: 'concrete' }),
      box: { powerW: 0, massKg: 400, solarAbsorptance: 0.1, widthM: 0.6, heightM: 0.8, depthM: 0.4 },
    };
    const { remedies } = remediesFor(siteWith(shaded), 'wall');
    expect(remedies.find(({ id }) => id === 'vents')?.gainK).toBeLessThan(-0.05);
  });

  test('the eave stays where it is while the box moves up and down', () => {
    const site = siteWith({ walls: wallFacing(180, { eave: { depthM: 0.5, heightAboveBoxM: 0.5 } }) });
    const lower = remediesFor(site, 'wall').remedies.find(({ id }) => id === 'lower:1.2');
    const walls = wallFacing(180, { eave: { depthM: 0.5, heightAboveBoxM: 0.7 } });
    expect(lower?.peakInsideAirC).toBeCloseTo(
      evaluateDay(siteWith({ walls, box: { mountHeightM: 1.2 } }), 'wall').peakInsideAirC,
      9,
    );
  });

  test('what the rules would refuse is no remedy: a box under ground, through a block, above its eave, an awning above the wall', () => {
    const ids = (changes: Parameters<typeof siteWith>[0]) =>
      remediesFor(siteWith(changes), 'wall').remedies.map(({ id }) => id);
    expect(ids({ box: { widthM: 0.02, heightM: 0.02, depthM: 0.02, powerW: 0.1 } })).not.toContain('vents');
    expect(ids({ constraints: { mountHeightM: [0.05, 1.6] } })).not.toContain('lower:0.05');
    const block = { kind: 'block', rightM: 0, outM: 0, widthM: 1, depthM: 0.5, heightM: 1.2 };
    expect(ids({ walls: wallFacing(270, { obstructions: [block] }) })).not.toContain('lower:1.2');
    expect(ids({ walls: wallFacing(270, { eave: { depthM: 0.5, heightAboveBoxM: 0.05 } }) })).not.toContain(
      'higher:1.6',
    );
    expect(ids({ walls: wallFacing(270, { heightM: 1.6 }) })).not.toContain('awning');
    expect(ids({ box: { mount: 'post' } })).not.toContain('awning');
    expect(ids({ box: { powerW: 0 } })).not.toContain('lessPower');
  });

  test('an awning and another wall together: the awning is on the other wall', () => {
    const walls = [...wallFacing(270), { name: 'east', azimuthDeg: 90 }];
    const closed = { vents: { lowAreaM2: 0, highAreaM2: 0 }, hood: { faces: ['top' as const] } };
    const { bestPair } = remediesFor(siteWith({ walls, box: closed }), 'wall');
    expect(bestPair?.id.split('+').sort()).toEqual(['awning', 'wall:east']);
    const eave = { depthM: 0.6, heightAboveBoxM: 0.3, widthM: 1.5 };
    const byHand = evaluateDay(siteWith({ walls: wallFacing(90, { eave }), box: closed }), 'wall');
    expect(bestPair?.peakInsideAirC).toBeCloseTo(byHand.peakInsideAirC, 9);
  });

  test('an awning and another height together: the awning hangs by the box where it is then', () => {
    const closed = { vents: { lowAreaM2: 0, highAreaM2: 0 }, hood: { faces: ['top' as const] }, solarAbsorptance: 0.3 };
    for (const heightM of [0.9, 1.9]) {
      const site = siteWith({ walls: wallFacing(270), box: closed, constraints: { mountHeightM: [heightM, heightM] } });
      const wall = site.walls[0] as Wall;
      const both = changesFor(site, wall, 'metric').filter(({ part }) => part === 'eave' || part === 'height');
      expect(both).toHaveLength(2);
      const after = changed({ site, wall }, both);
      expect(after.site.box.mountHeightM).toBe(heightM);
      expect(after.wall.eave?.heightAboveBoxM).toBe(0.3);
      expect(possible(after)).toBe(true);
    }
  });

  test('from a wall that is not permitted a pair leads to one that is', () => {
    const { bestPair, remedies } = remediesFor(demo, 'north');
    expect(remedies.filter(({ permitted }) => permitted).every(({ id }) => id.startsWith('wall:'))).toBe(true);
    expect(bestPair).toMatchObject({ permitted: true });
    expect(bestPair?.id).toContain('wall:south');
  });

  test('under a limit on outside air it is the air inside that a remedy is told by', () => {
    const site = siteWith({ walls: wallFacing(270), limits: { maxC: 40, refersTo: 'outsideAir' } });
    const { remedies, peakInsideAirC } = remediesFor(site, 'wall');
    const hood = remedies.find(({ id }) => id === 'whiteHood');
    expect(hood?.gainK).toBeCloseTo(peakInsideAirC - (hood?.peakInsideAirC ?? 0), 9);
    expect(hood?.gainK).toBeGreaterThan(3);
  });

  test('a battery can be moved out', () => {
    const box = { widthM: 0.4, heightM: 0.6, depthM: 0.25, battery: { massKg: 10, powerW: 10 } };
    const out = remediesFor(siteWith({ box }), 'wall').remedies.find(({ id }) => id === 'batteryOut');
    expect(out?.gainK).toBeGreaterThan(0.5);
  });
});

describe('Latin hypercube and ranks', () => {
  test('each of the equal parts of each input holds one point', () => {
    const points = latinHypercube(40, 3, seeded(7));
    for (const k of [0, 1, 2]) {
      const parts = points.map((point) => Math.floor((point[k] as number) * 40)).sort((a, b) => a - b);
      expect(parts).toEqual(Array.from({ length: 40 }, (_, part) => part));
    }
  });

  test('the same seed gives the same points, another one others', () => {
    expect(latinHypercube(5, 2, seeded(3))).toEqual(latinHypercube(5, 2, seeded(3)));
    expect(latinHypercube(5, 2, seeded(3))).not.toEqual(latinHypercube(5, 2, seeded(4)));
  });

  test('quantiles go straight between neighbours', () => {
    expect(quantile([4, 1, 3, 2], 0.5)).toBe(2.5);
    expect(quantile([1, 2, 3], 1)).toBe(3);
    expect(quantile([5], 0.1)).toBe(5);
  });

  test('rank correlation: Spearman by hand, 1 - 6 sum(d^2) / (n (n^2 - 1))', () => {
    // Ranks 1 2 3 4 5 against 2 1 4 3 5: d^2 sums to 4, 1 - 24 / 120 = 0.8.
    expect(rankCorrelation([10, 20, 30, 40, 50], [2, 1, 4, 3, 50])).toBeCloseTo(0.8, 12);
    expect(rankCorrelation([1, 2, 3], [9, 4, 1])).toBeCloseTo(-1, 12);
    expect(rankCorrelation([1, 2, 3], [5, 5, 5])).toBe(0);
  });

  test('shifts are even by difference, factors by ratio', () => {
    for (const spread of INPUT_SPREADS) {
      expect(valueWithin(spread, 0)).toBeCloseTo(spread.low, 12);
      expect(valueWithin(spread, 1)).toBeCloseTo(spread.high, 12);
      const middle = valueWithin(spread, 0.5);
      expect(middle).toBeCloseTo(
        spread.kind === 'shift' ? (spread.low + spread.high) / 2 : Math.sqrt(spread.low * spread.high),
        9,
      );
      expect(Math.abs(middle - (spread.kind === 'shift' ? 0 : 1))).toBeLessThan(0.01);
    }
  });
});

describe('confidence', () => {
  const site = siteWith({ walls: wallFacing(270), limits: { maxC: 66 } });
  const { result, shares } = finish(wallConfidence(site, 'wall', { samples: 60 }));
  const day = evaluateDay(site, 'wall');

  test('the band holds the forecast, its ends lie apart, and it says what was assumed', () => {
    const { p10, p50, p90 } = result.peakInsideAirC;
    expect(p10).toBeLessThan(p50);
    expect(p50).toBeLessThan(p90);
    expect(day.peakInsideAirC).toBeGreaterThan(p10);
    expect(day.peakInsideAirC).toBeLessThan(p90);
    expect(result.insideAirC.p10).toHaveLength(day.insideAirC.length);
    for (const [k, low] of result.insideAirC.p10.entries()) {
      expect(low).toBeLessThanOrEqual(result.insideAirC.p90[k] as number);
    }
    for (const { text } of INPUT_SPREADS) expect(result.assumption).toContain(text('us'));
    expect(result.assumption).toMatch(/highest outside air temperature, 4 °F either way/);
  });

  test('the chance of passing the limit falls as the limit rises', () => {
    const chance = (maxC: number) =>
      finish(wallConfidence(siteWith({ walls: wallFacing(270), limits: { maxC } }), 'wall', { samples: 30 })).result
        .chanceOverLimit;
    const { p10, p90 } = result.peakInsideAirC;
    expect(chance(p10 - 5)).toBe(1);
    expect(chance(p90 + 8)).toBe(0);
    expect(result.chanceOverLimit).toBeGreaterThanOrEqual(0);
  });

  test('a limit on the electronics is compared with the electronics', () => {
    // They run some ten kelvins hotter than the air round them.
    const limits = { maxC: result.peakInsideAirC.p90 + 3, refersTo: 'componentCase' as const };
    const hot = siteWith({ walls: wallFacing(270), limits });
    expect(finish(wallConfidence(hot, 'wall', { samples: 20 })).result.chanceOverLimit).toBeGreaterThan(0.5);
  });

  test('weights have the signs of the physics', () => {
    const weight = (input: string) => result.weights.find((one) => one.input === input)?.rankCorrelation as number;
    expect(weight('absorptance')).toBeGreaterThan(0.2);
    expect(weight('power')).toBeGreaterThan(0.1);
    expect(weight('ambient')).toBeGreaterThan(0.1);
    expect(weight('wind')).toBeLessThan(-0.2);
    const sizes = result.weights.map(({ rankCorrelation: r }) => Math.abs(r));
    expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
  });

  test('progress climbs to one; the same seed gives the same band, another seed nearly the same', () => {
    expect(shares).toHaveLength(60);
    expect(shares.at(-1)).toBe(1);
    expect(finish(wallConfidence(site, 'wall', { samples: 60 })).result).toEqual(result);
    const other = finish(wallConfidence(site, 'wall', { samples: 60, seed: 2 })).result.peakInsideAirC;
    expect(other.p50).not.toBe(result.peakInsideAirC.p50);
    expect(Math.abs(other.p50 - result.peakInsideAirC.p50)).toBeLessThan(1);
  });

  test('a standard cycle is taken as it stands: air and haze weigh nothing, the rest does', () => {
    const cycle = siteWith({ climate: { cycle: 'mil-std-810h-a1', windMs: 1 }, walls: wallFacing(270) });
    const before = JSON.stringify(cycle);
    const { result: band } = finish(wallConfidence(cycle, 'wall', { samples: 20 }));
    expect(band.peakInsideAirC.p90).toBeGreaterThan(band.peakInsideAirC.p10 + 1);
    const inputs = band.weights.map(({ input }) => input);
    expect(inputs).not.toContain('ambient');
    expect(inputs).not.toContain('turbidity');
    expect(inputs).toContain('wind');
    expect(band.assumption).not.toMatch(/outside air temperature|turbidity/);
    expect(JSON.stringify(cycle)).toBe(before);
  });

  test('where the cold decides, the wall that the ranking picks stays the best', () => {
    const climate = { designDay: { date: '2026-01-05', maxC: 12, dailyRangeK: 10 } };
    const walls = [
      { name: 'north', azimuthDeg: 0 },
      { name: 'south', azimuthDeg: 180 },
    ];
    const cold = siteWith({ climate, walls, limits: { minC: 15 } });
    const { result: choice } = finish(choiceConfidence(cold, { samples: 10 }));
    const picked = rankWalls(cold).best;
    expect(choice.walls.find(({ name }) => name === picked)?.bestShare).toBeGreaterThan(0.8);
  });

  test('walls that fare alike share what they win', () => {
    const walls = ['a', 'b'].map((name) => ({ name, azimuthDeg: 90, horizon: [[0, 90]] }));
    const { result: choice } = finish(choiceConfidence(siteWith({ walls } as never), { samples: 4 }));
    expect(choice.walls.map(({ bestShare }) => bestShare)).toEqual([0.5, 0.5]);
  });

  test('how often each permitted wall is the coolest adds up to one; the forbidden one is not asked', () => {
    const { result: choice } = finish(choiceConfidence(parseSite(DEMO_SITE), { samples: 20 }));
    expect(choice.walls.map(({ name }) => name)).toEqual(['east', 'south', 'west']);
    expect(choice.walls.reduce((sum, { bestShare }) => sum + bestShare, 0)).toBeCloseTo(1, 12);
    expect(choice.walls.find(({ name }) => name === 'south')?.bestShare).toBeGreaterThan(0.9);
  });
});

describe('the coldest night', () => {
  const cold = (changes: Parameters<typeof siteWith>[0] = {}) => evaluateColdNight(siteWith(changes), 'wall');
  const night = (minC: number, more: object = {}) => ({
    climate: { designDay: { date: '2026-01-10', maxC: 0, dailyRangeK: 8 }, coldNight: { minC, ...more } },
  });

  test('running, heat keeps it above the air; after an outage the clear sky takes it below', () => {
    const { running, soaked } = cold(night(-35));
    expect(running.insideAirC).toBeGreaterThan(-35 + 3);
    expect(soaked.insideAirC).toBeLessThan(-35);
    expect(soaked.insideAirC).toBeGreaterThan(-35 - 8);
    expect(soaked.marginK).toBeCloseTo(soaked.insideAirC + 40, 9);
    expect(Math.abs(soaked.electronicsC - soaked.insideAirC)).toBeLessThan(0.5);
    // The air inside is a mean of the skins: the lowest, the lid under the sky, lies below it.
    expect(soaked.lowestSkinC).toBeLessThan(soaked.insideAirC - 0.3);
  });

  test('runs on the least heat that the duty leaves', () => {
    const running = (duty: 'constant' | 'dayAndNight') => cold({ ...night(-20), box: { duty } }).running.insideAirC;
    expect(running('dayAndNight')).toBeLessThan(running('constant') - 0.5);
  });

  test('without power a box that runs is a box that is soaked', () => {
    const { running, soaked } = cold({ ...night(-20), box: { powerW: 0 } });
    expect(running.insideAirC).toBeCloseTo(soaked.insideAirC, 3);
    expect(running.marginK).toBeCloseTo(soaked.marginK, 3);
  });

  test('clouds and wind bring it nearer to the air', () => {
    const apart = (more: object) => -20 - cold(night(-20, more)).soaked.lowestSkinC;
    expect(apart({ cloudFraction: 1 })).toBeLessThan(apart({}));
    expect(apart({ windMs: 8 })).toBeLessThan(apart({}));
    expect(apart({})).toBeGreaterThan(0.5);
  });

  test('a skin below the dew point is said, a dry night is not wet', () => {
    expect(cold(night(5, { dewPointC: 5 })).soaked.condenses).toBe(true);
    expect(cold(night(5, { dewPointC: -20 })).soaked.condenses).toBe(false);
  });

  test('frost settles on a skin between the dew point and the frost point', () => {
    const { lowestSkinC, condenses } = cold(night(-18, { dewPointC: -24, windMs: 0.5 })).soaked;
    expect(lowestSkinC).toBeGreaterThan(-24);
    expect(lowestSkinC).toBeLessThan(wettingPoint(-24, -18));
    expect(condenses).toBe(true);
  });

  test('a sample has its own coldest month, either side of the equator; a cycle its coldest hour', () => {
    expect(cold().outsideAirC).toBe(11);
    expect(cold({ place: { latitudeDeg: -33 } }).outsideAirC).toBe(11);
    expect(cold({ climate: { cycle: 'mil-std-810h-a1' } }).outsideAirC).toBe(32);
    expect(cold({ climate: { cycle: 'mil-std-810h-a1' } }).text).toMatch(/No cold night is entered/);
  });

  test('a limit on outside air is compared with outside air', () => {
    const { soaked } = cold({ ...night(-30), limits: { minC: -33, refersTo: 'outsideAir' } });
    expect(soaked.marginK).toBeCloseTo(3, 9);
  });
});

test('a winter night sees the open sky through bare trees, and a hood is no wet skin', () => {
  const trees = [-3, 0, 3].map((rightM) => ({
    kind: 'tree',
    rightM,
    outM: 4,
    heightM: 7,
    crownDiameterM: 5,
    crownBaseM: 2,
  }));
  const soaked = (date: string) => {
    const climate = { designDay: { date, maxC: 20, dailyRangeK: 8, dewPointC: 0 }, coldNight: { minC: -20 } };
    return evaluateColdNight(siteWith({ climate, walls: wallFacing(180, { obstructions: trees }) }), 'wall').soaked;
  };
  expect(soaked('2026-07-05').lowestSkinC).toBeCloseTo(soaked('2026-01-05').lowestSkinC, 6);
  const climate = { designDay: { date: '2026-01-10', maxC: 9, dailyRangeK: 4 }, coldNight: { minC: 5, dewPointC: 4 } };
  const hooded = evaluateColdNight(siteWith({ climate, box: { powerW: 8, hood: {} } }), 'wall').running;
  expect(hooded.condenses).toBe(false);
});

describe('touch', () => {
  test('thresholds fall with the time of contact, and metal burns before plastic', () => {
    for (const material of ['metal', 'plastic'] as const) {
      const { 1: second, 10: ten, 60: minute } = BURN_THRESHOLDS_C[material];
      expect(second).toBeGreaterThan(ten);
      expect(ten).toBeGreaterThan(minute);
    }
    expect(burnsWithinS(66, 'metal')).toBe(1);
    expect(burnsWithinS(66, 'plastic')).toBe(10);
    expect(burnsWithinS(56, 'metal')).toBe(10);
    expect(burnsWithinS(52, 'metal')).toBe(60);
    expect(burnsWithinS(40, 'metal')).toBeNull();
  });

  test('the hottest skin of the day is found, and a hood is touched in place of the skin', () => {
    const touchOf = (box: object) => evaluateDay(siteWith({ walls: wallFacing(270), box }), 'wall');
    const bare = touchOf({ solarAbsorptance: 0.95 });
    const skins = Object.values(bare.skinC).flat();
    expect(bare.touch.peakSkinC).toBeCloseTo(Math.max(...skins), 9);
    expect(bare.skinC[bare.touch.face].includes(bare.touch.peakSkinC)).toBe(true);
    const hooded = touchOf({ solarAbsorptance: 0.95, hood: { solarAbsorptance: 0.95 } });
    expect(touchOf({ material: 'plastic', hood: { solarAbsorptance: 0.95 } }).touch.burnsWithinS).toBe(1);
    expect(hooded.touch.peakSkinC).toBeGreaterThan(Math.max(...hooded.skinC.front, ...hooded.skinC.top));
    expect(touchText(bare.touch, 'metric')).toMatch(
      /^The (lid|front) of the box reaches .*: touching it for 1 second may burn \(ISO 13732-1/,
    );
    expect(touchText({ ...bare.touch, burnsWithinS: null }, 'metric')).toBe('');
  });
});

describe('touch of a hood and a face of different stuff', () => {
  test('the part that burns soonest is told, not a hotter one that burns later', () => {
    const lid = { faces: ['top' as const], solarAbsorptance: 0.35 };
    const box = { material: 'plastic' as const, solarAbsorptance: 0.5, hood: lid };
    const { touch, skinC } = evaluateDay(siteWith({ walls: wallFacing(270), box }), 'wall');
    expect(Math.max(...skinC.front)).toBeGreaterThan(touch.peakSkinC);
    expect(touch).toMatchObject({ face: 'top', burnsWithinS: 1 });
    expect(touch.burns[1]).not.toEqual([]);
    expect(touchText(touch, 'metric')).toMatch(/^The lid .* for 1 second/);
  });

  test('what is told is the soonest that the hours of the day tell', () => {
    for (const material of ['plastic', 'metal'] as const) {
      for (const solarAbsorptance of [0.2, 0.5, 0.9]) {
        for (const hood of [0.2, 0.5, 0.9]) {
          const box = { material, solarAbsorptance, hood: { faces: ['top' as const], solarAbsorptance: hood } };
          const { touch } = evaluateDay(siteWith({ walls: wallFacing(270), box }), 'wall');
          const soonest = TOUCH_TIMES_S.find((seconds) => touch.burns[seconds].length > 0) ?? null;
          expect(touch.burnsWithinS).toBe(soonest);
        }
      }
    }
  });
});

describe('condensation by day', () => {
  test('a humid night wets the skins of an idle box, a dry one does not', () => {
    const hours = (dewPointC: number): number => {
      const climate = { designDay: { date: '2026-07-05', maxC: 32, dailyRangeK: 10, dewPointC } };
      return evaluateDay(siteWith({ climate, box: { powerW: 0, mount: 'post', postDistanceM: 30 } }), 'wall')
        .condensationHours;
    };
    expect(hours(21.5)).toBeGreaterThan(2);
    expect(hours(0)).toBe(0);
    // A dew point above the air of the night is that of the warm hours: the night is saturated, no more.
    expect(hours(30)).toBeLessThan(24);
  });
});

test('a finish stands in for what is not entered, and is an assumption', () => {
  const box = (more: object): Site['box'] & { assumed: string[] } => {
    const site = parseSite({
      ...DEMO_SITE,
      box: { ...DEMO_SITE.box, solarAbsorptance: undefined, emittance: undefined, ...more } as never,
    });
    return { ...site.box, assumed: site.assumed };
  };
  expect(box({ finish: 'blackPaint', finishState: 'new' })).toMatchObject({ solarAbsorptance: 0.95, emittance: 0.9 });
  expect(box({ finish: 'bareAluminium' })).toMatchObject({ solarAbsorptance: 0.4, emittance: 0.2 });
  expect(box({})).toMatchObject({ solarAbsorptance: 0.5, emittance: 0.9 });
  expect(box({ finish: 'blackPaint', solarAbsorptance: 0.3 })).toMatchObject({ solarAbsorptance: 0.3 });
  expect(box({}).assumed).toContain('box.solarAbsorptance');
});
