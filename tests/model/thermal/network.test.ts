import { describe, expect, test } from 'vitest';
import { createNetwork } from '../../../model/thermal/network.ts';

const oneNode = (capacityJK: number) =>
  createNetwork({
    capacitiesJK: { node: capacityJK },
    boundaries: ['air'],
    links: [{ kind: 'conduction', from: 'node', to: 'air', conductanceWK: 2 }],
  });

describe('a single node on a conductance has a solution by hand', () => {
  test('steady: source over conductance', () => {
    const t = Float64Array.of(250, 300);
    oneNode(1).settle(t, Float64Array.of(10), 0);
    expect(t[0]).toBeCloseTo(305, 9);
  });

  test('one implicit step: (C T / dt + G Ta + Q) / (C / dt + G)', () => {
    const t = Float64Array.of(320, 300);
    oneNode(1000).step(t, Float64Array.of(10), 0, 100);
    expect(t[0]).toBeCloseTo((10 * 320 + 2 * 300 + 10) / (10 + 2), 9);
  });

  test('a step with a past is a backward difference of second order', () => {
    const t = Float64Array.of(320, 300);
    oneNode(1000).step(t, Float64Array.of(10), 0, 100, Float64Array.of(321));
    expect(t[0]).toBeCloseTo((10 * (2 * 320 - 0.5 * 321) + 2 * 300 + 10) / (15 + 2), 9);
  });

  test('halving the step quarters the error', () => {
    const errorAt = (stepS: number) => {
      const exact = (s: number) => 300 + 20 * Math.exp(-s / 500);
      const t = Float64Array.of(320, 300);
      let earlier = Float64Array.of(exact(-stepS));
      const network = oneNode(1000);
      for (let s = 0; s < 500; s += stepS) {
        const now = t.slice(0, 1);
        network.step(t, Float64Array.of(0), 0, stepS, earlier);
        earlier = now;
      }
      return Math.abs((t[0] as number) - exact(500));
    };
    expect(errorAt(50) / errorAt(25)).toBeGreaterThan(3.5);
    expect(errorAt(50) / errorAt(25)).toBeLessThan(4.5);
  });

  test('many short steps follow the exponential', () => {
    const t = Float64Array.of(320, 300);
    const network = oneNode(1000);
    for (let s = 0; s < 500; s++) network.step(t, Float64Array.of(0), 0, 1);
    expect(t[0]).toBeCloseTo(300 + 20 * Math.exp(-1), 1);
  });
});

test('a network at one temperature stays there, whatever the links', () => {
  const network = createNetwork({
    capacitiesJK: { a: 10, b: 20 },
    boundaries: ['sky', 'air'],
    links: [
      { kind: 'radiation', from: 'a', to: 'sky', exchangeAreaM2: 1 },
      { kind: 'radiation', from: 'a', to: 'b', exchangeAreaM2: 2 },
      { kind: 'convection', from: 'b', to: 'air', areaM2: 1, coefficient: (s, a, wind) => 1 + Math.abs(s - a) + wind },
      { kind: 'conduction', from: 'a', to: 'b', conductanceWK: 3 },
    ],
  });
  const t = Float64Array.of(290, 290, 290, 290);
  network.step(t, new Float64Array(2), 5, 300);
  expect([...t]).toEqual([290, 290, 290, 290]);
});

test('heat that leaves one node enters the other', () => {
  const network = createNetwork({
    capacitiesJK: { a: 10, b: 20 },
    boundaries: [],
    links: [
      { kind: 'radiation', from: 'a', to: 'b', exchangeAreaM2: 1 },
      { kind: 'convection', from: 'a', to: 'b', areaM2: 2, coefficient: () => 4 },
    ],
  });
  const net = new Float64Array(2);
  network.netHeatW(Float64Array.of(330, 300), new Float64Array(2), 0, net);
  expect(net[0]).toBeLessThan(0);
  expect((net[0] as number) + (net[1] as number)).toBeCloseTo(0, 9);
});

test('a step keeps energy: storage equals what flowed in at its end', () => {
  const network = createNetwork({
    capacitiesJK: { a: 500, b: 2000 },
    boundaries: ['sky', 'air'],
    links: [
      { kind: 'radiation', from: 'a', to: 'sky', exchangeAreaM2: 0.9 },
      { kind: 'radiation', from: 'a', to: 'b', exchangeAreaM2: 0.5 },
      { kind: 'convection', from: 'a', to: 'air', areaM2: 1, coefficient: (s, a) => 1.5 * Math.cbrt(Math.abs(s - a)) },
    ],
  });
  const before = [340, 310];
  const t = Float64Array.of(340, 310, 270, 300);
  const sources = Float64Array.of(400, 5);
  network.step(t, sources, 0, 300);
  const net = new Float64Array(2);
  network.netHeatW(t, sources, 0, net);
  expect((500 * ((t[0] as number) - 340)) / 300).toBeCloseTo(net[0] as number, 1);
  expect((2000 * ((t[1] as number) - (before[1] as number))) / 300).toBeCloseTo(net[1] as number, 1);
});

test('an unknown node and a balance without an answer are errors', () => {
  const link = { kind: 'conduction', from: 'a', to: 'nowhere', conductanceWK: 1 } as const;
  expect(() => createNetwork({ capacitiesJK: { a: 1 }, boundaries: [], links: [link] })).toThrow(/nowhere/);
  expect(() => oneNode(1).settle(Float64Array.of(300, Number.NaN), Float64Array.of(1), 0)).toThrow(/no solution/);
  const adrift = createNetwork({ capacitiesJK: { a: 1 }, boundaries: [], links: [] });
  expect(() => adrift.settle(Float64Array.of(300), Float64Array.of(1), 0)).toThrow(/no solution/);
});
