import { describe, expect, test } from 'vitest';
import { DEMO_SITE, parseSite, type WallPlan, wallPlan } from '../../../model/index.ts';
import {
  drawnBox,
  instantAt,
  instantTowards,
  planChart,
  planReachM,
  reachesBeyond,
  scaleBarM,
} from '../../../web/site/pictures/plan-chart.ts';
import { sunAt } from './suns.ts';

const plan: WallPlan = {
  wall: 'south',
  wallAzimuthDeg: 180,
  timeZone: 'UTC',
  date: '2026-07-21',
  building: null,
  wallLine: [
    [-6, 0],
    [6, 0],
  ],
  endless: true,
  box: [
    [-0.2, -0.01],
    [0.2, -0.01],
    [0.2, -0.11],
    [-0.2, -0.11],
  ],
  shapes: [],
  sun: [],
};

function block(outM: number): WallPlan['shapes'][number] {
  return { kind: 'block', index: 0, transmittance: 0, topM: 3, outline: [[0, -outM]] };
}

describe('planReachM', () => {
  test('holds the wall and what stands before it within thirty metres', () => {
    expect(planReachM(plan)).toBeCloseTo(6 * 1.06, 9);
    expect(planReachM({ ...plan, shapes: [block(20)] })).toBeCloseTo(20 * 1.06, 9);
    expect(planReachM({ ...plan, shapes: [block(80)] })).toBeCloseTo(6 * 1.06, 9);
  });

  test('leaves out the back of the building but not a wing before the wall', () => {
    const back = { ...plan, building: [[-6, 20] as [number, number]] };
    expect(planReachM(back)).toBeCloseTo(6 * 1.06, 9);
    expect(planReachM({ ...back, building: [[6, -9]] })).toBeCloseTo(Math.hypot(6, 9) * 1.06, 9);
  });

  test('what lies outside is told', () => {
    expect(reachesBeyond(block(80).outline, 10)).toBe(true);
    expect(reachesBeyond(block(8).outline, 10)).toBe(false);
  });
});

test('north is up and east to the right', () => {
  const chart = planChart(300, 50, 10);
  expect(chart.at([0, 10])).toEqual([150, 50]);
  expect(chart.at([5, 0])).toEqual([200, 150]);
});

test('a box that would be too small is enlarged where it hangs', () => {
  const small = drawnBox(plan, planChart(300, 50, 10));
  expect(small.enlarged).toBeCloseTo(8, 6);
  const [backLeft, backRight, frontRight] = small.corners as [number, number][];
  expect(Math.abs((backRight?.[0] ?? 0) - (backLeft?.[0] ?? 0))).toBeCloseTo(32, 6);
  expect((frontRight?.[1] ?? 0) - (backRight?.[1] ?? 0)).toBeCloseTo(8, 6);
  expect(backLeft?.[1]).toBeCloseTo(150.1, 6);
  expect(drawnBox(plan, planChart(3000, 50, 10)).enlarged).toBe(1);
});

test('the scale bar is round in the unit that is shown', () => {
  const chart = planChart(300, 50, 10);
  expect(scaleBarM(chart, 'metric')).toBe(2);
  expect(scaleBarM(chart, 'us')).toBeCloseTo(10 * 0.3048, 9);
});

describe('instants', () => {
  const sun = [80, 100, 90, 180, 270].map((azimuthDeg, k) => sunAt({ minute: k * 10, azimuthDeg }));

  test('the one whose sun is nearest to the bearing', () => {
    expect(instantTowards(sun, 200, 0)).toBe(3);
    expect(instantTowards(sun, 350, 0)).toBe(4);
  });

  test('where the sun passes twice, the one nearer in time', () => {
    expect(instantTowards(sun, 95, 0)).toBe(1);
    expect(instantTowards(sun, 95, 4)).toBe(2);
  });

  test('the one nearest to a time', () => {
    expect(instantAt(sun, new Date(26 * 60_000))).toBe(3);
  });

  test('each bearing of a real day is met to within the ten minutes between two suns', () => {
    const { sun: day } = wallPlan(parseSite(DEMO_SITE), 'south');
    for (const [k, { azimuthDeg }] of day.entries()) expect(instantTowards(day, azimuthDeg, 72)).toBe(k);
  });
});
