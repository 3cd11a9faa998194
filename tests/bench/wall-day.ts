/**
 * What a wall-day costs, part by part, beside a plain run of mathjs solveODE over the same network. Only ratios within
 * one run mean something: machines differ, and one machine differs from minute to minute.
 */
import { all, create } from 'mathjs';
import { Bench } from 'tinybench';
import {
  DEMO_SITE,
  evaluateDay,
  evaluateYear,
  extraterrestrialNormal,
  irradianceOnPlane,
  parseSite,
  remediesFor,
  shadeMemory,
  sunPosition,
  wallConfidence,
  type YearWeather,
} from '../../model/index.ts';
import { sunVector } from '../../model/shading/sunlit-fraction.ts';
import { dot } from '../../model/shading/vector.ts';
import { dayForcing, wallNetwork } from '../../model/siting/day-forcing.ts';
import { siteDay } from '../../model/siting/design-day.ts';
import { evaluateWall } from '../../model/siting/evaluate-day.ts';
import { marchWall } from '../../model/siting/march-wall.ts';
import { prepareWallShade } from '../../model/siting/wall-shade.ts';
import { wallSun } from '../../model/siting/wall-sun.ts';
import { cosDeg, sinDeg } from '../../model/solar/angles.ts';
import { relativeAirMass } from '../../model/solar/atmosphere.ts';
import { perezSky } from '../../model/solar/transposition.ts';
import { marchPeriodicDay } from '../../model/thermal/periodic-day.ts';
import { solveOde } from '../model/thermal/solve-ode.ts';

const site = parseSite(DEMO_SITE);
const wall = site.walls[3] as (typeof site.walls)[number];
const day = siteDay(site);
const shade = prepareWallShade(site, wall, day);
const network = wallNetwork(site, wall, shade);
const reflectors = { albedo: site.ground.albedo, wallAbsorptance: wall.solarAbsorptance };
const sun = wallSun(shade, day.steps, reflectors);
const forcing = dayForcing({ site, wall, day, shade, sun, network });
const march = marchPeriodicDay(network, forcing);
const math = create(all ?? {});

/** The same wall with six things before it, prepared once as a site would be. */
const crowded: typeof wall = {
  ...wall,
  eave: { depthM: 0.6, heightAboveBoxM: 0.8, widthM: 8, offsetM: 0, transmittance: 0 },
  obstructions: [
    { kind: 'sideWall', side: 'left', distanceM: 1.5, depthM: 2, heightM: 3 },
    { kind: 'front', distanceM: 9, heightM: 2, widthM: 12, offsetM: 2, transmittance: 0.3 },
    { kind: 'block', rightM: 8, outM: 12, widthM: 9, depthM: 8, heightM: 6 },
    { kind: 'block', rightM: -9, outM: 4, widthM: 3, depthM: 3, heightM: 2.4 },
    {
      kind: 'tree',
      rightM: -3,
      outM: 7,
      heightM: 8,
      crownDiameterM: 5,
      crownBaseM: 2,
      trunkDiameterM: 0.3,
      leafOnTransmittance: 0.15,
      leafOffTransmittance: 0.6,
      leafOnMonths: [4, 10],
    },
  ],
};
const crowdedShade = prepareWallShade(site, crowded, day);

/** The day with no shade prepared before. */
const forgetful = () => ({ ...day, shades: shadeMemory() });

/** Hours that solveODE is run for; a whole day of it would take minutes. */
const ODE_HOURS = 0.5;

const bench = new Bench({ time: 3000, warmupTime: 1000 });
bench
  .add('wall-day, all of it', () => evaluateDay(site, 'west'))
  .add('wall-day, sun and weather of the site shared', () => evaluateWall(site, wall, forgetful()))
  .add('wall-day, its shade prepared before, too', () => evaluateWall(site, wall, day))
  .add('  sun and weather of the site', () => siteDay(site))
  .add('  shade of the wall, prepared', () => prepareWallShade(site, wall, forgetful()))
  .add('  sun on the faces', () => wallSun(shade, day.steps, reflectors, shade.lit))
  .add('  heat balance, marched', () => marchPeriodicDay(network, forcing))
  .add('  shade of a wall with six obstructions, prepared', () => prepareWallShade(site, crowded, forgetful()))
  .add('  sun on the faces behind six obstructions', () =>
    wallSun(crowdedShade, day.steps, reflectors, crowdedShade.lit),
  )
  .add('wall-day without results behind six obstructions', () => marchWall(site, crowded, day, { shade: crowdedShade }))
  .add('wall-day without results, shade prepared before', () => marchWall(site, wall, day, { shade }));
await bench.run();

/** A year of the same day, hour by hour. */
const weather: YearWeather = {
  length: 8760,
  at(row) {
    const step = day.steps[(row % 24) * 12] as (typeof day.steps)[number];
    const { skyLongwaveWm2, ...rest } = step.weather;
    return {
      sunUtc: new Date(step.utc.getTime() + Math.floor(row / 24) * 86_400_000),
      ...rest,
      horizontalInfraredWm2: skyLongwaveWm2,
    };
  },
};
const long = new Bench({ time: 0, iterations: 5, warmupIterations: 2 });
long
  .add('wall-year, full shade not marched', () => evaluateYear(site, 'west', weather, { shadeReference: false }))
  .add('confidence of a wall, 100 sets of inputs', () => Array.from(wallConfidence(site, 'west')))
  .add('remedies of a wall and their pairs', () => remediesFor(site, 'west'));
await long.run();

/** Sun and sky on the six faces of a box, free of shade, over the hours of a year. */
const FACES_AS_PLANES = [
  [90, 270],
  [90, 0],
  [90, 180],
  [0, 0],
  [180, 0],
  [90, 90],
] as const;
const hours = Array.from({ length: weather.length }, (_, row) => weather.at(row));
const { latitudeDeg, longitudeDeg } = site.place;

/** Every plane by itself, through the public functions. */
function planeByPlane(): number {
  let sum = 0;
  for (const { sunUtc: utc, ghi, dni, dhi } of hours) {
    const at = sunPosition(utc, latitudeDeg, longitudeDeg);
    for (const [tiltDeg, azimuthDeg] of FACES_AS_PLANES) {
      sum += irradianceOnPlane({ utc, sun: at, dni, dhi, ghi, tiltDeg, azimuthDeg, albedo: 0.2 }).total;
    }
  }
  return sum;
}

const NORMALS = FACES_AS_PLANES.map(([tiltDeg, azimuthDeg]) => ({
  normal: sunVector({ elevationDeg: 90 - tiltDeg, azimuthDeg }),
  sky: (1 + cosDeg(tiltDeg)) / 2,
  band: sinDeg(tiltDeg),
}));

/** As a year is marched: the sky is taken apart once an hour, and not at all by night. */
function skyTakenApartOnce(): number {
  let sum = 0;
  for (const { sunUtc, ghi, dni, dhi } of hours) {
    if (dhi <= 0 && dni <= 0) continue;
    const at = sunPosition(sunUtc, latitudeDeg, longitudeDeg);
    const { elevationDeg } = at;
    const extraterrestrialWm2 = extraterrestrialNormal(sunUtc);
    const airMass = relativeAirMass(elevationDeg);
    const sky = perezSky({ elevationDeg, dni, dhi, extraterrestrialWm2, relativeAirMass: airMass });
    const direction = sunVector(at);
    for (const plane of NORMALS) {
      const incidence = elevationDeg > 0 ? Math.max(0, dot(plane.normal, direction)) : 0;
      const diffuse = sky.circumsolarNormal * incidence + sky.isotropic * plane.sky + sky.horizon * plane.band;
      sum += dni * incidence + Math.max(0, diffuse) + ghi * 0.2 * (1 - plane.sky);
    }
  }
  return sum;
}
if (Math.abs(skyTakenApartOnce() / planeByPlane() - 1) > 1e-9) throw new Error('the two ways differ');
const planes = new Bench({ time: 1000, warmupTime: 200 });
planes.add('year on six planes, plane by plane', planeByPlane).add('year on six planes', skyTakenApartOnce);
await planes.run();

const ode = new Bench({ time: 0, iterations: 2, warmup: false });
ode.add('solveODE', () => solveOde(math, { network, forcing, march, fromStep: 170, hours: ODE_HOURS }));
await ode.run();

const msOf = (task: (typeof bench.tasks)[number]): number => {
  if (task.result.state !== 'completed') throw new Error(`${task.name} did not complete`);
  return task.result.latency.p50;
};
for (const task of [...bench.tasks, ...long.tasks, ...planes.tasks])
  console.log(`${task.name.padEnd(56)} ${msOf(task).toFixed(2).padStart(8)} ms`);
const ms = (name: string) => msOf(bench.tasks.find((task) => task.name === name) as (typeof bench.tasks)[number]);
/** Ratio of two ways, run by turns, since a machine changes its pace from second to second: the middle one of many. */
function ratioByTurns(one: () => unknown, other: () => unknown): number {
  const time = (work: () => unknown) => {
    const from = performance.now();
    for (let k = 0; k < 5; k++) work();
    return performance.now() - from;
  };
  const ratios = Array.from({ length: 101 }, () => time(one) / time(other)).sort((a, b) => a - b);
  return ratios[50] as number;
}
const crowdedRatio = ratioByTurns(
  () => marchWall(site, crowded, day, { shade: crowdedShade }),
  () => marchWall(site, wall, day, { shade }),
);
console.log(
  `${'ratio of the two wall-days without results, six obstructions to none'.padEnd(56)} ${crowdedRatio.toFixed(2).padStart(8)}`,
);
const planesRatio =
  msOf(planes.tasks[1] as (typeof planes.tasks)[number]) / msOf(planes.tasks[0] as (typeof planes.tasks)[number]);
console.log(`${'ratio of the two ways on six planes'.padEnd(56)} ${planesRatio.toFixed(2).padStart(8)}`);
const rounds = march.rounds;
const marchMs = ms('  heat balance, marched') / rounds;
const odeMs = (msOf(ode.tasks[0] as (typeof bench.tasks)[number]) * 24) / ODE_HOURS;
console.log(
  `${'one round of the day, marched'.padEnd(56)} ${marchMs.toFixed(2).padStart(8)} ms (${rounds} rounds a day)`,
);
console.log(
  `${'one round of the day, mathjs solveODE'.padEnd(56)} ${odeMs.toFixed(0).padStart(8)} ms (from ${ODE_HOURS} h)`,
);
console.log(`${'ratio'.padEnd(56)} ${(odeMs / marchMs).toFixed(0).padStart(8)}`);
