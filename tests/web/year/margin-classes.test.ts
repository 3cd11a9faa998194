import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { marginClasses, marginClassOf } from '../../../web/site/year/margin-classes.ts';

const limits = { minC: -40, maxC: 65 };

describe.each(['metric', 'us'] as const)('classes in %s units', (units) => {
  const classes = marginClasses(units);
  const at = (celsius: number) => classes[marginClassOf(celsius, limits, units)]?.words ?? '';

  test('the limit itself is not over it, a little more is; below the lower limit is a class of its own', () => {
    expect(at(65)).toMatch(/^up to .* below the limit$/);
    expect(at(65.01)).toMatch(/^up to .* over$/);
    expect(at(200)).toMatch(/^more than .* over the limit$/);
    expect(at(-39.9)).toMatch(/^more than .* below it$/);
    expect(at(-40.1)).toBe('below the lower limit');
  });

  test('each is entered, the hotter the earlier, and every one has a colour', () => {
    const reached = Array.from({ length: 2000 }, (_, k) => marginClassOf(-45 + k * 0.1, limits, units));
    expect(new Set(reached).size).toBe(classes.length);
    const warm = reached.filter((index) => index < classes.length - 1);
    expect(warm).toEqual([...warm].sort((a, b) => b - a));
    const css = readFileSync(new URL('../../../web/styles/year.css', import.meta.url), 'utf8');
    const colours = classes.map(({ name }) => new RegExp(`\\.${name} \\{\\s*fill: (#\\w+);`).exec(css)?.[1] ?? '');
    expect(new Set(colours).size).toBe(classes.length);
    expect(colours).not.toContain('');
    // Hotter is darker, so that the map reads in grey, too.
    const lights = colours.slice(0, -1).map(luminance);
    expect(lights).toEqual([...lights].sort((a, b) => a - b));
  });
});

test('the same hour falls into the class of its rounded border in either unit', () => {
  expect(marginClasses('metric')[marginClassOf(65 + 6, limits, 'metric')]?.words).toBe('5 to 10 K over');
  expect(marginClasses('us')[marginClassOf(65 + 6, limits, 'us')]?.words).toBe('10 to 20 °F over');
});

/** Relative luminance of a colour (WCAG 2.2, definition). */
function luminance(hex: string): number {
  const long = hex.length === 4 ? [...hex.slice(1)].map((digit) => digit + digit).join('') : hex.slice(1);
  const [red, green, blue] = [0, 2, 4].map((at) => {
    const value = Number.parseInt(long.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
