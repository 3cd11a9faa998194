import { describe, expect, test } from 'vitest';
import { DEMO_SITE, evaluateDay, parseSite, type Ranking, rankWalls } from '../../../model/index.ts';
import { siteWith } from '../sites.ts';

const names = (ranking: Ranking) => ranking.walls.map(({ name }) => name);

describe('the demo site: the interesting decision', () => {
  const site = parseSite(DEMO_SITE);
  const ranking = rankWalls(site, { units: 'metric' });

  test('the wall with the electrode is the hottest, the coolest one cannot be earthed', () => {
    const byPeak = [...ranking.walls].sort((a, b) => a.day.peakInsideAirC - b.day.peakInsideAirC);
    expect(byPeak[0]?.name).toBe('north');
    expect(byPeak[0]?.feasible).toBe(false);
    expect(byPeak[3]?.name).toBe('west');
    expect(ranking.best).toBe('south');
    expect(ranking.withinLimits).toBe(true);
  });

  test('permitted walls stand before others, the coolest first', () => {
    expect(names(ranking)).toEqual(['south', 'east', 'west', 'north']);
    expect(ranking.walls.map(({ rank }) => rank)).toEqual([1, 2, 3, 4]);
  });

  test('the verdict names wall, peak, room and limit, and why the cooler wall is out', () => {
    expect(ranking.verdict).toMatch(
      /^Use wall "south": the air inside reaches 6\d\.\d °C, \d\.\d K inside the limit of 65\.0 °C\./,
    );
    expect(ranking.verdict).toMatch(
      /Wall "north" would be \d\.\d K cooler, but is out: run to the earth electrode: 21\.00 m exceeds 15\.24 m\./,
    );
  });

  test('each wall has its reason, in its own numbers', () => {
    expect(ranking.walls[2]?.reason).toMatch(/hotter than wall "south"\. Faces W: \d\.\d h of direct sun/);
    expect(ranking.walls[3]?.reason).toMatch(/^Not permitted: run to the earth electrode/);
  });

  test('the summary of a wall is that of its day', () => {
    const day = evaluateDay(site, 'west');
    const west = ranking.walls.find(({ name }) => name === 'west');
    expect(day).toMatchObject(west?.day ?? {});
    expect(west?.day.peakInsideAirC).toBe(Math.max(...day.insideAirC));
    expect(day.stepsUtc[day.insideAirC.indexOf(day.peakInsideAirC)]).toEqual(day.peakAtUtc);
  });

  test('assumptions come with it: the climate, what was filled in, what the model takes for granted', () => {
    const texts = ranking.assumptions.map(({ text }) => text);
    expect(texts[0]).toMatch(/Dry desert basin/);
    expect(texts).toContainEqual(expect.stringMatching(/solar absorptance of the wall: 0\.50/));
    expect(ranking.assumptions.every(({ origin }) => origin.length > 0)).toBe(true);
    expect(texts).toContainEqual(expect.stringMatching(/clear, and the days before/));
  });

  test('in US units for a place there', () => {
    expect(rankWalls(site).verdict).toMatch(/149 °F/);
  });
});

describe('constraints', () => {
  const walls = [
    { name: 'near', azimuthDeg: 0, electrodeDistanceM: 5, cableDistanceM: 40 },
    { name: 'far', azimuthDeg: 0, electrodeDistanceM: 50, cableDistanceM: 5 },
    { name: 'unknown', azimuthDeg: 0 },
  ];

  test('a run beyond its limit fails, one that nobody entered is to be looked at', () => {
    const ranking = rankWalls(siteWith({ walls, constraints: { maxCableDistanceM: 30 } }));
    const statuses = Object.fromEntries(
      ranking.walls.map(({ name, findings }) => [name, Object.fromEntries(findings.map((f) => [f.check, f.status]))]),
    );
    expect(statuses['near']).toMatchObject({ electrode: 'pass', cable: 'fail', mountHeight: 'pass' });
    expect(statuses['far']).toMatchObject({ electrode: 'fail', cable: 'pass', mountHeight: 'pass' });
    expect(statuses['unknown']).toMatchObject({ electrode: 'look', cable: 'look', mountHeight: 'pass' });
    expect(ranking.best).toBe('unknown');
  });

  test('no wall left: no answer, and the coolest is named with its reason', () => {
    const ranking = rankWalls(siteWith({ walls: walls.slice(1, 2) }));
    expect(ranking.best).toBeNull();
    expect(ranking.withinLimits).toBe(false);
    expect(ranking.verdict).toMatch(
      /^No wall satisfies the constraints\. The coolest, wall "far", is out: run to the earth/,
    );
  });

  test('a limit that is lifted rules nothing out', () => {
    const lifted = { maxElectrodeDistanceM: null, maxCableDistanceM: null, mountHeightM: null };
    const ranking = rankWalls(siteWith({ walls, constraints: lifted as never }));
    expect(ranking.walls.every(({ feasible }) => feasible)).toBe(true);
    const limited = ranking.walls.flatMap(({ findings }) => findings.filter(({ status }) => status !== 'look'));
    expect(limited).toEqual([]);
  });

  test('the mounting height is checked', () => {
    const ranking = rankWalls(siteWith({ box: { mountHeightM: 2.5 } }));
    expect(ranking.walls[0]?.findings).toContainEqual(
      expect.objectContaining({ check: 'mountHeight', status: 'fail' }),
    );
  });
});

describe('order', () => {
  test('the upper limit decides while the lower one is kept: a mild night is no reason for a hot wall', () => {
    const walls = [0, 90, 180, 270].map((azimuthDeg) => ({ name: `w${azimuthDeg}`, azimuthDeg }));
    const site = siteWith({
      climate: { sample: 'high-plateau' },
      place: { latitudeDeg: 20, altitudeM: 2600 },
      limits: { minC: 0, maxC: 85 },
      walls,
    });
    const { walls: ranked } = rankWalls(site);
    const peaks = ranked.map(({ day }) => day.peakInsideAirC);
    expect(peaks).toEqual([...peaks].sort((a, b) => a - b));
  });

  test('a wall that falls below the lower limit stands behind one that does not', () => {
    const walls = [
      { name: 'open', azimuthDeg: 0 },
      { name: 'sheltered', azimuthDeg: 0, horizon: [[0, 60] as [number, number]] },
    ];
    const climate = { designDay: { date: '2026-01-15', maxC: -5, dailyRangeK: 10, dewPointC: -25 } };
    const cold = siteWith({ climate, walls, box: { powerW: 10 }, limits: { minC: -10, maxC: 65 } });
    const open = evaluateDay(cold, 'open');
    const sheltered = evaluateDay(cold, 'sheltered');
    expect(sheltered.lowestInsideAirC).toBeGreaterThan(open.lowestInsideAirC);
    const between = (open.lowestInsideAirC + sheltered.lowestInsideAirC) / 2;
    const site = siteWith({ climate, walls, box: { powerW: 10 }, limits: { minC: between, maxC: 65 } });
    expect(names(rankWalls(site))).toEqual(['sheltered', 'open']);
  });

  test('a check that is still open stands in the verdict', () => {
    expect(rankWalls(siteWith()).verdict).toMatch(/To be checked first: run to the earth electrode: not entered/);
  });
});

describe('verdicts', () => {
  test('too hot everywhere', () => {
    const ranking = rankWalls(siteWith({ limits: { maxC: 50 } }), { units: 'metric' });
    expect(ranking.withinLimits).toBe(false);
    expect(ranking.verdict).toMatch(
      /^No permitted wall stays within 50\.0 °C: on the least bad one, wall "wall", the air inside reaches/,
    );
  });

  test('too cold', () => {
    const climate = { designDay: { date: '2026-01-15', maxC: -20, dailyRangeK: 8, dewPointC: -30 } };
    const ranking = rankWalls(siteWith({ climate, box: { powerW: 0 }, limits: { minC: -10, maxC: 65 } }), {
      units: 'metric',
    });
    expect(ranking.withinLimits).toBe(false);
    expect(ranking.verdict).toMatch(/falls to -\d/);
  });

  test('a limit on outside air says that it knows nothing of the sun', () => {
    const ranking = rankWalls(siteWith({ limits: { refersTo: 'outsideAir', maxC: 46 } }));
    expect(ranking.verdict).toMatch(/same on every wall/);
  });

  test('walls alike are called alike', () => {
    const walls = [
      { name: 'a', azimuthDeg: 90 },
      { name: 'b', azimuthDeg: 90.5 },
    ];
    expect(rankWalls(siteWith({ walls })).walls[1]?.reason).toMatch(/^About as warm as wall "a"/);
  });
});
