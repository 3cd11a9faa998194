/** The theme for glare holds what it promises: 7:1 for what carries a meaning, thicker lines. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { themeOf } from '../../web/theme.ts';

const CSS = readFileSync(fileURLToPath(new URL('../../web/styles/base.css', import.meta.url)), 'utf8');

const values = (selector: string) => {
  const start = CSS.indexOf(`${selector} {`);
  const block = CSS.slice(start, CSS.indexOf('}', start));
  return Object.fromEntries([...block.matchAll(/--([\w-]+): ([^;]+);/g)].map(([, name, value]) => [name, value]));
};
const usual = values(':root');
const sunlight = { ...usual, ...values(':root[data-theme="sunlight"]') };

/** Relative luminance, WCAG 2.2. */
function luminance(hex: string): number {
  const digits = hex.length === 4 ? [...hex.slice(1)].map((digit) => digit + digit) : hex.slice(1).match(/../g);
  const [red, green, blue] = (digits ?? []).map((pair) => {
    const share = Number.parseInt(pair, 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

const contrast = (a: string, b: string) => {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
};

test("contrast by the standard's own cases: black on white 21, #767676 on white 4.54 (WCAG 2.2, technique G18)", () => {
  expect(contrast('#000', '#ffffff')).toBeCloseTo(21, 6);
  expect(contrast('#767676', '#fff')).toBeCloseTo(4.54, 2);
});

describe('sunlight', () => {
  test('faces darken from class to class, and glare leaves the whole span wider', () => {
    const lights = (theme: Record<string, string | undefined>) =>
      Array.from({ length: 6 }, (_, k) => luminance(theme[`taken-${k}`] ?? ''));
    for (const theme of [usual, sunlight]) expect(lights(theme)).toEqual(lights(theme).toSorted((a, b) => b - a));
    const steps = (theme: Record<string, string | undefined>) =>
      Array.from({ length: 5 }, (_, k) => contrast(theme[`taken-${k}`] ?? '', theme[`taken-${k + 1}`] ?? ''));
    expect(Math.min(...steps(sunlight))).toBeGreaterThan(Math.min(...steps(usual)));
    expect(contrast(sunlight['taken-0'] ?? '', sunlight['taken-5'] ?? '')).toBeGreaterThan(
      contrast(usual['taken-0'] ?? '', usual['taken-5'] ?? ''),
    );
  });

  test.each(['ink', 'good', 'bad', 'link', 'focus', 'warm', 'cool', 'third', 'path', 'lit', 'faint', 'mass-line'])(
    '%s stands out from paper and wash at 7:1',
    (name) => {
      for (const ground of ['paper', 'wash'] as const) {
        expect(contrast(sunlight[name] ?? '', sunlight[ground] ?? '')).toBeGreaterThanOrEqual(7);
      }
    },
  );

  test.each(['soil', 'shaded'])('%s stands out from paper at 7:1', (name) => {
    expect(contrast(sunlight[name] ?? '', sunlight['paper'] ?? '')).toBeGreaterThanOrEqual(7);
  });

  test('lines are thicker, letters no smaller', () => {
    for (const name of ['edge', 'hair', 'stroke', 'weight']) {
      expect(Number.parseFloat(sunlight[name] ?? '')).toBeGreaterThan(Number.parseFloat(usual[name] ?? ''));
    }
  });
});

test.each(['ink', 'good', 'bad', 'link', 'focus', 'faint'])('as usual, too, %s stands out at 7:1', (name) => {
  expect(contrast(usual[name] ?? '', usual['paper'] ?? '')).toBeGreaterThanOrEqual(7);
});

test('the device decides only where nobody chose', () => {
  expect([themeOf('device', true), themeOf('device', false)]).toEqual(['sunlight', 'light']);
  expect([themeOf('light', true), themeOf('sunlight', false)]).toEqual(['light', 'sunlight']);
});
