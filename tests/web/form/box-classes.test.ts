import { describe, expect, test } from 'vitest';
import { DEMO_SITE, parseSite, rankWalls } from '../../../model/index.ts';
import type { Draft } from '../../../web/site/draft.ts';
import { BOX_CLASSES, boxClassOf, withBoxClass } from '../../../web/site/form/box-classes.ts';

const DEMO = DEMO_SITE as Draft;

describe.each(BOX_CLASSES.map((boxClass) => [boxClass.name, boxClass] as const))('the size class %s', (_, boxClass) => {
  test.each(['metric', 'us'] as const)(
    'makes a good site in %s units, is recognised, and keeps the finish',
    (units) => {
      const draft = withBoxClass(DEMO, boxClass, units);
      const site = parseSite(draft);
      expect(site.box.solarAbsorptance).toBe(0.5);
      expect(rankWalls(site).walls).toHaveLength(4);
      expect(boxClassOf(draft)).toBe(boxClass);
    },
  );

  test('is as large in one system of units as in the other, within a tenth', () => {
    const [metric, us] = (['metric', 'us'] as const).map((units) => parseSite(withBoxClass(DEMO, boxClass, units)).box);
    for (const side of ['widthM', 'heightM', 'depthM'] as const) {
      expect(Math.abs((us?.[side] ?? 0) / (metric?.[side] ?? 1) - 1)).toBeLessThan(0.1);
    }
  });
});

test('classes grow, and own figures are of none', () => {
  expect(boxClassOf(DEMO)).toBeNull();
  expect(boxClassOf({})).toBeNull();
  const powers = BOX_CLASSES.map(({ powerW }) => powerW);
  expect(powers).toEqual([...powers].sort((a, b) => a - b));
});
