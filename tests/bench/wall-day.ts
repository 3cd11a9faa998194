/**
 * What a wall-day costs, part by part, beside a plain run of mathjs solveODE over the same network. Only ratios within
 * one run mean something: machines differ, and one machine differs from minute to minute.
 */
import { all, create } from 'mathjs';
import { Bench } from 'tinybench';
import { DEMO_SITE, evaluateDay, parseSite } from '../../model/index.ts';
import { dayForcing, wallNetwork } from '../../model/siting/day-forcing.ts';
import { siteDay } from '../../model/siting/design-day.ts';
import { evaluateWall } from '../../model/siting/evaluate-day.ts';
import { prepareWallShade } from '../../model/siting/wall-shade.ts';
import { wallSun } from '../../model/siting/wall-sun.ts';
import { marchPeriodicDay } from '../../model/thermal/periodic-day.ts';
import { solveOde } from '../model/thermal/solve-ode.ts';

const site = parseSite(DEMO_SITE);
const wall = site.walls[3] as (typeof site.walls)[number];
const day = siteDay(site);
const shade = prepareWallShade(site.box, wall);
const network = wallNetwork(site, wall, shade);
const reflectors = { albedo: site.ground.albedo, wallAbsorptance: wall.solarAbsorptance };
const sun = wallSun(shade, day.steps, reflectors);
const forcing = dayForcing({ site, wall, day, shade, sun, network });
const march = marchPeriodicDay(network, forcing);
const math = create(all ?? {});

/** Hours that solveODE is run for; a whole day of it would take minutes. */
const ODE_HOURS = 0.5;

const bench = new Bench({ time: 3000, warmupTime: 1000 });
bench
  .add('wall-day, all of it', () => evaluateDay(site, 'west'))
  .add('wall-day, sun and weather of the site shared', () => evaluateWall(site, wall, day))
  .add('  sun and weather of the site', () => siteDay(site))
  .add('  shade of the wall, prepared', () => prepareWallShade(site.box, wall))
  .add('  sun on the faces', () => wallSun(shade, day.steps, reflectors))
  .add('  heat balance, marched', () => marchPeriodicDay(network, forcing));
await bench.run();

const ode = new Bench({ time: 0, iterations: 2, warmup: false });
ode.add('solveODE', () => solveOde(math, { network, forcing, march, fromStep: 170, hours: ODE_HOURS }));
await ode.run();

const msOf = (task: (typeof bench.tasks)[number]): number => {
  if (task.result.state !== 'completed') throw new Error(`${task.name} did not complete`);
  return task.result.latency.p50;
};
for (const task of bench.tasks) console.log(`${task.name.padEnd(48)} ${msOf(task).toFixed(2).padStart(8)} ms`);
const rounds = march.rounds;
const marchMs = msOf(bench.tasks[5] as (typeof bench.tasks)[number]) / rounds;
const odeMs = (msOf(ode.tasks[0] as (typeof bench.tasks)[number]) * 24) / ODE_HOURS;
console.log(
  `${'one round of the day, marched'.padEnd(48)} ${marchMs.toFixed(2).padStart(8)} ms (${rounds} rounds a day)`,
);
console.log(
  `${'one round of the day, mathjs solveODE'.padEnd(48)} ${odeMs.toFixed(0).padStart(8)} ms (from ${ODE_HOURS} h)`,
);
console.log(`${'ratio'.padEnd(48)} ${(odeMs / marchMs).toFixed(0).padStart(8)}`);
