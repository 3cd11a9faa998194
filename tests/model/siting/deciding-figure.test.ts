/** The temperature that a margin is the margin of, against the day's own curves. */
import { describe, expect, test } from 'vitest';
import {
  decidingFigure,
  evaluateDay,
  figureBesideInside,
  figureOf,
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
    const now = figureOf(list, site.limits);
    expect(now.valueC).toBeCloseTo(evaluateDay(site, 'wall').peakElectronicsC, 9);
    expect(list.remedies.length).toBeGreaterThan(3);
    for (const remedy of list.remedies) {
      const { name, valueC } = figureOf(remedy, site.limits);
      expect(name).toBe('Electronics at the peak');
      expect(valueC).toBeGreaterThan(remedy.peakInsideAirC);
    }
  });

  test('tells by itself to which limit its margin is, also where it heals a box that was too cold', () => {
    const limits = { minC: 10, maxC: 60 };
    const cold = siteWith({
      place: { latitudeDeg: 70 },
      climate: { designDay: { date: '2026-06-21', maxC: 5, dailyRangeK: 12, dewPointC: -8 } },
      limits,
      walls: [{ name: 'wall', azimuthDeg: 0 }],
    });
    const list = remediesFor(cold, 'wall', { units: 'metric' });
    expect(list.coldDecides).toBe(true);
    for (const remedy of list.remedies) {
      const { name, valueC } = figureOf(remedy, cold.limits);
      expect(name).toBe('Lowest inside air');
      expect(valueC).toBeCloseTo(10 + remedy.marginK, 9);
      expect(valueC).toBeLessThan(remedy.peakInsideAirC);
    }
    expect(figureOf({ marginK: 3, coldDecides: false }, cold.limits)).toMatchObject({ valueC: 57, isInsidePeak: true });
  });
});
