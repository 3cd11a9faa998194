import { expect, test } from 'vitest';
import { placeLabels, textRect } from '../../../web/site/pictures/labels.ts';

const frame = { left: 0, top: 0, right: 200, bottom: 100 };

test('a label takes its first free place within the frame', () => {
  const outside = [2, 50] as const;
  expect(placeLabels([{ text: 'east', places: [outside, [100, 50]] }], frame)).toEqual([
    { text: 'east', at: [100, 50] },
  ]);
});

test('no label lies on an earlier one or on what is taken, and one without a place is left out', () => {
  const taken = [textRect('x', [150, 50])];
  const labels = ['first', 'second', 'third'].map((text) => ({
    text,
    places: [[100, 50] as const, [150, 50] as const, [100, 70] as const],
  }));
  expect(placeLabels(labels, frame, taken)).toEqual([
    { text: 'first', at: [100, 50] },
    { text: 'second', at: [100, 70] },
  ]);
});
