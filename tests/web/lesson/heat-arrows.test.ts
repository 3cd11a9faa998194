import { expect, test } from 'vitest';
import { balance, busyPaths } from '../../../web/lesson/played/balance.ts';
import { arrowPx, heatArrows, largestFlowW, SUMMED_ARROWS } from '../../../web/lesson/played/heat-arrows.ts';
import { SOUTH, stepAt, WEST } from './played-days.ts';

const hours = Array.from({ length: 24 }, (_, hour) => stepAt(WEST, hour));

test('arrows hold all of the ledger: in less out is what the box stores, at every hour', () => {
  for (const { ledgers } of [WEST, SOUTH]) {
    for (const step of hours) {
      const ledger = ledgers[step];
      if (ledger === undefined) throw new Error('no ledger');
      const sum = (side: string) =>
        heatArrows(ledger)
          .filter((arrow) => arrow.side === side)
          .reduce((total, { watts }) => total + watts, 0);
      // Arrows below 0.05 W are left out; there are nine ways.
      expect(Math.abs(sum('in') - sum('out') + ledger.storage)).toBeLessThan(9 * 0.05);
    }
  }
});

test('the balance closes to two hundredths of a watt, and names what flows', () => {
  for (const step of hours) {
    const ledger = WEST.ledgers[step];
    if (ledger === undefined) throw new Error('no ledger');
    const { inW, outW, storedW, leftW } = balance(ledger);
    expect(leftW).toBeCloseTo(inW - outW - storedW, 9);
    expect(Math.abs(leftW)).toBeLessThan(0.02);
  }
  const night = WEST.ledgers[stepAt(WEST, 2)];
  const noon = WEST.ledgers[stepAt(WEST, 16)];
  if (night === undefined || noon === undefined) throw new Error('no ledger');
  expect(busyPaths([night])).not.toContain('sunBeam');
  expect(busyPaths([night, noon])).toContain('sunBeam');
});

test('thickness is in proportion to watts, the largest flow the thickest', () => {
  const largest = largestFlowW([...WEST.ledgers, ...SOUTH.ledgers]);
  expect(arrowPx(largest, largest, 40)).toBe(40);
  expect(arrowPx(largest / 2, largest, 40)).toBe(20);
  expect(arrowPx(0.06, largest, 40)).toBe(2);
  for (const ledger of WEST.ledgers) {
    for (const { watts } of heatArrows(ledger)) expect(watts).toBeLessThanOrEqual(largest);
  }
});

test('sun goes in on a sunny afternoon, the largest first', () => {
  const ledger = WEST.ledgers[stepAt(WEST, 17)];
  if (ledger === undefined) throw new Error('no ledger');
  const [first] = heatArrows(ledger);
  expect(first).toMatchObject({ key: 'sun', side: 'in' });
  expect(first?.watts).toBeCloseTo(ledger.sunBeam + ledger.sunDiffuse + ledger.sunReflected, 9);
});

test('arrows that sum up lines of the balance are named, the wall among them', () => {
  const wall = SUMMED_ARROWS.find(({ words }) => words === 'Wall');
  expect(wall?.paths).toEqual(['longwaveWall', 'mounting']);
  const ledger = WEST.ledgers[stepAt(WEST, 16)];
  if (ledger === undefined) throw new Error('no ledger');
  const arrow = heatArrows(ledger).find(({ key }) => key === 'wall');
  expect((arrow?.side === 'out' ? -1 : 1) * (arrow?.watts ?? 0)).toBeCloseTo(ledger.longwaveWall + ledger.mounting, 9);
});
