/** The figures of the README are those of the model. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { clockTime, DEMO_SITE, parseSite, rankWalls } from '../model/index.ts';
import { siteWith } from './model/sites.ts';

const README = readFileSync(new URL('../README.md', import.meta.url), 'utf8');

describe('the worked example', () => {
  const { walls, timeZone } = rankWalls(parseSite(DEMO_SITE));
  test.each(walls)('$name', ({ name, day }) => {
    const row = README.split('\n').find((line) => line.startsWith(`| ${name}`)) ?? '';
    expect(row).toContain(`${day.peakInsideAirC.toFixed(1)} °C at ${clockTime(day.peakAtUtc, timeZone)}`);
    expect(row).toContain(`${day.marginK.toFixed(1)} K`);
    expect(row).toContain(day.sunHours === 0 ? 'none' : `${day.sunHours.toFixed(1)} h`);
  });
});

test("the standard's hot box", () => {
  const hottest = (solarAbsorptance: number, windMs: number) => {
    const walls = [0, 90, 180, 225, 270, 315].map((azimuthDeg) => ({ name: `w${azimuthDeg}`, azimuthDeg }));
    const climate = { cycle: 'mil-std-810h-a1', windMs };
    const ranking = rankWalls(siteWith({ climate, walls, box: { solarAbsorptance, powerW: 0 } }));
    return Math.max(...ranking.walls.map(({ day }) => day.peakInsideAirC)).toFixed(1);
  };
  const text = README.replace(/\s+/g, ' ');
  expect(text).toContain(`comes out at ${hottest(0.9, 0)} °C at 16:45`);
  expect(text).toContain(`a white one (0.2) at ${hottest(0.2, 0)} °C`);
  expect(text).toContain(`falls to ${hottest(0.9, 3.5)} °C`);
});
