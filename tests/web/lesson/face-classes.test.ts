import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  classLabels,
  faceClass,
  faceClasses,
  mostTakenInW,
  roundUp,
  takenInW,
} from '../../../web/lesson/played/face-classes.ts';
import { SOUTH, stepAt, WEST } from './played-days.ts';

describe('classes of absorbed sun', () => {
  test('reach up to the most in five round steps', () => {
    expect(faceClasses(36.4).boundsW).toEqual([10, 20, 30, 40, 50]);
    expect(faceClasses(4).boundsW).toEqual([1, 2, 3, 4, 5]);
    expect(classLabels(faceClasses(4))).toEqual(['none', '0 to 1 W', '1 to 2 W', '2 to 3 W', '3 to 4 W', '4 to 5 W']);
  });

  test('cover every face whatever the most is, and rise with the watts', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 5000, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (mostW, a, b) => {
          const classes = faceClasses(mostW);
          const most = classes.boundsW.at(-1) ?? 0;
          expect(most).toBeGreaterThanOrEqual(mostW);
          expect(most).toBeLessThan(Math.max(mostW, 1) * 2.51);
          const [low, high] = a < b ? [a, b] : [b, a];
          expect(faceClass(classes, low * mostW)).toBeLessThanOrEqual(faceClass(classes, high * mostW));
        },
      ),
    );
  });

  test('a dark face has class 0, and a bound belongs to the class below it', () => {
    const classes = faceClasses(10);
    expect([0, 0.04, 0.06, 2, 2.01, 10, 11].map((watts) => faceClass(classes, watts))).toEqual([0, 0, 1, 1, 2, 5, 5]);
  });

  test('round up to 1, 2 or 5 with zeros', () => {
    expect([0.2, 0.21, 1, 3.3, 7, 61].map(roundUp)).toEqual([0.2, 0.5, 1, 5, 10, 100]);
  });

  test('the most of two boxes is that of the sunnier one', () => {
    const both = mostTakenInW([SOUTH, WEST]);
    expect(both).toBe(Math.max(mostTakenInW([SOUTH]), mostTakenInW([WEST])));
    expect(takenInW(WEST, 'front', stepAt(WEST, 2))).toBe(0);
    expect(takenInW(WEST, 'front', stepAt(WEST, 17))).toBeGreaterThan(takenInW(WEST, 'front', stepAt(WEST, 9)));
  });
});
