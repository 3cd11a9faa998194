/** The decision in words, with what goes with it and what follows from remedies and from guessed inputs. */
import { describe, expect, test } from 'vitest';
import {
  type ChoiceConfidence,
  choiceConfidence,
  DEMO_SITE,
  evaluateDay,
  leastEffortWords,
  parseSite,
  type Remedy,
  rankWalls,
  remediesFor,
  surenessSentence,
  USUAL_SITING_RULES,
  wayOutSentence,
} from '../../../model/index.ts';
import { siteWith, wallFacing } from '../sites.ts';

const demo = parseSite(DEMO_SITE);
const marginOf = (text: string) => Number(/(\d+\.\d) K (inside|past) the limit/.exec(text)?.[1]);

describe('what goes with the decision', () => {
  test('the next best wall, with how much hotter it is and its own room', () => {
    const { grounds, verdict, decision, walls } = rankWalls(demo, { units: 'metric' });
    const [first, next] = walls;
    const hotter = ((next?.day.peakInsideAirC ?? 0) - (first?.day.peakInsideAirC ?? 0)).toFixed(1);
    expect(grounds[0]).toMatch(
      new RegExp(`^Next best: wall "east", ${hotter} K hotter, \\d\\.\\d K past the limit\\.$`),
    );
    expect(marginOf(grounds[0] ?? '')).toBeCloseTo(-(next?.day.marginK ?? 0), 1);
    expect(verdict).toBe([decision, ...grounds].join(' '));
  });

  test('walls alike are not told apart; a single permitted one is said to be alone; a single wall has no next', () => {
    const alike = [90, 90.4].map((azimuthDeg, k) => ({ name: `w${k}`, azimuthDeg }));
    expect(rankWalls(siteWith({ walls: alike })).grounds[0]).toMatch(/^Next best: wall "w[01]", about as warm, /);
    const far = { name: 'far', azimuthDeg: 90, electrodeDistanceM: 90 };
    expect(rankWalls(siteWith({ walls: [...wallFacing(270), far] })).grounds[0]).toBe('No other wall is permitted.');
    expect(rankWalls(siteWith()).verdict).not.toMatch(/Next best|No other wall/);
  });

  test('a limit on outside air gives the next wall no room of its own', () => {
    const site = siteWith({
      walls: [...wallFacing(270), { name: 'b', azimuthDeg: 0 }],
      limits: { refersTo: 'outsideAir' },
    });
    expect(rankWalls(site).grounds[0]).toMatch(/^Next best: wall "wall", [\d.]+ .F hotter\.$/);
  });
});

describe('where the lower limit decides', () => {
  // A summer's day beyond the polar circle that is too cold for the electronics.
  const cold = siteWith({
    place: { latitudeDeg: 70 },
    climate: { designDay: { date: '2026-06-21', maxC: 5, dailyRangeK: 12, dewPointC: -8 } },
    limits: { minC: 10, maxC: 60 },
    walls: [
      { name: 'north', azimuthDeg: 0 },
      { name: 'south', azimuthDeg: 180 },
    ],
  });
  const ranking = rankWalls(cold, { units: 'metric' });

  test('the next wall is told by how cold it gets', () => {
    const [first, next] = ranking.walls;
    const colder = ((first?.day.coldMarginK ?? 0) - (next?.day.coldMarginK ?? 0)).toFixed(1);
    expect(ranking.decision).toMatch(/falls to .* past the limit/);
    expect(ranking.grounds[0]).toMatch(colder === '0.0' ? /about as warm/ : /colder at its coldest|about as warm/);
    expect(ranking.grounds.join(' ')).not.toMatch(/hotter/);
  });

  test('remedies gain what they warm, and leave the room to the nearer limit', () => {
    const list = remediesFor(cold, ranking.walls[0]?.name ?? '', { units: 'metric' });
    for (const remedy of [...list.remedies, ...(list.bestPair ? [list.bestPair] : [])]) {
      expect(Math.abs(remedy.gainK)).toBeLessThan(15);
      expect(remedy.marginK).toBeCloseTo(list.marginK + remedy.gainK, 9);
      expect(remedy.withinLimits).toBe(remedy.marginK >= 0);
    }
  });

  test('electronics fall and reach in the plural', () => {
    const electronics = (limits: object) => rankWalls(siteWith({ limits: { refersTo: 'componentCase', ...limits } }));
    expect(electronics({ maxC: 40 }).decision).toMatch(/the electronics reach \d/);
    expect(electronics({ minC: 60, maxC: 150 }).decision).toMatch(/the electronics fall to \d/);
  });
});

describe('the coldest night', () => {
  const night = (minC: number, limitC: number, powerW = 15) =>
    rankWalls(
      siteWith({
        climate: { sample: 'dry-basin', coldNight: { minC } },
        limits: { minC: limitC, maxC: 90 },
        box: { powerW },
      }),
      { units: 'metric' },
    ).grounds.find((ground) => ground.startsWith('Mind the cold'));

  test('is told where it passes the lower limit, running or after an outage, and only there', () => {
    expect(night(-5, -20)).toBeUndefined();
    expect(night(-5, -4)).toMatch(
      /^Mind the cold: in the coldest night the air inside falls to -\d\.\d °C after an outage, /,
    );
    expect(night(-25, 10)).toMatch(/ while it runs, \d+\.\d K past the lower limit of 10\.0 °C\.$/);
  });
});

describe('how far it holds', () => {
  const choice = (walls: ChoiceConfidence['walls'], samples = 100) => ({ walls, samples, assumption: '' });
  const south = { name: 'south', bestShare: 0.97, withinShare: 0.93 };
  const east = { name: 'east', bestShare: 0.03, withinShare: 0.2 };

  test('counts of the same guesses, of the wall that the ranking picks', () => {
    expect(surenessSentence(choice([east, south]), { best: 'south' })).toBe(
      'In 93 of 100 guesses of the inputs wall "south" stays inside the limits on its design day, and in 97 of 100 it stays the best wall.',
    );
    expect(surenessSentence(choice([{ ...south, withinShare: 0.1 }, east]), { best: 'south' })).toMatch(
      /^In 10 of 100 .*, but in 97 of 100 it stays the best wall\.$/,
    );
    expect(surenessSentence(choice([south]), { best: 'south' })).not.toMatch(/best/);
    expect(surenessSentence(choice([]), { best: null })).toBe('');
  });

  test('what is rare is not told as never, nor what is frequent as always', () => {
    const said = (withinShare: number) => surenessSentence(choice([{ ...south, withinShare }]), { best: 'south' });
    expect([0, 0.004, 0.998, 1].map(said).map((text) => /^In (.*?) guesses/.exec(text)?.[1])).toEqual([
      'none of 100',
      'fewer than 1 of 100',
      'nearly all 100',
      'all 100',
    ]);
  });

  test('the share inside falls with the limit, and follows the wall', () => {
    const shares = (maxC: number) => {
      const steps = choiceConfidence(parseSite({ ...DEMO_SITE, limits: { ...DEMO_SITE.limits, maxC } }), {
        samples: 12,
      });
      for (let step = steps.next(); ; step = steps.next()) {
        if (step.done) return Object.fromEntries(step.value.walls.map(({ name, withinShare }) => [name, withinShare]));
      }
    };
    expect(shares(120)).toEqual({ east: 1, south: 1, west: 1 });
    expect(shares(30)).toEqual({ east: 0, south: 0, west: 0 });
    const between = shares(66);
    expect(between['south']).toBeGreaterThan(between['west'] as number);
  });
});

describe('what to do', () => {
  const hot = siteWith({ limits: { maxC: 68 } });
  const wayOut = (site: typeof hot, rules = USUAL_SITING_RULES) => {
    const ranking = rankWalls(site, { units: 'metric', rules });
    const list = remediesFor(site, ranking.walls[0]?.name ?? '', { units: 'metric', rules });
    return { ranking, list, text: wayOutSentence(site, ranking, list, 'metric') };
  };
  const parts = ['none', 'small parts', 'a made part', 'another unit', 'building work'];
  const effort = ({ effort: { parts: of, hours } }: Remedy) => 100 * parts.indexOf(of) + hours;

  test('nothing where the first wall will do', () => {
    expect(wayOut(demo)).toMatchObject({ text: '', list: { least: null } });
  });

  test('the least effort that suffices is told, and nothing that suffices takes less', () => {
    const { text, list } = wayOut(hot);
    const { least } = list;
    if (least === null) throw new Error('a hood suffices here');
    const enough = list.remedies.filter(
      ({ id, permitted, withinLimits }) => permitted && withinLimits && id !== 'vents',
    );
    expect(enough.length).toBeGreaterThan(1);
    for (const one of enough) expect(effort(one)).toBeGreaterThanOrEqual(effort(least));
    expect(text).toContain(`What suffices on wall "wall" ${leastEffortWords(list)}: ${least.text} (`);
    expect(text).toContain(least.caution);
    expect(marginOf(text)).toBeCloseTo(least.marginK, 1);
  });

  test('openings in the box are told only where nothing else suffices', () => {
    const site = siteWith({ box: { widthM: 0.28, depthM: 0.12, solarAbsorptance: 0.5, powerW: 24 } });
    const { list } = wayOut(site);
    expect(list.least?.id).toContain('vents');
    const closed = list.remedies.filter(({ id, permitted }) => id !== 'vents' && permitted);
    expect(closed.some(({ withinLimits }) => withinLimits)).toBe(false);
  });

  test('openings that would do with less are passed over, and the sentence says so', () => {
    // Only the west wall of the demo can be earthed.
    const far = DEMO_SITE.walls.map((wall) => (wall.name === 'west' ? wall : { ...wall, electrodeDistanceM: 30 }));
    const { text, list } = wayOut(parseSite({ ...DEMO_SITE, walls: far }));
    const { least, openingsPassedOver, remedies } = list;
    const openings = remedies.find(({ id }) => id === 'vents');
    if (least === null || openings === undefined) throw new Error('both suffice here');
    expect([least.id.includes('vents'), openings.permitted && openings.withinLimits]).toEqual([false, true]);
    expect(effort(openings)).toBeLessThan(effort(least));
    expect(openingsPassedOver).toBe(true);
    expect(text).toMatch(/^What suffices on wall "west" without openings in the box, with the least effort: /);
    expect(leastEffortWords({ openingsPassedOver: false })).toBe('with the least effort');
  });

  test('two together are told where no one suffices alone', () => {
    const best = Math.max(...remediesFor(hot, 'wall').remedies.map(({ peakInsideAirC }) => -peakInsideAirC));
    const { text, list } = wayOut(siteWith({ limits: { maxC: -best - 0.2 } }));
    expect(list.least?.id.split('+')).toHaveLength(2);
    expect(list.least?.withinLimits).toBe(true);
    expect(text).toContain(list.least?.text);
  });

  test('where nothing suffices it says what comes nearest, and the limit that a unit would need', () => {
    const { text, list } = wayOut(siteWith({ limits: { maxC: 47 } }));
    expect(list.least).toBeNull();
    expect(text).toContain(`The most, ${list.bestPair?.text}, leaves it`);
    const needed = Number(/A unit rated for (\d+)\.0 °C would do/.exec(text)?.[1]);
    const { peakInsideAirC } = evaluateDay(siteWith(), 'wall');
    expect(needed).toBeGreaterThanOrEqual(peakInsideAirC);
    expect(needed).toBeLessThan(peakInsideAirC + 1);
  });

  test('a wall that is too high is permitted at another height; one without an electrode is not', () => {
    const high = wayOut(siteWith({ box: { mountHeightM: 2.4 }, limits: { maxC: 90 } }));
    expect(high.ranking.best).toBeNull();
    expect(high.text).toMatch(/^What would make wall "wall" do: the middle of the box at .*; then it is permitted and/);
    const far = wayOut(siteWith({ walls: wallFacing(270, { electrodeDistanceM: 80 }) }));
    expect(far.text).toMatch(/another earth electrode or another cable entry is needed\.$/);
  });

  test('nothing done to the box changes the outside air', () => {
    expect(wayOut(siteWith({ limits: { maxC: 40, refersTo: 'outsideAir' } })).text).toMatch(
      /^Nothing done to box or wall/,
    );
  });

  test("a company's own rules decide what is permitted among remedies and choices", () => {
    const site = siteWith({ box: { mountHeightM: 2.4 }, limits: { maxC: 62 } });
    const rules = structuredClone(USUAL_SITING_RULES);
    Object.assign(rules.checks.mountHeight, { hard: false });
    const choices = (own?: typeof rules) => {
      const steps = choiceConfidence(site, { samples: 2, rules: own });
      for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value.walls.length;
    };
    expect([choices(), choices(rules)]).toEqual([0, 1]);
    const strict = remediesFor(site, 'wall').remedies.find(({ id }) => id === 'whiteHood');
    const lax = remediesFor(site, 'wall', { rules }).remedies.find(({ id }) => id === 'whiteHood');
    expect([strict?.permitted, lax?.permitted]).toEqual([false, true]);
  });
});
