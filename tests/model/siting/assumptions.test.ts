/** What the assumptions say: every one in words, with where it comes from. */
import { expect, test } from 'vitest';
import { dayAssumptions, parseSite } from '../../../model/index.ts';

const FULL = parseSite({
  place: { latitudeDeg: 33, longitudeDeg: -112 },
  climate: { sample: 'dry-basin', coldNight: { minC: -10 } },
  building: {
    outlineM: [
      [0, 0],
      [10, 0],
      [10, 8],
      [0, 8],
    ],
  },
  box: {
    ...{ widthM: 0.3, heightM: 0.4, depthM: 0.1, powerW: 10, finish: 'whitePaint' },
    ...{ hood: {}, vents: { lowAreaM2: 0.001, highAreaM2: 0.001 }, battery: { massKg: 5 } },
    compartments: { lowerShare: 0.4 },
  },
  walls: [
    {
      name: 'a',
      azimuthDeg: 180,
      eave: { depthM: 0.5, heightAboveBoxM: 0.3 },
      obstructions: [
        { kind: 'front', distanceM: 5, heightM: 2 },
        { kind: 'sideWall', side: 'left', distanceM: 2, depthM: 1, heightM: 2 },
        { kind: 'tree', rightM: 3, outM: 5, heightM: 6, crownDiameterM: 3 },
      ],
    },
  ],
});

test('no name or value of the program stands in the words', () => {
  for (const units of ['metric', 'us'] as const) {
    for (const { text, origin } of dayAssumptions(FULL, units)) {
      expect(text).not.toMatch(/\b[a-z]+[A-Z]|\[\]|^\w+\.\w|: (true|false)$/);
      expect(origin).not.toBe('default');
    }
  }
  const texts = dayAssumptions(FULL, 'metric').map(({ text }) => text);
  expect(texts).toContain('the limits refer to: the air inside the box');
  expect(texts).toContain('faces under the hood: front, left, right, top');
  expect(texts).toContain('the hood is open at its top: yes');
});
