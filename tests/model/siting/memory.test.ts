import { describe, expect, test } from 'vitest';
import { DEMO_SITE, evaluateDay, parseSite, rankedDays, rankWalls, shadeMemory } from '../../../model/index.ts';
import { memory } from '../../../model/siting/memory.ts';
import type { DayShade } from '../../../model/siting/wall-shade.ts';

const demoWith = (changes: object) => parseSite({ ...DEMO_SITE, ...changes });

/** A memory that counts what it had to prepare. */
function counted() {
  const shades = shadeMemory();
  const prepared: string[] = [];
  const walls = {
    recall: (key: string, prepare: () => DayShade) =>
      shades.walls.recall(key, () => {
        prepared.push(key);
        return prepare();
      }),
  };
  return { prepared, walls, views: shades.views };
}

describe('the memory of shades', () => {
  test('an edit that moves nothing prepares no shade, and gives what a ranking without memory gives', () => {
    const shades = counted();
    rankWalls(demoWith({}), { shades });
    expect(shades.prepared).toHaveLength(4);
    for (const box of [{ powerW: 25 }, { solarAbsorptance: 0.9 }, { massKg: 5 }, { emittance: 0.3 }]) {
      const site = demoWith({ box: { ...DEMO_SITE.box, ...box } });
      expect(rankWalls(site, { shades })).toEqual(rankWalls(site));
    }
    expect(shades.prepared).toHaveLength(4);
  });

  test.each([
    ['the size of the box', { box: { ...DEMO_SITE.box, widthM: 0.4 } }, 4],
    ['its height on the wall', { box: { ...DEMO_SITE.box, mountHeightM: 1.5 } }, 4],
    ['its distance from the wall', { box: { ...DEMO_SITE.box, standOffM: 0.05 } }, 4],
    ['the place', { place: { ...DEMO_SITE.place, latitudeDeg: 30 } }, 4],
    ['the day', { climate: { sample: 'dry-basin', month: 1 } }, 4],
    ['the height of the building', { building: { ...DEMO_SITE.building, heightM: 6 } }, 4],
    [
      'the eave of one wall',
      {
        walls: DEMO_SITE.walls.map((wall) =>
          wall.name === 'south' ? { ...wall, eave: { depthM: 0.2, heightAboveBoxM: 0.9 } } : wall,
        ),
      },
      1,
    ],
    [
      'a tree before one wall',
      {
        walls: DEMO_SITE.walls.map((wall) =>
          wall.name === 'west'
            ? { ...wall, obstructions: [{ kind: 'tree', rightM: 0, outM: 4, heightM: 5, crownDiameterM: 4 }] }
            : wall,
        ),
      },
      1,
    ],
  ])('%s is noticed', (_, change, walls) => {
    const shades = counted();
    rankWalls(demoWith({}), { shades });
    const site = demoWith(change);
    expect(rankWalls(site, { shades })).toEqual(rankWalls(site));
    expect(shades.prepared).toHaveLength(4 + walls);
  });
});

test('a memory forgets what was unused for the longest', () => {
  const kept = memory<number>(2);
  const asked: string[] = [];
  const recall = (key: string) => kept.recall(key, () => asked.push(key));
  for (const key of ['a', 'b', 'a', 'c', 'a', 'b']) recall(key);
  expect(asked).toEqual(['a', 'b', 'c', 'b']);
});

test('the days behind a ranking are those of the walls evaluated one by one', () => {
  const site = parseSite(DEMO_SITE);
  const { ranking, days } = rankedDays(site);
  expect([...days.keys()]).toEqual(ranking.walls.map(({ name }) => name));
  for (const [name, day] of days) expect(day).toEqual(evaluateDay(site, name));
});
