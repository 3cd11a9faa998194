/** The network of the box against hand calculation and against an independent solver. */
import { all, create } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { FACES } from '../../../model/faces.ts';
import { KELVIN, SIGMA } from '../../../model/physical-constants.ts';
import { wallNetwork } from '../../../model/siting/day-forcing.ts';
import { siteDay } from '../../../model/siting/design-day.ts';
import { marchWall } from '../../../model/siting/march-wall.ts';
import { prepareWallShade } from '../../../model/siting/wall-shade.ts';
import { cell, readRow } from '../../../model/thermal/step-table.ts';
import { siteWith, wallFacing } from '../sites.ts';
import { solveOde } from './solve-ode.ts';

function marched(stepS = 300, site = siteWith()) {
  return marchWall(site, site.walls[0] as (typeof site.walls)[number], siteDay(site, { stepS }));
}

describe('a steady box without sun or wind, everything round it at 35 degC, 20 W inside', () => {
  const site = siteWith({ box: { powerW: 20, standOffM: 0.05 }, place: { altitudeM: 0 } });
  const wall = site.walls[0] as (typeof site.walls)[number];
  const network = wallNetwork(site, wall, prepareWallShade(site, wall, siteDay(site)));
  const surroundingsK = 35 + KELVIN;
  const t = new Float64Array(network.names.length).fill(surroundingsK);
  const sources = new Float64Array(network.freeCount);
  sources[network.indexOf('electronics')] = 20;
  network.settle(t, sources, 0);
  const at = (name: string) => t[network.indexOf(name)] as number;

  /** Air at a film temperature, straight between rows of Incropera table A.4 (value from memory). */
  function tableAir(filmK: number) {
    const share = (filmK - 300) / 50;
    const between = (at300: number, at350: number) => at300 + (at350 - at300) * share;
    return { nu: between(15.89e-6, 20.92e-6), k: between(0.0263, 0.03), alpha: between(22.5e-6, 29.9e-6), pr: 0.704 };
  }

  /** Heat that a face gives off by published correlations, written out here once more, W. */
  function handW(name: string, areaM2: number, lengthM: number, nusselt: (ra: number, pr: number) => number) {
    const rise = at(name) - surroundingsK;
    const film = (at(name) + surroundingsK) / 2;
    const { nu, k, alpha, pr } = tableAir(film);
    const ra = (9.81 * rise * lengthM ** 3) / (film * nu * alpha);
    const convected = ((nusselt(ra, pr) * k) / lengthM) * areaM2 * rise;
    // Ground and wall are hardly warmed: what the face sees is at the temperature of the surroundings.
    return convected + 0.9 * SIGMA * areaM2 * (at(name) ** 4 - surroundingsK ** 4);
  }
  const churchillChu = (ra: number, pr: number) =>
    (0.825 + (0.387 * ra ** (1 / 6)) / (1 + (0.492 / pr) ** (9 / 16)) ** (8 / 27)) ** 2;
  const level = (0.3 * 0.12) / (2 * (0.3 + 0.12));

  test('what leaves the faces and the back plate by hand is the 20 W', () => {
    const faces =
      handW('front', 0.3 * 0.35, 0.35, churchillChu) +
      2 * handW('left', 0.12 * 0.35, 0.35, churchillChu) +
      handW('top', 0.3 * 0.12, level, (ra) => 0.54 * ra ** 0.25) +
      handW('bottom', 0.3 * 0.12, level, (ra) => 0.27 * ra ** 0.25);
    // A gap of 50 mm is wide: the back plate cools as a plate in the open (Bar-Cohen and Rohsenow's limit for C2 = 2.87,
    // Nu = 0.59 Ra^(1/4)) and radiates to a wall of emittance 0.9.
    const rise = at('back') - surroundingsK;
    const { nu, k, alpha } = tableAir((at('back') + surroundingsK) / 2);
    const ra = (9.81 * rise * 0.35 ** 3) / (((at('back') + surroundingsK) / 2) * nu * alpha);
    const across =
      (1 / (2 / 0.9 - 1)) * SIGMA * (at('back') ** 4 - at('wallBehind') ** 4) +
      (k / 0.05) * (at('back') - at('wallBehind'));
    const back = 0.3 * 0.35 * ((0.59 * ra ** 0.25 * k * rise) / 0.35 + across);
    expect(Math.abs((faces + back) / 20 - 1)).toBeLessThan(0.03);
  });

  /** Watts between a surface and the air inside, by the book for still air. */
  function insideW(name: string, areaM2: number, lengthM: number, nusselt: (ra: number, pr: number) => number) {
    const rise = at(name) - at('insideAir');
    const { nu, k, alpha, pr } = tableAir((at(name) + at('insideAir')) / 2);
    const ra = (9.81 * Math.abs(rise) * lengthM ** 3) / (((at(name) + at('insideAir')) / 2) * nu * alpha);
    return ((nusselt(ra, pr) * k) / lengthM) * areaM2 * rise;
  }
  const stillPlate = (ra: number, pr: number) => 0.68 + (0.67 * ra ** 0.25) / (1 + (0.492 / pr) ** (9 / 16)) ** (4 / 9);
  const board = 0.6 * 0.3 * 0.35;

  test('the air inside takes from the electronics by hand what it gives to lid, floor, sides and back', () => {
    const given = insideW('electronics', 2 * board, 0.6 * 0.35, (ra) => 0.52 * ra ** 0.25);
    const taken =
      insideW('front', 0.3 * 0.35, 0.35, stillPlate) +
      2 * insideW('left', 0.12 * 0.35, 0.35, stillPlate) +
      insideW('back', 0.3 * 0.35, 0.35, stillPlate) +
      // Under the lid the air is warmer than it: stirred. Over the floor it is warmer, too: still.
      insideW('top', 0.3 * 0.12, level, (ra) => 0.54 * ra ** 0.25) +
      insideW('bottom', 0.3 * 0.12, level, (ra) => 0.27 * ra ** 0.25);
    expect(given).toBeGreaterThan(4);
    expect(Math.abs(given + taken) / given).toBeLessThan(0.03);
  });

  test('the electronics lose the 20 W by hand: to the air, and by radiation to the shell as a body in a room', () => {
    const toAir = insideW('electronics', 2 * board, 0.6 * 0.35, (ra) => 0.52 * ra ** 0.25);
    // A body in a large grey room: A sigma (T1^4 - Tm^4) / (1/e + (A/Aroom) (1/e - 1)), Tm from area-weighted fourth
    // powers of the shell. The room is not large against the board: within a tenth.
    const shell: [string, number][] = [
      ['front', 0.105],
      ['back', 0.105],
      ['left', 0.042],
      ['right', 0.042],
      ['top', 0.036],
      ['bottom', 0.036],
    ];
    const room = shell.reduce((sum, [, area]) => sum + area, 0);
    const meanFourth = shell.reduce((sum, [name, area]) => sum + (area * at(name) ** 4) / room, 0);
    const exchange = (2 * board) / (1 / 0.9 + ((2 * board) / room) * (1 / 0.9 - 1));
    const radiated = exchange * SIGMA * (at('electronics') ** 4 - meanFourth);
    expect(Math.abs((toAir + radiated) / 20 - 1)).toBeLessThan(0.1);
  });

  test('temperatures fall from the electronics through the air to the skin and the surroundings', () => {
    expect(at('electronics')).toBeGreaterThan(at('insideAir'));
    for (const face of FACES) expect(at('insideAir')).toBeGreaterThan(at(face));
    for (const face of FACES) expect(at(face)).toBeGreaterThan(surroundingsK);
    expect(at('bottom')).toBeGreaterThan(at('top'));
  });

  test('0 W in surroundings of one temperature has that temperature', () => {
    const still = new Float64Array(network.names.length).fill(surroundingsK);
    network.settle(still, new Float64Array(network.freeCount), 0);
    for (const kelvin of still) expect(kelvin).toBeCloseTo(surroundingsK, 6);
  });
});

describe('the march through the day', () => {
  const day = marched();

  test('agrees with mathjs solveODE on the same network within 0.1 K, through the hours round the peak', () => {
    const { network, forcing, march } = day;
    const n = network.freeCount;
    const [fromStep, hours] = [180, 3];
    const last = solveOde(create(all ?? {}), { network, forcing, march, fromStep, hours });
    const ours = (i: number) => cell(march.temperaturesK, fromStep + (hours * 3600) / forcing.stepS, i);
    network.names.slice(0, n).forEach((name, i) => {
      expect(Math.abs((last[i] as number) - ours(i)), name).toBeLessThan(0.1);
    });
  });

  test.each([
    ['a bare west wall', {}],
    [
      'an east wall under an eave, dark box',
      { walls: wallFacing(90, { eave: { depthM: 0.6, heightAboveBoxM: 0.5 } }), box: { solarAbsorptance: 0.9 } },
    ],
    [
      'a south wall under an eave, light box of little mass',
      { walls: wallFacing(180, { eave: { depthM: 0.5, heightAboveBoxM: 0.8 } }), box: { massKg: 0.3 } },
    ],
    [
      'a skyline in the west',
      {
        walls: wallFacing(260, {
          horizon: [
            [180, 5],
            [270, 30],
            [300, 10],
          ],
        }),
      },
    ],
  ])('half the step moves no peak inside by 0.1 K: %s', (_, changes) => {
    const site = siteWith(changes as Parameters<typeof siteWith>[0]);
    const day = marched(300, site);
    const half = marched(150, site);
    const peakK = ({ network, forcing, march }: typeof day, name: string) => {
      const column = network.indexOf(name);
      return Math.max(...Array.from({ length: forcing.steps }, (_, k) => cell(march.temperaturesK, k, column)));
    };
    for (const name of ['insideAir', 'electronics', 'wallBeside', 'ground']) {
      expect(Math.abs(peakK(half, name) - peakK(day, name)), name).toBeLessThan(0.1);
    }
    // A thin skin rises by a kelvin in a step until a shadow's edge cuts the sun off somewhere between two steps.
    for (const name of ['front', 'top']) {
      expect(Math.abs(peakK(half, name) - peakK(day, name)), name).toBeLessThan(0.5);
    }
  });

  test('no heat goes into the depth of the ground over the day, some goes indoors', () => {
    const { network, forcing, march } = day;
    const t = new Float64Array(network.names.length);
    const mean = (from: string, to: string) => {
      const link = network.links.findIndex((known) => known.from === from && known.to === to);
      let sum = 0;
      for (let k = 0; k < forcing.steps; k++) {
        readRow(march.temperaturesK, k, t);
        sum += network.linkFlowW(link, t, 0) / forcing.steps;
      }
      return sum;
    };
    // Ten square metres: with the depth as warm as the mean air some 700 W would go into it. The little that is left comes
    // of balancing with the day's means.
    expect(Math.abs(mean('ground', 'deepGround'))).toBeLessThan(60);
    expect(mean('wallBeside', 'indoors')).toBeGreaterThan(0.5);
    // Brick on an insulated wall: 1 / (0.1 / (2 * 0.77) + 2) = 0.485 W/(m2 K).
    const indoors = network.links.find(({ from, to }) => from === 'wallBehind' && to === 'indoors');
    expect(indoors?.kind === 'conduction' && indoors.conductanceWK / (0.3 * 0.35)).toBeCloseTo(0.485, 2);
  });

  test('the wall behind is cooled by the air that rises through the gap', () => {
    const { network } = day;
    const link = network.links.find(({ from, to }) => from === 'wallBehind' && to === 'outsideAir');
    expect(link?.kind === 'convection' && link.coefficient(330, 310, 0)).toBeGreaterThan(0.1);
  });

  test('the day repeats itself within 0.02 K after few rounds', () => {
    expect(day.march.repeatsWithinK).toBeLessThan(0.02);
    expect(day.march.rounds).toBeLessThan(6);
  });
});
