/**
 * Whatever the feedback says is true of the day that it speaks of: each statement is looked at again with figures of its
 * own, taken from the results and not from the rule that said it, over all climates and from 68 degrees north to the far
 * south; and each is said somewhere.
 */
import { describe, expect, test } from 'vitest';
import {
  CLIMATE_NAMES,
  type Comparison,
  compareBoxes,
  DEMO_SITE,
  type DifferenceInput,
  irradianceOnPlane,
  type PlayedDay,
  parsePlainSite,
  playDay,
  type Site,
  type Statement,
  sunPosition,
} from '../../../model/index.ts';
import { IN_ORDER } from '../../../model/lesson/relevant.ts';
import { statementsOf } from '../../../model/lesson/rule.ts';
import { WALL_RULES } from '../../../model/lesson/rules-of-a-wall.ts';
import { frontsAtHour, HOUR_RULES } from '../../../model/lesson/rules-of-an-hour.ts';
import { PAIR_RULES } from '../../../model/lesson/rules-of-two.ts';
import { WALLS_RULES } from '../../../model/lesson/rules-of-walls.ts';
import { inClimate } from '../../../model/lesson/second-site.ts';
import { LESSON_SITE } from '../../../model/lesson/usual-site.ts';
import { shadeMemory } from '../../../model/siting/wall-shade.ts';

/** Place by place; the longitudes lie under the clocks that are named. */
const PLACES = [
  { latitudeDeg: 68, longitudeDeg: 15, altitudeM: 50, timeZone: 'Europe/Stockholm' },
  { latitudeDeg: 51, longitudeDeg: 10, altitudeM: 200, timeZone: 'Europe/Berlin' },
  { latitudeDeg: 33, longitudeDeg: -112.5, altitudeM: 330, timeZone: 'America/Phoenix' },
  { latitudeDeg: 0, longitudeDeg: 37.5, altitudeM: 100, timeZone: 'Africa/Nairobi' },
  { latitudeDeg: -34, longitudeDeg: 19, altitudeM: 100, timeZone: 'Africa/Johannesburg' },
];

const OPTIONS = { shades: shadeMemory() };

const siteAt = (place: (typeof PLACES)[number], climate: string): Site =>
  // Midsummer everywhere: the day of a sample is that of its hottest month, of June or December here.
  inClimate(
    parsePlainSite({
      ...LESSON_SITE,
      place,
      climate: { cycle: 'mil-std-810h-a1', date: place.latitudeDeg < 0 ? '2026-12-21' : '2026-06-21' },
    }),
    climate,
  );

/** How often a statement was said. */
const said = new Map<string, number>();

/** Words that bind a statement to where it holds. */
const HERE = /\b(here|this (day|latitude|climate|wall|night)|these two)\b/i;

function note({ id, text, where }: Statement): void {
  said.set(id, (said.get(id) ?? 0) + 1);
  for (const words of Object.values(text)) {
    expect(words).not.toMatch(/undefined|NaN|null|Infinity/);
    if (where === 'here') expect(words, id).toMatch(HERE);
  }
}

const at = (values: readonly number[], k: number): number => values[k] as number;
const peakIndex = (values: readonly number[]): number => values.indexOf(Math.max(...values));
const isPoleward = ({ site, wall }: PlayedDay): boolean =>
  Math.cos(((wall.azimuthDeg - (site.place.latitudeDeg < 0 ? 180 : 0)) * Math.PI) / 180) > 0.7;

/** Direct sun on the wall's plane by geometry alone, without the shade of anything; W/m2 at each step. */
function beamOnPlane({ site, wall, weather, result }: PlayedDay): number[] {
  const { latitudeDeg, longitudeDeg } = site.place;
  return result.stepsUtc.map((utc, k) => {
    const { ghi = 0, dni = 0, dhi = 0 } = weather[k] ?? {};
    const sun = sunPosition(utc, latitudeDeg, longitudeDeg);
    return irradianceOnPlane({ utc, sun, ghi, dni, dhi, tiltDeg: 90, azimuthDeg: wall.azimuthDeg, albedo: 0.25 }).beam;
  });
}

/** The step at which the sun stands highest: its noon. */
const noonIndex = ({ suns }: PlayedDay): number => peakIndex(suns.map(({ elevationDeg }) => elevationDeg));

/** Steps from noon, the shorter way round the day. */
const fromNoon = (played: PlayedDay, k: number): number => {
  const count = played.suns.length;
  return ((k - noonIndex(played) + count * 1.5) % count) - count / 2;
};

const hours = ({ stepS }: PlayedDay, steps: number): number => (Math.abs(steps) * stepS) / 3600;

/** What has to be true of a wall's day where the statement is made. */
const WALL_CLAIMS: Readonly<Record<string, (played: PlayedDay) => void>> = {
  'afternoon-sun-meets-hot-air': (played) => {
    const { insideAirC, outsideAirC, faceIrradianceWm2 } = played.result;
    expect(fromNoon(played, peakIndex(insideAirC))).toBeGreaterThan(0);
    expect(peakIndex(insideAirC)).toBeGreaterThanOrEqual(peakIndex(outsideAirC));
    expect(fromNoon(played, peakIndex(faceIrradianceWm2.front))).toBeGreaterThanOrEqual(0);
    expect(hours(played, peakIndex(faceIrradianceWm2.front) - peakIndex(outsideAirC))).toBeLessThanOrEqual(3);
    expect(beamOnPlane(played).some((beam, k) => beam > 0 && fromNoon(played, k) > 0)).toBe(true);
  },
  'morning-sun-meets-cool-air': (played) => {
    const { outsideAirC, faceIrradianceWm2 } = played.result;
    const k = peakIndex(faceIrradianceWm2.front);
    expect(fromNoon(played, k)).toBeLessThan(1);
    expect(Math.max(...outsideAirC) - at(outsideAirC, k)).toBeGreaterThanOrEqual(3);
    // Sun and hot air miss each other: most of the direct sun has gone by when the air is hottest.
    const beam = beamOnPlane(played);
    const sumOf = (late: boolean) =>
      beam.reduce((total, wm2, n) => total + (fromNoon(played, n) > 0 === late ? wm2 : 0), 0);
    expect(sumOf(true)).toBeLessThan(sumOf(false) / 2);
  },
  'poleward-wall-gets-sun': (played) => {
    expect(isPoleward(played)).toBe(true);
    const pole = played.site.place.latitudeDeg < 0 ? -1 : 1;
    const beam = beamOnPlane(played);
    const northing = played.suns.map(({ azimuthDeg }) => Math.cos((azimuthDeg * Math.PI) / 180));
    expect(beam.some((wm2, k) => wm2 > 0 && pole * at(northing, k) > 0)).toBe(true);
  },
  'front-without-direct-sun': (played) => {
    // The sun may graze the wall, weaker than the threshold of sunshine.
    const lit = beamOnPlane(played).filter((beam, k) => beam > 0 && (played.weather[k]?.dni ?? 0) >= 120);
    expect(lit).toHaveLength(0);
    expect(Math.max(...played.result.faceIrradianceWm2.front)).toBeGreaterThan(0);
  },
  'lid-in-the-high-sun': (played) => {
    const k = noonIndex(played);
    const { front, left, right, top } = played.result.faceIrradianceWm2;
    for (const face of [front, left, right]) expect(at(top, k)).toBeGreaterThan(at(face, k));
  },
  'sun-outweighs-own-heat': ({ result: { ledgerAtPeak: ledger } }) => {
    expect(ledger.sunBeam + ledger.sunDiffuse + ledger.sunReflected).toBeGreaterThan(ledger.dissipation);
  },
  'own-heat-outweighs-sun': ({ result: { ledgerAtPeak: ledger } }) => {
    expect(ledger.sunBeam + ledger.sunDiffuse + ledger.sunReflected).toBeLessThan(ledger.dissipation);
  },
  'warm-without-sun': ({ weather, result: { insideAirC, outsideAirC } }) => {
    const dark = weather.flatMap(({ ghi }, k) => (ghi === 0 ? [k] : []));
    expect(dark.length).toBeGreaterThan(0);
    const night = dark.filter((k) => ![k - 12, k + 12].some((near) => (weather[near]?.ghi ?? 0) > 0));
    for (const k of night) expect(at(insideAirC, k)).toBeGreaterThan(at(outsideAirC, k));
  },
  'skin-colder-than-air': ({ result: { skinC, outsideAirC } }) => {
    const below = Object.values(skinC).some((skin) => skin.some((celsius, k) => celsius < at(outsideAirC, k)));
    expect(below).toBe(true);
  },
  'peak-before-the-air': (played) => {
    const { insideAirC, outsideAirC } = played.result;
    expect(hours(played, peakIndex(outsideAirC) - peakIndex(insideAirC))).toBeGreaterThanOrEqual(1);
    expect(peakIndex(insideAirC)).toBeLessThan(peakIndex(outsideAirC));
  },
  'over-the-limit': ({ site, result }) => {
    expect(Math.max(...result.insideAirC)).toBeGreaterThan(site.limits.maxC);
    expect(result.hoursOverLimit).toBeGreaterThan(0);
  },
  'within-the-limit': ({ site, result }) => {
    expect(Math.max(...result.insideAirC)).toBeLessThanOrEqual(site.limits.maxC);
    expect(result.hoursOverLimit).toBe(0);
  },
};

const hottestOf = (walls: readonly PlayedDay[]): PlayedDay =>
  walls.reduce((best, wall) => (wall.result.peakInsideAirC > best.result.peakInsideAirC ? wall : best));
const coolestOf = (walls: readonly PlayedDay[]): PlayedDay =>
  walls.reduce((best, wall) => (wall.result.peakInsideAirC < best.result.peakInsideAirC ? wall : best));
const frontSun = ({ result }: PlayedDay): number => result.faceIrradianceWm2.front.reduce((a, b) => a + b, 0);
const peaks = (walls: readonly PlayedDay[]): number[] => walls.map(({ result }) => result.peakInsideAirC);

const WALLS_CLAIMS: Readonly<Record<string, (walls: readonly PlayedDay[]) => void>> = {
  'hottest-in-the-afternoon': (walls) => {
    const worst = hottestOf(walls);
    const { faceIrradianceWm2, outsideAirC } = worst.result;
    const k = peakIndex(faceIrradianceWm2.front);
    expect(fromNoon(worst, k)).toBeGreaterThanOrEqual(0);
    // The warm side of the day: warmer than as long before noon.
    const mirrored = (2 * noonIndex(worst) - k + worst.suns.length) % worst.suns.length;
    expect(at(outsideAirC, k)).toBeGreaterThanOrEqual(at(outsideAirC, mirrored));
  },
  'coolest-takes-less-sun': (walls) => {
    expect(frontSun(coolestOf(walls))).toBeLessThan(frontSun(hottestOf(walls)));
  },
  'coolest-takes-more-sun': (walls) => {
    expect(frontSun(coolestOf(walls))).toBeGreaterThanOrEqual(frontSun(hottestOf(walls)));
    expect(coolestOf(walls).result.peakInsideAirC).toBeLessThan(hottestOf(walls).result.peakInsideAirC);
  },
  'high-sun-passes-over-the-equator-side': (walls) => {
    const by = (name: string) => walls.find(({ wall }) => wall.name === name) as PlayedDay;
    const equator = by((walls[0]?.site.place.latitudeDeg ?? 0) > 0 ? 'south' : 'north');
    for (const side of ['east', 'west']) expect(frontSun(equator)).toBeLessThan(frontSun(by(side)));
  },
  'walls-alike': (walls) => {
    expect(Math.max(...peaks(walls)) - Math.min(...peaks(walls))).toBeLessThanOrEqual(1);
  },
};

/** Hours of the clock at which the sun on some fronts is asked for. */
const HOURS = [7, 9, 16];

/** Of the fronts of some walls at an hour. */
const HOUR_CLAIMS: Readonly<Record<string, (walls: readonly PlayedDay[], hour: number) => void>> = {
  'sun-meets-it-most-squarely': (walls, hour) => {
    const k = hour * 12;
    const sunOf = ({ result }: PlayedDay) => at(result.faceIrradianceWm2.front, k);
    const sunniest = walls.reduce((best, wall) => (sunOf(wall) > sunOf(best) ? wall : best));
    // By bearings alone: it faces the sun more than any other.
    const facing = ({ wall, suns }: PlayedDay) =>
      Math.cos(
        ((at(
          suns.map((s) => s.azimuthDeg),
          k,
        ) -
          wall.azimuthDeg) *
          Math.PI) /
          180,
      );
    for (const wall of walls) expect(facing(sunniest)).toBeGreaterThanOrEqual(facing(wall));
  },
  'no-beam-at-that-hour': (walls, hour) => {
    for (const wall of walls) expect(at(beamOnPlane(wall), hour * 12)).toBeLessThan(10);
  },
};

const peakC = (box: Comparison['a']): number => Math.max(...box.played.result.insideAirC);
const outsideMaxC = (box: Comparison['a']): number => Math.max(...box.played.result.outsideAirC);
const range = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
const excessC = ({ played: { result } }: Comparison['a']): number =>
  result.peakInsideAirC - at(result.outsideAirC, peakIndex(result.insideAirC));
const dayHeatWh = ({ played }: Comparison['a']): number => {
  const { box } = played.site;
  const areas = {
    front: box.widthM * box.heightM,
    left: box.depthM * box.heightM,
    right: box.depthM * box.heightM,
    top: box.widthM * box.depthM,
    bottom: box.widthM * box.depthM,
    back: 0,
  };
  const { faceIrradianceWm2 } = played.result;
  const watts = (Object.keys(areas) as (keyof typeof areas)[]).map(
    (face) => areas[face] * faceIrradianceWm2[face].reduce((a, b) => a + b, 0),
  );
  return (box.solarAbsorptance * watts.reduce((a, b) => a + b, 0) * played.stepS) / 3600;
};

/** The two boxes in the order of an amount. */
const inOrder =
  (amount: (box: Comparison['a']) => number) =>
  ({ a, b }: Comparison): [less: Comparison['a'], more: Comparison['a']] =>
    amount(a) < amount(b) ? [a, b] : [b, a];
const byPeak = inOrder(peakC);
const byEmittance = inOrder(({ played }) => played.site.box.emittance);
const byHood = inOrder(({ played }) => (played.site.box.hood === null ? 0 : 1));
const byEave = inOrder(({ played }) => played.wall.eave?.depthM ?? 0);
const byPower = inOrder(({ played }) => played.site.box.powerW);
const byWind = inOrder(({ played }) => played.weather[0]?.windMs ?? 0);
const byAltitude = inOrder(({ played }) => played.site.place.altitudeM);

/** The two boxes the other way round, with what is said of them then. */
function turned(pair: Comparison): Comparison {
  const { statements: _, ...forth } = pair;
  const back = { ...forth, a: pair.b, b: pair.a, peakDifferenceK: -pair.peakDifferenceK };
  return { ...back, statements: statementsOf(PAIR_RULES, back) };
}

const PAIR_CLAIMS: Readonly<Record<string, (pair: Comparison) => void>> = {
  'less-sun-cooler': (pair) => {
    const [cool, hot] = byPeak(pair);
    expect(peakC(cool)).toBeLessThan(peakC(hot));
    if (pair.difference.kind !== 'hood') expect(dayHeatWh(cool)).toBeLessThan(dayHeatWh(hot));
    const hoodW = ({ played }: Comparison['a']) => mean(Object.values(played.hoodAbsorbedW).flat());
    if (pair.difference.kind === 'hood') expect(hoodW(cool)).toBeLessThan(hoodW(hot));
  },
  'sun-with-the-hot-air': (pair) => {
    const [cool, hot] = byPeak(pair);
    // The air while the front is in its sun, by the light that falls on it.
    const airC = ({ played: { result } }: Comparison['a']) => {
      const sun = result.faceIrradianceWm2.front;
      const all = sun.reduce((total, wm2) => total + wm2, 0);
      return sun.reduce((total, wm2, k) => total + wm2 * at(result.outsideAirC, k), 0) / all;
    };
    expect(airC(hot)).toBeGreaterThan(airC(cool));
  },
  'what-hangs-above-hides-the-sky': (pair) => {
    const [cool, hot] = byPeak(pair);
    // Of the ways that end at the sky: heat into the box, negative for a loss.
    const fromSkyW = ({ played: { border } }: Comparison['a']) =>
      border.filter(({ path }) => path === 'longwaveSky').reduce((total, { inwardW }) => total + mean(inwardW), 0);
    expect(fromSkyW(hot)).toBeGreaterThan(fromSkyW(cool));
  },
  'light-finish-radiates-as-well': (pair) => {
    const [cool, hot] = byPeak(pair);
    expect(cool.played.site.box.solarAbsorptance).toBeLessThan(hot.played.site.box.solarAbsorptance);
    expect(cool.played.site.box.emittance).toBeCloseTo(hot.played.site.box.emittance, 1);
    expect(peakC(cool)).toBeLessThan(peakC(hot));
  },
  'bare-metal-keeps-its-heat': (pair) => {
    const [metal, paint] = byEmittance(pair);
    expect(metal.played.site.box.emittance).toBeLessThan(paint.played.site.box.emittance - 0.19);
    expect(peakC(metal)).toBeGreaterThanOrEqual(peakC(paint) - 0.5);
  },
  'paint-radiates-and-takes-in-more': (pair) => {
    const [metal, paint] = byEmittance(pair);
    expect(paint.played.site.box.solarAbsorptance).toBeGreaterThan(metal.played.site.box.solarAbsorptance);
    expect(peakC(paint)).toBeGreaterThan(peakC(metal));
    expect(dayHeatWh(paint)).toBeGreaterThan(dayHeatWh(metal));
  },
  'hood-takes-the-sun': (pair) => {
    const [bare, hooded] = byHood(pair);
    expect(peakC(hooded)).toBeLessThan(peakC(bare));
    expect(Math.max(...hooded.played.result.faceIrradianceWm2.front)).toBe(0);
    // It gives most of it back outside: what the box takes from it over the day is less than half of it.
    const toBoxW = mean(hooded.played.ledgers.map(({ hood }) => hood));
    const takenW = Object.values(hooded.played.hoodAbsorbedW).reduce((total, watts) => total + mean(watts), 0);
    expect(toBoxW).toBeLessThan(takenW / 2);
  },
  'hood-gains-little': (pair) => {
    const [bare, hooded] = byHood(pair);
    expect(peakC(hooded)).toBeGreaterThanOrEqual(peakC(bare) - 0.5);
  },
  'eave-shades-the-high-sun': (pair) => {
    const [other, deeper] = byEave(pair);
    expect(deeper.played.result.sunHours).toBeLessThanOrEqual(other.played.result.sunHours);
    const beam = (box: Comparison['a']) => mean(box.played.ledgers.map(({ sunBeam }) => sunBeam));
    expect(beam(deeper)).toBeLessThan(beam(other));
  },
  'low-sun-gets-under-the-eave': (pair) => {
    const [, deeper] = byEave(pair);
    expect(deeper.played.result.sunHours).toBeGreaterThan(0);
    const lit = deeper.played.suns.filter((_, k) => (deeper.played.ledgers[k]?.sunBeam ?? 0) > 0);
    expect(Math.min(...lit.map(({ elevationDeg }) => elevationDeg))).toBeLessThan(45);
  },
  'more-power-hotter': (pair) => {
    const [less, more] = byPower(pair);
    expect(peakC(more)).toBeGreaterThan(peakC(less));
  },
  'twice-the-power-is-less-than-twice-the-kelvins': (pair) => {
    const [less, more] = byPower(pair);
    const times = more.played.site.box.powerW / less.played.site.box.powerW;
    expect(excessC(more)).toBeLessThan(times * excessC(less));
  },
  'wind-cools': (pair) => {
    const [less, more] = byWind(pair);
    expect(peakC(more)).toBeLessThan(peakC(less));
  },
  'wind-cannot-cool-below-the-air': (pair) => expect(excessC(byWind(pair)[1])).toBeGreaterThan(0),
  'dry-sky-is-colder': ({ a, b }) => {
    const dew = (box: Comparison['a']) => mean(box.played.weather.map(({ dewPointC }) => dewPointC));
    const [dry, moist] = dew(a) < dew(b) ? [a, b] : [b, a];
    // Share of a black body at air temperature that the sky sends.
    const emissivity = ({ played }: Comparison['a']) =>
      mean(played.weather.map(({ airC, skyLongwaveWm2 }) => skyLongwaveWm2 / (5.670374e-8 * (airC + 273.15) ** 4)));
    expect(emissivity(dry)).toBeLessThan(emissivity(moist));
  },
  'air-swings-box-swings': ({ a, b }) => {
    const more = (of: 'outsideAirC' | 'insideAirC') => range(a.played.result[of]) > range(b.played.result[of]);
    expect(more('insideAirC')).toBe(more('outsideAirC'));
  },
  'air-makes-the-difference': ({ a, b }) => {
    const [airK, boxK] = [outsideMaxC(b) - outsideMaxC(a), peakC(b) - peakC(a)];
    expect(airK * boxK).toBeGreaterThan(0);
    expect(airK / boxK).toBeGreaterThanOrEqual(0.5);
  },
  'sky-and-wind-make-the-difference': ({ a, b }) => {
    const [airK, boxK] = [outsideMaxC(b) - outsideMaxC(a), peakC(b) - peakC(a)];
    expect(airK / boxK).toBeLessThan(0.5);
  },
  'thin-air-cools-worse': (pair) => {
    const [low, high] = byAltitude(pair);
    expect(peakC(high)).toBeGreaterThan(peakC(low));
    expect(high.played.result.outsideAirC).toEqual(low.played.result.outsideAirC);
  },
  'more-sun-up-there': (pair) => {
    const [low, high] = byAltitude(pair);
    const noon = noonIndex(low.played);
    expect(high.played.weather[noon]?.dni).toBeGreaterThan(low.played.weather[noon]?.dni ?? 0);
  },
  'box-stays-above-the-air': ({ a, b }) => {
    for (const { played } of [a, b]) {
      played.result.insideAirC.forEach((celsius, k) => {
        expect(celsius).toBeGreaterThan(at(played.result.outsideAirC, k));
      });
    }
  },
  'battery-lives-longer-cooler': ({ a, b }) => {
    const life = ({ played }: Comparison['a']) =>
      1 / mean(played.result.insideAirC.map((celsius) => 2 ** ((celsius - 25) / 10)));
    const longer = Math.max(life(a), life(b)) / Math.min(life(a), life(b));
    expect(longer).toBeGreaterThanOrEqual(1.099);
  },
  'next-to-no-difference': ({ a, b }) => expect(Math.abs(peakC(b) - peakC(a))).toBeLessThanOrEqual(0.5),
};

/** Each difference on a wall where it has something to do, and on the shaded one. */
const DIFFERENCES: readonly (readonly [wallName: string, difference: DifferenceInput])[] = [
  ['west', { kind: 'finish', to: 'whitePaint', state: 'new' }],
  ['west', { kind: 'wall', to: 'east' }],
  ['pole', { kind: 'finish', to: 'bareAluminium' }],
  ['west', { kind: 'finish', to: 'galvanisedSteel' }],
  ['west', { kind: 'hood', to: 'whitePaint' }],
  ['pole', { kind: 'hood', to: 'blackPaint' }],
  ['west', { kind: 'eave', depthM: 0.6 }],
  ['west', { kind: 'shade' }],
  ['west', { kind: 'power', powerW: 28 }],
  ['west', { kind: 'wind', windMs: 6 }],
  ['west', { kind: 'altitude', altitudeM: 3000 }],
];

/** A difference of climates at each of the climates: the next of the list. */
const nextClimate = (climate: string): string =>
  CLIMATE_NAMES[(CLIMATE_NAMES.indexOf(climate) + 1) % CLIMATE_NAMES.length] as string;

describe.each(PLACES)('at $latitudeDeg degrees', (place) => {
  test.each(CLIMATE_NAMES)('in the climate %s', (climate) => {
    const site = siteAt(place, climate);
    const walls = site.walls.map(({ name }) => playDay(site, name, OPTIONS));
    // All of them, and any two: what is said of few walls is another matter.
    const two = walls.flatMap((wall, k) => walls.slice(k + 1).map((other) => [wall, other]));
    for (const some of [walls, ...two]) {
      for (const statement of statementsOf(WALLS_RULES, some)) {
        note(statement);
        WALLS_CLAIMS[statement.id]?.(some);
      }
      for (const hour of HOURS) {
        for (const statement of statementsOf(HOUR_RULES, frontsAtHour(some, hour))) {
          note(statement);
          HOUR_CLAIMS[statement.id]?.(some, hour);
        }
      }
    }
    for (const played of walls) {
      const statements = statementsOf(WALL_RULES, played);
      expect(statements.length).toBeGreaterThan(0);
      for (const statement of statements) {
        note(statement);
        WALL_CLAIMS[statement.id]?.(played);
      }
    }
    const poleward = place.latitudeDeg < 0 ? 'south' : 'north';
    const differences = [...DIFFERENCES, ['west', { kind: 'climate', to: nextClimate(climate) }] as const];
    const turn = 3 * PLACES.indexOf(place) + CLIMATE_NAMES.indexOf(climate);
    for (const [k, [wall, difference]] of differences.entries()) {
      // Two in five by turns: each difference in each climate at two places, and at each place in three climates.
      if ((turn + k) % 5 >= 2) continue;
      const wallName = wall === 'pole' ? poleward : wall;
      const forth = compareBoxes({ site, wallName, difference, options: OPTIONS });
      for (const pair of [forth, turned(forth)]) {
        for (const statement of pair.statements) {
          note(statement);
          PAIR_CLAIMS[statement.id]?.(pair);
        }
      }
    }
  });
});

/** Pairs that no site of four plain walls has. */
test.each<[string, Site, string, DifferenceInput]>([
  [
    'an eave drawn nearer',
    parsePlainSite({ ...DEMO_SITE, climate: { cycle: 'mil-std-810h-a1', date: '2026-06-21' } }),
    'south',
    { kind: 'eave', depthM: 0.9, heightAboveBoxM: 0.3 },
  ],
  [
    'black paint on bright aluminium',
    parsePlainSite({ ...LESSON_SITE, box: { ...LESSON_SITE.box, finish: 'bareAluminium', finishState: 'new' } }),
    'west',
    { kind: 'finish', to: 'blackPaint' },
  ],
])('%s', (_, site, wallName, difference) => {
  const forth = compareBoxes({ site, wallName, difference, options: OPTIONS });
  for (const pair of [forth, turned(forth)]) {
    for (const statement of pair.statements) {
      note(statement);
      PAIR_CLAIMS[statement.id]?.(pair);
    }
  }
});

describe('the rules', () => {
  const rules = [...WALL_RULES, ...WALLS_RULES, ...HOUR_RULES, ...PAIR_RULES];
  const claims = { ...WALL_CLAIMS, ...WALLS_CLAIMS, ...HOUR_CLAIMS, ...PAIR_CLAIMS };

  test('each has a claim that is looked at, and a name of its own', () => {
    expect(rules.map(({ id }) => id).sort()).toEqual(Object.keys(claims).sort());
  });

  test('each belongs to some question, and questions name no others', () => {
    const named = new Set(Object.values(IN_ORDER).flat());
    expect([...named].sort()).toEqual(rules.map(({ id }) => id).sort());
  });

  test.each(rules)('$id is said somewhere', ({ id }) => {
    // This test reads what those above it noted.
    expect(said.get(id) ?? 0).toBeGreaterThan(0);
  });
});
