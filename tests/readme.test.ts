/** The figures of the README are those of the model. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { clockTime, DEMO_SITE, evaluateDay, parseSite, rankWalls } from '../model/index.ts';
import { siteWith } from './model/sites.ts';

const README = readFileSync(new URL('../README.md', import.meta.url), 'utf8');

describe('the worked example', () => {
  const { walls, timeZone } = rankWalls(parseSite(DEMO_SITE));
  const electrodeM = new Map(DEMO_SITE.walls.map(({ name, electrodeDistanceM }) => [name, electrodeDistanceM]));
  test.each(walls)('$name', ({ name, day }) => {
    const row = README.split('\n').find((line) => line.startsWith(`| ${name}`)) ?? '';
    expect(row).toContain(`${day.peakInsideAirC.toFixed(1)} °C at ${clockTime(day.peakAtUtc, timeZone)}`);
    expect(row).toContain(`${day.marginK.toFixed(1)} K`);
    expect(row).toContain(day.sunHours === 0 ? 'none' : `${day.sunHours.toFixed(1)} h`);
    expect(row).toContain(`| ${electrodeM.get(name)} m`);
  });
});

test('October under the eave', () => {
  const { marginK } = evaluateDay(parseSite({ ...DEMO_SITE, climate: { ...DEMO_SITE.climate, month: 10 } }), 'south');
  expect(README.replace(/\s+/g, ' ')).toContain(
    `That of October reaches under it: ${(-marginK).toFixed(1)} K past the limit`,
  );
});

test("the standard's hot box", () => {
  const hottest = (solarAbsorptance: number, windMs: number) => {
    const walls = [0, 90, 180, 225, 270, 315].map((azimuthDeg) => ({ name: `w${azimuthDeg}`, azimuthDeg }));
    const climate = { cycle: 'mil-std-810h-a1', windMs };
    const ranking = rankWalls(siteWith({ climate, walls, box: { solarAbsorptance, powerW: 0 } }));
    const hottestDay = ranking.walls.map(({ day }) => day).sort((a, b) => b.peakInsideAirC - a.peakInsideAirC)[0];
    if (hottestDay === undefined) throw new Error('no wall');
    return {
      peakC: hottestDay.peakInsideAirC.toFixed(1),
      at: clockTime(hottestDay.peakAtUtc, ranking.timeZone),
    };
  };
  const text = README.replace(/\s+/g, ' ');
  const calm = hottest(0.9, 0);
  expect(text).toContain(`comes out at ${calm.peakC} °C at ${calm.at}`);
  expect(text).toContain(`a white one (0.2) at ${hottest(0.2, 0).peakC} °C`);
  expect(text).toContain(`falls to ${hottest(0.9, 3.5).peakC} °C`);
});
