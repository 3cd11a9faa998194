/** The bank says for every link what the link's own coefficient says. */
import { describe, expect, test } from 'vitest';
import type { SiteInput } from '../../../model/index.ts';
import { wallNetwork } from '../../../model/siting/day-forcing.ts';
import { siteDay } from '../../../model/siting/design-day.ts';
import { prepareWallShade } from '../../../model/siting/wall-shade.ts';
import { convectionBank } from '../../../model/thermal/convection-bank.ts';
import { filmAirTable } from '../../../model/thermal/film-air.ts';
import { stillGapCoefficient } from '../../../model/thermal/gap.ts';
import { plateFacingUp } from '../../../model/thermal/natural-convection.ts';
import type { Link } from '../../../model/thermal/network.ts';
import { outdoorCoefficient } from '../../../model/thermal/outdoor-surface.ts';
import { siteWith } from '../sites.ts';

type Convection = Extract<Link, { kind: 'convection' }>;

const BOXES: Readonly<Record<string, Partial<SiteInput['box']>>> = {
  bare: {},
  hooded: { hood: { faces: ['front', 'top', 'left'], gapM: 0.03, openTop: true } },
  'on a post, with a battery': { mount: 'post', battery: { massKg: 12 } },
  'of two rooms, with vents': {
    compartments: { lowerShare: 0.4 },
    vents: { lowAreaM2: 0.004, highAreaM2: 0.004 },
  },
};

/** Conductance of one link at two temperatures, by the bank. */
function banked(link: Convection, surfaceK: number, airK: number, windMs: number): number {
  const bank = convectionBank([{ i: 0, j: 1, areaM2: link.areaM2, coefficient: link.coefficient }]);
  const into = new Float64Array(1);
  bank.conductancesWK(Float64Array.of(surfaceK, airK), windMs, into);
  return into[0] as number;
}

describe.each(Object.entries(BOXES))('a box %s', (_, box) => {
  const site = siteWith({ place: { altitudeM: 1500 }, box });
  const wall = site.walls[0] as (typeof site.walls)[number];
  const { links } = wallNetwork(site, wall, prepareWallShade(site, wall, siteDay(site)));
  const convection = links.filter((link): link is Convection => link.kind === 'convection');

  test('each link within one in a thousand, calm and in a gale, warm and cold, alike and far apart', () => {
    let asked = 0;
    for (const link of convection) {
      for (const windMs of [0, 0.3, 4, 60]) {
        for (const [surfaceK, airK] of [
          [320, 300],
          [300, 320],
          [333.3, 333],
          [235, 250],
          [400, 310],
          [310, 310],
        ] as const) {
          const exact = link.areaM2 * link.coefficient(surfaceK, airK, windMs);
          const difference = Math.abs(banked(link, surfaceK, airK, windMs) - exact);
          expect(difference, `${link.from} to ${link.to}, ${surfaceK}, ${airK}, ${windMs}`).toBeLessThanOrEqual(
            1e-3 * exact,
          );
          asked += 1;
        }
      }
    }
    expect(asked).toBeGreaterThanOrEqual(16 * 24);
  });
});

test('all of a large level plate, laminar and turbulent, and beyond the table of the air', () => {
  const film = filmAirTable(101_325);
  for (const lengthM of [0.02, 0.2, 1]) {
    const coefficient = outdoorCoefficient(film, plateFacingUp(lengthM), { lengthM, shelter: 1 });
    for (const [surfaceK, airK] of [
      [301, 300],
      [360, 300],
      [140, 145],
      [900, 500],
    ] as const) {
      const link: Convection = { kind: 'convection', from: 'a', to: 'b', areaM2: 2, coefficient };
      const exact = 2 * coefficient(surfaceK, airK, 1);
      expect(Math.abs(banked(link, surfaceK, airK, 1) / exact - 1)).toBeLessThan(1e-3);
    }
  }
});

test('laws that belong to different air are refused', () => {
  const links = [80_000, 100_000].map((pressurePa) => ({
    i: 0,
    j: 1,
    areaM2: 1,
    coefficient: stillGapCoefficient(filmAirTable(pressurePa), 0.01),
  }));
  expect(() => convectionBank(links)).toThrow(RangeError);
});
