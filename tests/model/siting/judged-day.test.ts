import { expect, test } from 'vitest';
import { DEMO_SITE, parseSite, type SiteInput } from '../../../model/index.ts';
import type { Wall } from '../../../model/site.ts';
import { siteDay } from '../../../model/siting/design-day.ts';
import { evaluateWall } from '../../../model/siting/evaluate-day.ts';
import { judgeWall } from '../../../model/siting/judged-day.ts';

test.each(['insideAir', 'outsideAir', 'componentCase'] as const)(
  'a wall is judged by the figures of its full result where the limits are those of %s',
  (refersTo) => {
    const input: SiteInput = { ...DEMO_SITE, limits: { ...DEMO_SITE.limits, refersTo } };
    const site = parseSite(input);
    const day = siteDay(site);
    for (const wall of site.walls as Wall[]) {
      const { marginK, coldMarginK, peakInsideAirC, insideAirC } = evaluateWall(site, wall, day);
      const judged = judgeWall(site, wall, day);
      expect([...judged.insideAirC]).toEqual(insideAirC);
      expect(judged).toMatchObject({ marginK, coldMarginK, peakInsideAirC });
    }
  },
);
