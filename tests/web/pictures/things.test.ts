import { describe, expect, test } from 'vitest';
import { DEMO_SITE, parseSite, sunDiagram, wallPlan } from '../../../model/index.ts';
import { sunWords } from '../../../web/site/pictures/sun-words.ts';
import { listed, thingsAround, thingWords } from '../../../web/site/pictures/things.ts';

const TREE = { kind: 'tree', outM: 6, heightM: 6, crownDiameterM: 3, leafOnTransmittance: 0.2 } as const;

function around(obstructions: readonly object[], wall = 'south') {
  const walls = DEMO_SITE.walls.map((one) => (one.name === wall ? { ...one, obstructions } : one));
  const site = parseSite({ ...DEMO_SITE, walls });
  const [diagram, plan] = [sunDiagram(site, wall), wallPlan(site, wall)];
  return { diagram, plan, things: thingsAround(diagram, plan) };
}

describe('thingsAround', () => {
  test('has the wall first, each thing once, and numbers where there are several of a kind', () => {
    const { things } = around([
      { ...TREE, rightM: -4 },
      { kind: 'sideWall', side: 'left', distanceM: 5, depthM: 2, heightM: 3 },
      { ...TREE, rightM: 4 },
    ]);
    expect(things.map(({ letter, name }) => `${letter} ${name}`)).toEqual([
      'A the wall itself',
      'B the eave',
      'C the rest of the building',
      'D tree 1',
      'E the side wall',
      'F tree 2',
    ]);
    // What one sees through is the crown, not the trunk.
    expect(thingWords(things[3] as (typeof things)[number])).toBe('tree 1, which lets 20\u00a0% of the sun through');
  });
});

test('lists in words', () => {
  expect(listed([])).toBe('');
  expect(listed(['a'])).toBe('a');
  expect(listed(['a', 'b', 'c'])).toBe('a, b and c');
});

describe('sunWords', () => {
  const south = around([]);
  const west = around([], 'west');
  const at = (scene: typeof south, time: string) => {
    const sun = scene.plan.sun.find(({ utc }) => utc.toISOString().slice(11, 16) === time);
    if (sun === undefined) throw new Error(`no sun at ${time}`);
    return sunWords(sun, scene);
  };

  // Phoenix keeps UTC-7 all year.
  test('below the horizon, hidden, and on the box', () => {
    expect(at(south, '10:00')).toMatch(/^03:00: the sun is below the horizon, in the NN?E\.$/);
    expect(at(south, '19:00')).toMatch(
      /^12:00: sun 7\d° high in the S\w*; none reaches the box, hidden by the eave\.$/,
    );
    expect(at(west, '23:50')).toMatch(
      /^16:50: sun 3\d° high in the W; it reaches the front, the right side and the top \(100\u00a0% of/,
    );
  });
});
