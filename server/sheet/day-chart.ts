/** The design day of the wall: air inside and outside, the electronics where the limit is theirs, and the limits. */
import {
  clockReader,
  clockTime,
  coldDecides,
  formatQuantity,
  type SiteSheet,
  toDisplay,
  unitSymbol,
} from '../../model/index.ts';
import { type Area, GREY, HAIR, heading, INK, type Pen } from './pen.ts';

const SMALL = { size: 6.2, colour: GREY } as const;

interface Curve {
  readonly name: string;
  readonly values: readonly number[];
  readonly width: number;
  readonly dash: readonly [number, number] | null;
}

export function drawDay(pen: Pen, sheet: SiteSheet, area: Area): void {
  const { day, units, limits } = sheet;
  const { doc } = pen;
  const top = heading(pen, `The day on wall "${day.wall}", ${day.date}`, area);
  const shown = (values: readonly number[]) => values.map((c) => toDisplay('temperature', c, units));
  const curves: Curve[] = [
    { name: 'inside air', values: shown(day.insideAirC), width: 1.6, dash: null },
    { name: 'outside air', values: shown(day.outsideAirC), width: 0.9, dash: [4, 2.5] },
  ];
  if (limits.refersTo === 'componentCase')
    curves.push({ name: 'electronics', values: shown(day.electronicsC), width: 1.1, dash: [1.2, 1.8] });
  const drawn = limitsShown(sheet);
  const { low, high, step } = scale([...curves.flatMap(({ values }) => values), ...shown(drawn.map(({ c }) => c))]);

  const frame = { left: area.x + 20, top: top + 11, right: area.x + area.width - 2, bottom: area.y + area.height - 11 };
  const count = day.stepsUtc.length;
  const xOf = (k: number) => frame.left + (k / count) * (frame.right - frame.left);
  const yOf = (value: number) => frame.bottom - ((value - low) / (high - low)) * (frame.bottom - frame.top);

  pen.part(
    'Figure',
    () => {
      for (let value = low; value <= high + 1e-9; value += step) {
        doc.lineWidth(0.4).moveTo(frame.left, yOf(value)).lineTo(frame.right, yOf(value)).stroke(HAIR);
        pen.paragraph(
          String(Math.round(value)),
          { x: area.x, y: yOf(value) - 3, width: 17 },
          { ...SMALL, align: 'right' },
          1,
        );
      }
      for (const { at, label } of clockTicks(sheet)) {
        doc
          .lineWidth(0.4)
          .moveTo(xOf(at), frame.bottom)
          .lineTo(xOf(at), frame.bottom + 2)
          .stroke(INK);
        pen.paragraph(label, { x: xOf(at) - 14, y: frame.bottom + 3, width: 28 }, { ...SMALL, align: 'center' }, 1);
      }
      for (const curve of curves) {
        line(pen, curve);
        for (const [k, value] of curve.values.entries()) {
          if (k === 0) doc.moveTo(xOf(k), yOf(value));
          else doc.lineTo(xOf(k), yOf(value));
        }
        doc.stroke(INK).undash();
      }
      const at = decidingStep(sheet);
      // The names of the limits keep clear of the dot.
      const early = at < count / 3;
      for (const { side, c } of drawn) {
        const y = yOf(toDisplay('temperature', c, units));
        doc.lineWidth(1.2).dash(7, { space: 2 }).moveTo(frame.left, y).lineTo(frame.right, y);
        doc.stroke('#8a0f00').undash();
        pen.paragraph(
          `${side} limit ${formatQuantity('temperature', c, units, 0)}`,
          { x: early ? frame.right - 110 : frame.left + 3, y: side === 'upper' ? y - 8 : y + 2, width: 90 },
          { size: 6.5, bold: true, colour: '#8a0f00', align: early ? 'right' : 'left' },
          1,
        );
      }
      doc.circle(xOf(at), yOf(toDisplay('temperature', limitedC(sheet)[at] as number, units)), 2.2).fill(INK);
      key(pen, curves, { ...area, y: top, unit: unitSymbol('temperature', units) });
    },
    `Curves of the day: inside air up to ${formatQuantity('temperature', day.peakInsideAirC, units)} at ${clockTime(day.peakAtUtc, day.timeZone)}, ` +
      `outside air up to ${formatQuantity('temperature', day.peakOutsideAirC, units)}, ` +
      drawn.map(({ side, c }) => `${side} limit ${formatQuantity('temperature', c, units)}`).join(', '),
  );
}

/** What the limits refer to, through the day. */
function limitedC({ day, limits }: SiteSheet): readonly number[] {
  return { insideAir: day.insideAirC, outsideAir: day.outsideAirC, componentCase: day.electronicsC }[limits.refersTo];
}

/** The hottest step of that, or the coldest one where the lower limit decides. */
function decidingStep(sheet: SiteSheet): number {
  const values = limitedC(sheet);
  const sign = coldDecides(sheet.day) ? -1 : 1;
  return values.reduce((best, c, k) => (sign * (c - (values[best] as number)) > 0 ? k : best), 0);
}

/** A limit that does not decide and lies farther off than this share of the span of the day would flatten the curves. */
const LIMIT_REACH = 0.9;

interface ShownLimit {
  readonly side: 'upper' | 'lower';
  readonly c: number;
}

/** The limit that decides, and the other one where there is room for it. */
function limitsShown(sheet: SiteSheet): ShownLimit[] {
  const { day, limits } = sheet;
  const values = [...day.insideAirC, ...day.outsideAirC, ...limitedC(sheet)];
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const reach = LIMIT_REACH * (most - least);
  const cold = coldDecides(day);
  const both: ShownLimit[] = [
    { side: 'upper', c: limits.maxC },
    { side: 'lower', c: limits.minC },
  ];
  return both.filter(({ side, c }) => (side === 'lower') === cold || (c > least - reach && c < most + reach));
}

function line({ doc }: Pen, { width, dash }: Curve): void {
  doc.lineWidth(width);
  if (dash) doc.dash(dash[0], { space: dash[1] });
}

function key(pen: Pen, curves: readonly Curve[], { x, y, unit }: Area & { unit: string }): void {
  pen.paragraph(unit, { x, y, width: 17 }, { ...SMALL, align: 'right' }, 1);
  let at = x + 22;
  for (const curve of curves) {
    line(pen, curve);
    pen.doc
      .moveTo(at, y + 3.5)
      .lineTo(at + 18, y + 3.5)
      .stroke(INK)
      .undash();
    pen.paragraph(curve.name, { x: at + 21, y, width: 60 }, { size: 6.5 }, 1);
    at += 27 + pen.widthOf(curve.name, { size: 6.5 });
  }
}

/** Where the clock of the place shows a full hour divisible by three. */
function clockTicks({ day, timeZone }: SiteSheet): { at: number; label: string }[] {
  const clock = clockReader(timeZone);
  const every = Math.max(1, Math.round(day.stepsUtc.length / 24 / 12));
  return day.stepsUtc.flatMap((utc, at) => {
    if (at % every !== 0) return [];
    const label = clock(utc);
    return /:00$/.test(label) && Number(label.slice(0, 2)) % 3 === 0 ? [{ at, label }] : [];
  });
}

/** Round ends for an axis, and a round step. */
function scale(values: readonly number[]): { low: number; high: number; step: number } {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const step = [5, 10, 20, 25, 50].find((one) => (most - least) / one <= 5.5) ?? 100;
  return { low: Math.floor(least / step) * step, high: Math.ceil((most + 0.25 * step) / step) * step, step };
}
