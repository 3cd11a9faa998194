/** The temperature that a margin is the margin of, against the day's own curves. */
import { describe, expect, test } from 'vitest';
import {
  decidingFigure,
  evaluateDay,
  figureBesideInside,
  figureOfWall,
  figureWithRemedy,
  remediesFor,
  type SiteInput,
} from '../../../model/index.ts';
import { siteWith } from '../sites.ts';

const dayWith = (limits: NonNullable<SiteInput['limits']>) => {
  const site = siteWith({ limits });
  return { limits: site.limits, day: evaluateDay(site, 'wall') };
};

describe('a day', () => {
  test.each([
    ['insideAir', 'Inside air at the peak', 'insideAirC'],
    ['outsideAir', 'Outside air at the peak', 'outsideAirC'],
    ['componentCase', 'Electronics at the peak', 'electronicsC'],
  ] as const)('with limits on %s is judged by its peak', (refersTo, name, curve) => {
    const { day, limits } = dayWith({ refersTo });
    const figure = decidingFigure(day, limits);
    expect(figure.name).toBe(name);
    expect(figure.valueC).toBeCloseTo(Math.max(...day[curve]), 9);
    expect(figure.isInsidePeak).toBe(refersTo === 'insideAir');
  });

  test('past the lower limit is judged by its lowest', () => {
    const { day, limits } = dayWith({ minC: 45, maxC: 99 });
    const figure = decidingFigure(day, limits);
    expect(figure).toMatchObject({ name: 'Lowest inside air', short: 'inside down to', isInsidePeak: false });
    expect(figure.valueC).toBeCloseTo(day.lowestInsideAirC, 9);
    const beside = figureBesideInside([day], limits);
    expect(beside?.head).toBe('lowest');
    expect(beside?.valueC(day)).toBeCloseTo(day.lowestInsideAirC, 9);
  });

  test('has a column beside the inside air only where that does not decide', () => {
    const inside = dayWith({ refersTo: 'insideAir' });
    expect(figureBesideInside([inside.day], inside.limits)).toBeNull();
    const electronics = dayWith({ refersTo: 'componentCase' });
    const beside = figureBesideInside([electronics.day], electronics.limits);
    expect(beside?.head).toBe('electronics');
    expect(beside?.valueC(electronics.day)).toBeCloseTo(electronics.day.peakElectronicsC, 9);
  });
});

describe('a remedy', () => {
  test('leaves the electronics hotter than the air inside where the limit is theirs', () => {
    const site = siteWith({ limits: { refersTo: 'componentCase' } });
    const list = remediesFor(site, 'wall');
    const now = figureOfWall(list, site.limits);
    expect(now.valueC).toBeCloseTo(evaluateDay(site, 'wall').peakElectronicsC, 9);
    expect(list.remedies.length).toBeGreaterThan(3);
    for (const remedy of list.remedies) {
      const { name, valueC } = figureWithRemedy(remedy, list, site.limits);
      expect(name).toBe('Electronics at the peak');
      expect(valueC).toBeGreaterThan(remedy.peakInsideAirC);
    }
  });

  test('that cools and leaves less room has come to the lower limit, one that warms to the upper one', () => {
    const { limits } = siteWith({ limits: { refersTo: 'componentCase', minC: 10, maxC: 50 } });
    const hot = { marginK: 1, peakInsideAirC: 45, coldDecides: false };
    expect(figureWithRemedy({ marginK: -2, peakInsideAirC: 43 }, hot, limits)).toMatchObject({ valueC: 8 });
    expect(figureWithRemedy({ marginK: -2, peakInsideAirC: 48 }, hot, limits)).toMatchObject({ valueC: 52 });
    const cold = { marginK: -1, peakInsideAirC: 45, coldDecides: true };
    expect(figureWithRemedy({ marginK: -2, peakInsideAirC: 44 }, cold, limits)).toMatchObject({ valueC: 8 });
    expect(figureWithRemedy({ marginK: 2, peakInsideAirC: 46 }, cold, limits)).toMatchObject({ valueC: 48 });
  });
});
