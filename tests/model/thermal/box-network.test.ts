/** The network of the box against hand calculation and against an independent solver. */
import { all, create } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { FACES } from '../../../model/faces.ts';
import { KELVIN, SIGMA } from '../../../model/physical-constants.ts';
import { dayForcing, wallNetwork } from '../../../model/siting/day-forcing.ts';
import { siteDay } from '../../../model/siting/design-day.ts';
import { prepareWallShade } from '../../../model/siting/wall-shade.ts';
import { wallSun } from '../../../model/siting/wall-sun.ts';
import { balanceDeepGround, marchPeriodicDay } from '../../../model/thermal/periodic-day.ts';
import { cell } from '../../../model/thermal/step-table.ts';
import { siteWith } from '../sites.ts';
import { solveOde } from './solve-ode.ts';

function marched(stepS = 300) {
  const site = siteWith();
  const wall = site.walls[0] as (typeof site.walls)[number];
  const day = siteDay(site, stepS);
  const shade = prepareWallShade(site.box, wall);
  const network = wallNetwork(site, wall, shade);
  const sun = wallSun(shade, day.steps, { albedo: 0.2, wallAbsorptance: wall.solarAbsorptance });
  const forcing = dayForcing({ site, wall, day, shade, sun, network });
  balanceDeepGround(network, forcing, { surface: 'ground', deep: 'deepGround' });
  return { network, forcing, march: marchPeriodicDay(network, forcing) };
}

describe('a steady box without sun or wind, everything round it at 35 degC, 20 W inside', () => {
  const site = siteWith({ box: { powerW: 20, standOffM: 0.05 }, place: { altitudeM: 0 } });
  const wall = site.walls[0] as (typeof site.walls)[number];
  const network = wallNetwork(site, wall, prepareWallShade(site.box, wall));
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

  test('half the step moves no peak by 0.1 K', () => {
    const half = marched(150);
    const peakK = ({ network, forcing, march }: typeof day, name: string) => {
      const column = network.indexOf(name);
      return Math.max(...Array.from({ length: forcing.steps }, (_, k) => cell(march.temperaturesK, k, column)));
    };
    for (const name of ['insideAir', 'electronics', 'front', 'top', 'wallBeside', 'ground']) {
      expect(Math.abs(peakK(half, name) - peakK(day, name)), name).toBeLessThan(0.1);
    }
  });

  test('the day repeats itself within 0.02 K after few rounds', () => {
    expect(day.march.repeatsWithinK).toBeLessThan(0.02);
    expect(day.march.rounds).toBeLessThan(6);
  });
});
