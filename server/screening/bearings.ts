/** The bearings in one cell: "8 98 SW", "8;98", "8 deg 98 deg". */
import { readQuantityText } from '../../model/index.ts';

const isBearing = (text: string): boolean => readQuantityText(text, 'bearing') !== null;

/** The cell in parts, each one bearing if it can be read. A unit that stands apart goes with the number before it. */
export function bearingsIn(cell: string): string[] {
  const bearings: string[] = [];
  for (const part of cell.split(/[\s;|,]+/).filter((text) => text !== '')) {
    const number = bearings.at(-1);
    const whole = `${number} ${part}`;
    if (Number.isFinite(Number(number)) && !isBearing(part) && isBearing(whole)) bearings[bearings.length - 1] = whole;
    else bearings.push(part);
  }
  return bearings;
}
