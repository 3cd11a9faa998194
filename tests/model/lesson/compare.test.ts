/** Two boxes that differ in one thing. */
import { describe, expect, test } from 'vitest';
import {
  compareBoxes,
  DIFFERENCE_KINDS,
  type DifferenceInput,
  differenceChoices,
  evaluateDay,
  LEDGER_PATHS,
  playDay,
  shippedLesson,
  siteLinkFragment,
} from '../../../model/index.ts';
import { shadeMemory } from '../../../model/siting/wall-shade.ts';
import { siteWith } from '../sites.ts';

const { site } = shippedLesson('four-walls');
const options = { shades: shadeMemory() };
const compare = (difference: DifferenceInput, wallName = 'west') =>
  compareBoxes({ site, wallName, difference, options });

describe('one difference', () => {
  test('box A and box B are what an evaluation of each says', () => {
    const { a, b, peakDifferenceK } = compare({ kind: 'power', powerW: 28 });
    expect(a.played.result).toEqual(evaluateDay(site, 'west'));
    expect(b.played.result).toEqual(evaluateDay({ ...site, box: { ...site.box, powerW: 28 } }, 'west'));
    expect(peakDifferenceK).toBeCloseTo(b.played.result.peakInsideAirC - a.played.result.peakInsideAirC, 10);
  });

  test('altitude changes pressure and sky and keeps the air', () => {
    const { a, b, notes } = compare({ kind: 'altitude', altitudeM: 2600 });
    expect(b.played.result.outsideAirC).toEqual(a.played.result.outsideAirC);
    const noon = 144;
    expect(b.played.weather[noon]?.dni).toBeGreaterThan((a.played.weather[noon]?.dni ?? 0) + 10);
    expect(b.played.weather[noon]?.skyLongwaveWm2).toBeLessThan(a.played.weather[noon]?.skyLongwaveWm2 ?? 0);
    expect(notes.map(({ metric }) => metric).join(' ')).toMatch(
      /air temperature is kept, because the climate names it/,
    );
  });

  test('another climate keeps the date and the way of the sun', () => {
    const { a, b } = compare({ kind: 'climate', to: 'humid-coast' });
    expect(b.played.result.date).toBe(a.played.result.date);
    expect(b.played.suns).toEqual(a.played.suns);
    expect(b.played.site.place).toEqual(a.played.site.place);
  });

  test('the wind alone changes', () => {
    const { a, b } = compare({ kind: 'wind', windMs: 7 });
    const still = ({ weather }: typeof a.played) => weather.map(({ windMs: _, ...rest }) => rest);
    expect(still(b.played)).toEqual(still(a.played));
    expect(b.played.weather[0]?.windMs).toBe(7);
  });

  test.each(['metric', 'us'] as const)('peaks and their difference add up to the last digit in %s units', (units) => {
    for (const kind of ['whitePaint', 'blackPaint'] as const) {
      const { summary } = compare({ kind: 'finish', to: kind });
      const figures =
        /peaks at ([\d.]+) °[CF] at .*: at ([\d.]+) °[CF] at [^,]*, ([\d.]+) (?:K|°F) (hotter|cooler)/.exec(
          summary[units],
        );
      const [first, second, size] = (figures ?? []).slice(1, 4).map(Number) as [number, number, number];
      const apart = figures?.[4] === 'cooler' ? -size : size;
      expect(Math.abs(second - first - apart)).toBeLessThan(0.11);
      expect(figures?.[1]).toMatch(/\.\d$/);
    }
  });

  test('there and back is the same box', () => {
    const white = compare({ kind: 'finish', to: 'whitePaint' });
    const back = compareBoxes({
      site: white.b.site,
      wallName: 'west',
      difference: { kind: 'finish', to: 'lightGreyPaint' },
      options,
    });
    expect(back.peakDifferenceK).toBeCloseTo(-white.peakDifferenceK, 6);
    expect(back.ageingFactor * white.ageingFactor).toBeCloseTo(1, 6);
  });

  test('a battery lives half as long 10 K hotter', () => {
    const { a, b } = compare({ kind: 'power', powerW: 40 });
    const life = (insideAirC: number[]) =>
      5 / (insideAirC.reduce((sum, c) => sum + 2 ** (Math.max(0, c - 25) / 10), 0) / insideAirC.length);
    expect(a.ageing.batteryYears).toBeCloseTo(life(a.played.result.insideAirC), 9);
    expect(b.ageing.batteryYears).toBeCloseTo(life(b.played.result.insideAirC), 9);
  });

  test.each(DIFFERENCE_KINDS)('%s: what is offered fits, differs and has words', (kind) => {
    const choices = differenceChoices(site, 'west', kind);
    expect(choices.length).toBeGreaterThan(0);
    const pair = compare(choices.at(-1) as DifferenceInput);
    expect(JSON.stringify([pair.b.site, pair.b.wallName])).not.toBe(JSON.stringify([pair.a.site, pair.a.wallName]));
    for (const units of ['metric', 'us'] as const) {
      expect(pair.a.label[units]).not.toBe(pair.b.label[units]);
      expect(pair.summary[units]).not.toMatch(/undefined|NaN/);
    }
    // Box B can be sent on as a site of its own.
    expect(() => siteLinkFragment(pair.b.site)).not.toThrow();
  });
});

describe('what is refused', () => {
  test.each([
    [{ kind: 'power', powerW: -4 }, 'difference.powerW: -4 is below 0; allowed: 0 to 2000 W'],
    [{ kind: 'wall', to: 'attic' }, 'difference.to: there is no wall "attic"; allowed: north, east, south'],
    [{ kind: 'eave', depthM: 0 }, 'difference: box B is as box A already'],
    [{ kind: 'climate', to: 'dry-basin' }, 'difference: box B is as box A already'],
    [{ kind: 'paint' }, 'difference.kind: "paint" is no difference; allowed: wall, finish, hood'],
    [{ kind: 'power', powerW: 5, colour: 'red' }, 'difference.colour: unknown field'],
  ])('%j', (difference, message) => {
    expect(() => compare(difference as DifferenceInput)).toThrow(message);
  });

  test('a wall that the site has not', () => {
    expect(() => compare({ kind: 'power', powerW: 5 }, 'attic')).toThrow('there is no wall "attic"');
  });
});

describe('a played day', () => {
  const played = playDay(
    siteWith({ box: { hood: {}, battery: { massKg: 6 }, vents: { lowAreaM2: 0.002, highAreaM2: 0.002 } } }),
    'wall',
  );

  test('is the evaluated one', () => {
    expect(played.result).toEqual(evaluateDay(played.site, 'wall'));
    const peak = played.result.insideAirC.indexOf(played.result.peakInsideAirC);
    expect(played.ledgers[peak]).toEqual(played.result.ledgerAtPeak);
  });

  test('balances at every step: what comes in, goes out and is stored sums to nothing', () => {
    for (const ledger of played.ledgers) {
      const flows = LEDGER_PATHS.map((path) => ledger[path]);
      const sum = flows.reduce((total, watts) => total + watts, 0);
      expect(Math.abs(sum)).toBeLessThan(1e-3 * flows.reduce((total, watts) => total + Math.abs(watts), 0));
    }
  });

  test('each path of the ledger is the sum of its ways', () => {
    for (const path of ['convection', 'longwaveSky', 'longwaveGround', 'mounting', 'hood', 'vents'] as const) {
      const ways = played.border.filter((way) => way.path === path);
      expect(ways.length).toBeGreaterThan(0);
      played.ledgers.forEach((ledger, k) => {
        expect(ways.reduce((total, { inwardW }) => total + (inwardW[k] as number), 0)).toBeCloseTo(ledger[path], 9);
      });
    }
  });

  test('the sun on the faces is that of the ledger, and the hood takes the rest', () => {
    played.ledgers.forEach((ledger, k) => {
      const taken = Object.values(played.absorbedW).reduce((total, watts) => total + (watts[k] as number), 0);
      expect(taken).toBeCloseTo(ledger.sunBeam + ledger.sunDiffuse + ledger.sunReflected, 9);
    });
    expect(Math.max(...played.hoodAbsorbedW.front)).toBeGreaterThan(1);
    expect(Math.max(...played.absorbedW.front)).toBe(0);
  });
});
