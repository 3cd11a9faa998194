import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  DEMO_SITE,
  type Finding,
  parseSite,
  parseSitingRules,
  rankWalls,
  remediesFor,
  type Site,
  SiteError,
  type SiteInput,
  type SitingRules,
  USUAL_SITING_RULES,
} from '../../../model/index.ts';
import { copperRunOhm } from '../../../model/siting/earth-conductor.ts';
import { gaugeAreaMm2, gaugeWithin } from '../../../model/wire-gauge.ts';
import { siteWith, wallFacing } from '../sites.ts';

function findingsOf(site: Site, rules?: SitingRules): Record<string, Finding> {
  const [wall] = rankWalls(site, { units: 'metric', ...(rules && { rules }) }).walls;
  return Object.fromEntries((wall?.findings ?? []).map((finding) => [finding.check, finding]));
}

const withWall = (wall: object, more: Partial<SiteInput> = {}) => siteWith({ walls: wallFacing(270, wall), ...more });

/** A copy of the usual rules to be spoilt. */
const rulesFile = () =>
  structuredClone(USUAL_SITING_RULES) as never as Record<string, Record<string, Record<string, unknown>>>;

describe('what nobody entered', () => {
  const findings = Object.values(findingsOf(withWall({})));

  test('is looked at on site, every bit of it, and never passes', () => {
    expect(findings.map(({ check }) => check).sort()).toEqual(Object.keys(USUAL_SITING_RULES.checks).sort());
    expect(findings.filter(({ status }) => status !== 'look').map(({ check }) => check)).toEqual(['mountHeight']);
  });

  test('each check says where its threshold comes from, and whether it bars a wall', () => {
    for (const { check, origin, hard } of findings) {
      expect(origin).toBe(USUAL_SITING_RULES.checks[check].origin);
      expect(hard).toBe(USUAL_SITING_RULES.checks[check].hard);
    }
  });

  test('the verdict spells out the hard ones that come first and counts the others', () => {
    const { verdict, best } = rankWalls(withWall({}));
    expect(best).toBe('wall');
    expect(verdict).toMatch(
      /To be checked first: run to the earth electrode[^;]*; [^;]*; run to the incoming cable|To be checked first: run to the earth electrode/,
    );
    expect(verdict).toMatch(/; and 7 checks more on site\./);
  });
});

describe('clearances', () => {
  const clear = { meterM: 2, gasVentM: 2, exhaustM: 2, sprinklerM: 2 };

  test('enough of them pass', () => {
    const { meter, gasVent, exhaust, sprinkler } = findingsOf(withWall({ clearances: clear }));
    expect([meter, gasVent, exhaust, sprinkler].map((finding) => finding?.status)).toEqual([
      'pass',
      'pass',
      'pass',
      'pass',
    ]);
  });

  test('too near to gas bars the wall, too near to a tap is to be put right', () => {
    const gas = rankWalls(withWall({ clearances: { ...clear, gasVentM: 0.5 } }));
    expect(gas.best).toBeNull();
    expect(gas.verdict).toMatch(/is out: clearance to gas meter, regulator and vent: /);
    const tap = rankWalls(withWall({ clearances: { ...clear, sprinklerM: 0.1 } }));
    expect(tap.best).toBe('wall');
    expect(tap.verdict).toMatch(/To be put right: clearance to sprinkler and hose tap: /);
  });

  test('between the two thresholds it is a matter for the eye', () => {
    expect(findingsOf(withWall({ clearances: { ...clear, exhaustM: 0.5 } }))['exhaust']?.status).toBe('look');
  });

  test('exactly the threshold passes', () => {
    const { passFromM } = USUAL_SITING_RULES.checks.meter;
    expect(findingsOf(withWall({ clearances: { ...clear, meterM: passFromM } }))['meter']?.status).toBe('pass');
  });
});

describe('cable', () => {
  const reach = (cableDistanceM: number) =>
    findingsOf(withWall({ cableDistanceM }, { constraints: { maxCableDistanceM: 30 } }))['cable'];

  test.each([
    [28.5, 'pass'],
    [28.6, 'look'],
    [30, 'look'],
    [30.1, 'fail'],
  ] as const)('%d m of 30 m with 1.5 m of slack: %s', (run, status) => {
    expect(reach(run)?.status).toBe(status);
  });

  test('without a reach nothing is claimed', () => {
    expect(findingsOf(withWall({ cableDistanceM: 5 }))['cable']).toMatchObject({ status: 'look' });
  });
});

describe('earth', () => {
  const earthed = (earthing: SiteInput['earthing'], electrodeDistanceM = 10) =>
    findingsOf(withWall({ electrodeDistanceM }, { earthing }));

  test('the run has the resistance of copper as hot as the hottest air of the day', () => {
    // Dry basin: 46 degC. 10 m of 10 mm2: 1/58 ohm at 20 degC, 10.2 % more at 46.
    const { resistance } = earthed({ conductorMm2: 10 });
    expect(resistance).toMatchObject({ status: 'pass', text: expect.stringContaining('0.019 Ω of copper at 46 °C') });
  });

  test.each([
    [16, 'pass'],
    [4, 'look'],
    [1.5, 'fail'],
  ] as const)('a conductor of %d mm2: %s', (conductorMm2, status) => {
    expect(earthed({ conductorMm2 })['conductor']?.status).toBe(status);
  });

  test('gauge first for who reads US units, area first for others', () => {
    const site = withWall({}, { earthing: { conductorMm2: 16 } });
    const text = (units: 'us' | 'metric') =>
      rankWalls(site, { units }).walls[0]?.findings.find(({ check }) => check === 'conductor')?.text;
    expect(text('us')).toBe('earthing conductor: 6 AWG (16.0 mm²) is at least 6 AWG (13.3 mm²)');
    expect(text('metric')).toBe('earthing conductor: 16.0 mm² (6 AWG) is at least 13.3 mm² (6 AWG)');
  });

  test('a long thin run is above what bonding wants, a very long one fails', () => {
    expect(earthed({ conductorMm2: 1 }, 12)['resistance']?.status).toBe('look');
    expect(earthed({ conductorMm2: 0.5 }, 100)['resistance']?.status).toBe('fail');
    // Neither is hard in the usual rules: the length of the run is.
    expect(rankWalls(withWall({ electrodeDistanceM: 12 }, { earthing: { conductorMm2: 0.5 } })).best).toBe('wall');
  });

  test('a shallow electrode is to be measured', () => {
    expect(earthed({ electrodeDepthM: 2.5 })['electrodeDepth']?.status).toBe('pass');
    expect(earthed({ electrodeDepthM: 1.2 })['electrodeDepth']).toMatchObject({
      status: 'look',
      text: expect.stringContaining('measure'),
    });
    expect(earthed({ electrodeDepthM: 0.3 })['electrodeDepth']?.status).toBe('fail');
  });

  test('resistance grows with length and heat and falls with area', () => {
    const run = fc.record({
      lengthM: fc.double({ min: 0.1, max: 1000, noNaN: true }),
      areaMm2: fc.double({ min: 0.5, max: 300, noNaN: true }),
      copperC: fc.double({ min: -40, max: 100, noNaN: true }),
    });
    fc.assert(
      fc.property(run, (one) => {
        const ohm = copperRunOhm(one);
        expect(copperRunOhm({ ...one, lengthM: 2 * one.lengthM })).toBeCloseTo(2 * ohm, 9);
        expect(copperRunOhm({ ...one, areaMm2: 2 * one.areaMm2 })).toBeCloseTo(ohm / 2, 9);
        expect(copperRunOhm({ ...one, copperC: one.copperC + 1 })).toBeGreaterThan(ohm);
      }),
    );
  });
});

describe('wire gauges', () => {
  // ASTM B258 and the tables of cable makers, mm2, values from memory.
  test.each([
    ['14 AWG', 2.08],
    ['12 AWG', 3.31],
    ['10 awg', 5.26],
    ['AWG 8', 8.37],
    ['6 AWG', 13.3],
    ['4 AWG', 21.2],
    ['2 AWG', 33.6],
    ['1/0 AWG', 53.5],
    ['4/0 AWG', 107],
  ] as const)('%s has %d mm2', (text, mm2) => {
    expect(Math.abs((gaugeAreaMm2(text) ?? 0) / mm2 - 1)).toBeLessThan(0.003);
    expect(gaugeWithin(mm2)).toBe(text.replace(/^AWG (.*)$/, '$1 AWG').toUpperCase());
  });

  test('what is no gauge is none', () => {
    for (const text of ['6', 'AWG', '37 AWG', '5/0 AWG', '-6 AWG', '6 AWG 6']) expect(gaugeAreaMm2(text)).toBeNull();
  });

  test('a site file may name one', () => {
    expect(siteWith({ earthing: { conductorMm2: '6 AWG' } }).earthing.conductorMm2).toBeCloseTo(13.3, 2);
    expect(siteWith({ earthing: { conductorMm2: '16 mm^2' } }).earthing.conductorMm2).toBe(16);
    expect(() => siteWith({ earthing: { conductorMm2: 'thick' } })).toThrow(/earthing\.conductorMm2: "thick" .*6 AWG/);
  });
});

describe("a company's own rules", () => {
  test('the usual file is a good one', () => {
    expect(parseSitingRules(USUAL_SITING_RULES)).toEqual(USUAL_SITING_RULES);
  });

  test('decide thresholds and what is hard', () => {
    const own = rulesFile();
    own['checks'] = { ...own['checks'], sprinkler: { hard: true, passFromM: 3, failBelowM: 3, origin: 'ours' } };
    const rules = parseSitingRules(own);
    const site = withWall({ clearances: { sprinklerM: 2 } });
    expect(rankWalls(site).best).toBe('wall');
    expect(rankWalls(site, { rules }).best).toBeNull();
    expect(findingsOf(site, rules)['sprinkler']).toMatchObject({ status: 'fail', hard: true, origin: 'ours' });
  });

  test('are refused with every problem and what is allowed', () => {
    const own = rulesFile() as Record<string, unknown>;
    const checks = own['checks'] as Record<string, Record<string, unknown>>;
    delete own['name'];
    checks['gasVent'] = { hard: 'yes', origin: 'ours', passFromM: -1, failBelowM: 0 };
    checks['cable'] = { hard: true, origin: 'ours', slackM: 1, spare: 2 };
    delete checks['meter'];
    const messages = problemsOf(own);
    expect(messages).toHaveLength(5);
    expect(messages.join('\n')).toMatch(/rules\.name: is missing/);
    expect(messages.join('\n')).toMatch(/rules\.checks\.gasVent\.hard: "yes" will not do; allowed: true, false/);
    expect(messages.join('\n')).toMatch(
      /rules\.checks\.gasVent\.passFromM: -1 will not do; allowed: a number from 0 to 100/,
    );
    expect(messages.join('\n')).toMatch(/rules\.checks\.cable\.spare: unknown field; allowed: hard, slackM, origin/);
    expect(messages.join('\n')).toMatch(
      /rules\.checks\.meter: is missing; allowed: an object with hard, passFromM, failBelowM, origin/,
    );
  });

  test('thresholds the wrong way round are refused', () => {
    const own = rulesFile();
    own['checks'] = { ...own['checks'], exhaust: { hard: false, passFromM: 1, failBelowM: 2, origin: 'ours' } };
    expect(problemsOf(own)).toEqual([
      expect.stringMatching(/rules\.checks\.exhaust\.failBelowM: 2 is above passFromM/),
    ]);
  });

  test.each([[null], [[]], ['rules'], [5], [undefined]])('%j is no set of rules', (input) => {
    expect(problemsOf(input)[0]).toMatch(/^rules: .*an object with name, note, checks/);
  });
});

test('the wall of the demo passes every check; on a wall too near to gas every remedy stays forbidden', () => {
  const { walls, best } = rankWalls(parseSite(DEMO_SITE));
  const south = walls.find(({ name }) => name === best);
  expect(south?.findings.every(({ status }) => status === 'pass')).toBe(true);
  expect(
    remediesFor(withWall({ clearances: { gasVentM: 0.2 } }), 'wall').remedies.every(({ permitted }) => !permitted),
  ).toBe(true);
});

function problemsOf(input: unknown): string[] {
  try {
    parseSitingRules(input);
    return [];
  } catch (error) {
    if (!(error instanceof SiteError)) throw error;
    return error.problems.map(({ message }) => message);
  }
}
