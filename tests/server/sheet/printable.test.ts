import { expect, test } from 'vitest';
import { makePrinter } from '../../../server/sheet/printable.ts';

const printed = (text: string) => {
  const printer = makePrinter();
  return { text: printer.print(text), lost: printer.lost };
};

test('Latin 1 and the signs of WinAnsi stay', () => {
  expect(printed('Ångström “x²” – 46°, €')).toEqual({ text: 'Ångström “x²” – 46°, €', lost: false });
});

test('a letter loses marks that cannot be shown, other scripts become question marks, and both are told', () => {
  expect(printed('Dvořák')).toEqual({ text: 'Dvorák', lost: true });
  expect(printed('東 wall')).toEqual({ text: '? wall', lost: true });
  expect(printed('νότος')).toEqual({ text: '?????', lost: true });
  expect(printed('جدار')).toEqual({ text: '????', lost: true });
});

test('our own signs are spelt out without being lost', () => {
  expect(printed('0.1 Ω −3')).toEqual({ text: '0.1\u00a0ohm -3', lost: false });
});

test('what steers a reader is left out', () => {
  expect(printed('a\u202eb\u0007c\n d')).toEqual({ text: 'abc d', lost: false });
});

test('a number stays with its unit', () => {
  expect(printed('61.4 °C, 3.6 K inside')).toEqual({ text: '61.4\u00a0°C, 3.6\u00a0K inside', lost: false });
});
