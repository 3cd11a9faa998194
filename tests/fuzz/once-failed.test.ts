/** What random input once brought down, made as small as it gets. */
import { expect, test } from 'vitest';
import { DEMO_SITE, parseSite, SiteError } from '../../model/index.ts';

test('a corner that is missing from the outline of a building, without even a null in its place', () => {
  const outlineM = [...(DEMO_SITE.building?.outlineM ?? [])];
  delete outlineM[1];
  expect(() => parseSite({ ...DEMO_SITE, building: { ...DEMO_SITE.building, outlineM } })).toThrow(SiteError);
});
