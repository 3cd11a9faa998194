/** Whatever is put in for a site: a site or one error with problems, soon; what is let in can be ranked. */
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import {
  DEMO_SITE,
  evaluateColdNight,
  parsePlainSite,
  parseSite,
  rankWalls,
  type Site,
  SiteError,
} from '../../model/index.ts';
import { changesOf, LONGEST_MS, oddValue, planted, processorMs } from './odd-values.ts';
import { PATIENCE_MS, rounds } from './rounds.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const FULL = {
  ...DEMO_SITE,
  climate: { designDay: { date: '2026-07-05', maxC: 44, dailyRangeK: 16, dewPointC: 9, windMs: 2 } },
  box: { ...DEMO_SITE.box, hood: { gapM: 0.03 }, vents: { lowAreaM2: 0.002, highAreaM2: 0.002 } },
};

/** Reads it, and holds what comes of it to the promise. */
function read(input: unknown, parse: (input: unknown) => Site = parseSite): Site | null {
  let site: Site | null = null;
  const ms = processorMs(() => {
    try {
      site = parse(input);
    } catch (error) {
      expect(error).toBeInstanceOf(SiteError);
      const { problems } = error as SiteError;
      expect(problems.length).toBeGreaterThan(0);
      for (const { message, wrong } of problems) {
        expect(message.length).toBeGreaterThan(0);
        // A message is read by a person: it does not repeat a novel.
        expect(message.length).toBeLessThan(2000);
        expect(wrong).not.toBe('');
      }
    }
  });
  expect(ms).toBeLessThan(LONGEST_MS);
  expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  return site;
}

describe('a site file with odd values', () => {
  test('is read or refused with every problem, by both doors', () => {
    fc.assert(
      fc.property(fc.constantFrom(DEMO_SITE, FULL), changesOf(oddValue), (right, changes) => {
        const input = planted(right, changes);
        read(input);
        read(input, parsePlainSite);
      }),
      rounds(1500),
    );
  });

  test('is read or refused when it is no site at all', () => {
    fc.assert(
      fc.property(oddValue, (input) => {
        read(input);
      }),
      rounds(500),
    );
  });

  test('has a ranking and a coldest night of plain numbers when it is let in', () => {
    let letIn = 0;
    const mild = fc.oneof(
      fc.constantFrom(-0, 0, 1, 5e-324, 1e-9, '3 ft', null, [], {}),
      fc.integer({ min: -90, max: 180 }),
    );
    fc.assert(
      fc.property(fc.constantFrom(DEMO_SITE, FULL), changesOf(fc.oneof(mild, oddValue)), (right, changes) => {
        const site = read(planted(right, changes));
        if (site === null) return;
        letIn += 1;
        try {
          const ranking = rankWalls(site);
          for (const { day } of ranking.walls) expect(Number.isFinite(day.peakInsideAirC)).toBe(true);
          const cold = evaluateColdNight(site, ranking.walls[0]?.name ?? '');
          expect(Number.isFinite(cold.running.insideAirC)).toBe(true);
        } catch (error) {
          // Some things only the computation finds, such as a date that the place does not have.
          if (!(error instanceof SiteError)) throw error;
        }
      }),
      rounds(600),
    );
    // A property of nothing would hold, too.
    expect(letIn).toBeGreaterThan(20);
  });
});
