/** What the links of the box network are made of, read off the network itself. */
import { describe, expect, test } from 'vitest';
import { openFaces } from '../../../model/faces.ts';
import { wallNetwork } from '../../../model/siting/day-forcing.ts';
import { siteDay } from '../../../model/siting/design-day.ts';
import { prepareWallShade } from '../../../model/siting/wall-shade.ts';
import { airProperties } from '../../../model/thermal/air.ts';
import { flatPlateForced } from '../../../model/thermal/forced-convection.ts';
import { plateFacingDown, plateFacingUp } from '../../../model/thermal/natural-convection.ts';
import type { Link } from '../../../model/thermal/network.ts';
import { siteWith, wallFacing } from '../sites.ts';

const eave = { depthM: 0.8, heightAboveBoxM: 0.6 };
const site = siteWith({ place: { altitudeM: 0 }, walls: wallFacing(200, { eave, emittance: 0.7 }) });
const wall = site.walls[0] as (typeof site.walls)[number];
const network = wallNetwork(site, wall, prepareWallShade(site, wall, siteDay(site)));
const AREAS = {
  front: 0.3 * 0.35,
  left: 0.12 * 0.35,
  right: 0.12 * 0.35,
  top: 0.3 * 0.12,
  bottom: 0.3 * 0.12,
  back: 0.3 * 0.35,
};

const between = (from: string, to: string, kind: Link['kind']) =>
  network.links.filter((link) => link.kind === kind && link.from === from && link.to === to);

function coefficient(from: string, to: string) {
  const link = between(from, to, 'convection')[0];
  if (link?.kind !== 'convection') throw new Error(`no convection from ${from} to ${to}`);
  return link.coefficient;
}

const radiated = (from: string, keep: (link: Link) => boolean = () => true): number =>
  network.links
    .filter((link) => link.from === from && link.label?.startsWith('longwave') && keep(link))
    .reduce((sum, link) => sum + (link.kind === 'radiation' ? link.exchangeAreaM2 : 0), 0);

test.each(openFaces('wall'))('%s: what the face emits goes somewhere, all of it: area times emittance', (face) => {
  expect(radiated(face)).toBeCloseTo(AREAS[face] * 0.9, 9);
});

test('the wall and the ground emit all that they can, too', () => {
  const patch = (0.3 + 0.7) * (0.35 + 0.7) - 0.3 * 0.35;
  expect(radiated('wallBeside')).toBeCloseTo(patch * 0.7, 6);
  expect(radiated('ground')).toBeCloseTo(10 * 0.95, 9);
});

test('a wall of emittance 0.7 sends 0.7 of its view its own warmth and mirrors the rest', () => {
  const ofWall = radiated('left', ({ label }) => label === 'longwaveWall');
  const ownWarmth = radiated('left', ({ label, to }) => label === 'longwaveWall' && to === 'wallBeside');
  expect(ownWarmth / ofWall).toBeCloseTo(0.7, 9);
});

describe('convection', () => {
  const [hotK, coolK] = [330, 310];
  const air = airProperties((hotK + coolK) / 2, 101_325);
  const level = (0.3 * 0.12) / (2 * (0.3 + 0.12));

  test('inside, warm air under the lid and over the floor', () => {
    // Air hotter than the lid rises to it and is stirred; air hotter than the floor lies still on it.
    expect(coefficient('top', 'insideAir')(coolK, hotK, 0)).toBeCloseTo(plateFacingDown(level)(air, coolK, hotK), 2);
    expect(coefficient('bottom', 'insideAir')(coolK, hotK, 0)).toBeCloseTo(plateFacingUp(level)(air, coolK, hotK), 2);
    expect(coefficient('top', 'insideAir')(coolK, hotK, 0)).toBeGreaterThan(
      coefficient('bottom', 'insideAir')(coolK, hotK, 0),
    );
  });

  test('outside, the lid stirs when it is hot and the floor when it is cold', () => {
    expect(coefficient('top', 'outsideAir')(hotK, coolK, 0)).toBeCloseTo(plateFacingUp(level)(air, hotK, coolK), 2);
    expect(coefficient('bottom', 'outsideAir')(hotK, coolK, 0)).toBeCloseTo(
      plateFacingDown(level)(air, hotK, coolK),
      2,
    );
  });

  test('a strong wind reaches the front at a quarter of its speed, which halves the coefficient; inside there is none', () => {
    const strong = coefficient('front', 'outsideAir')(hotK, coolK, 20);
    expect(strong / flatPlateForced(air, 5, 0.3)).toBeCloseTo(1, 1);
    expect(strong / flatPlateForced(air, 20, 0.3)).toBeCloseTo(0.5, 1);
    expect(coefficient('front', 'insideAir')(hotK, coolK, 20)).toBe(coefficient('front', 'insideAir')(hotK, coolK, 0));
  });
});
