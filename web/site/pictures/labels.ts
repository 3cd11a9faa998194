/** Finds room for words in a picture: none lies on another, and what finds no place is left out. */
import type { Point } from './plane.ts';

export interface Rect {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Label {
  readonly text: string;
  /** Middles that the text may have, the best one first. */
  readonly places: readonly Point[];
}

export interface PlacedLabel {
  readonly text: string;
  readonly at: Point;
}

/** Mean width of a letter of the pictures, 13 px high, on the safe side; a browser would tell only once it has drawn. */
const LETTER_WIDTH_PX = 7.6;

const LINE_PX = 15;

/** What a text covers when its middle lies at a point. */
export function textRect(text: string, [x, y]: Point): Rect {
  const half = (text.length * LETTER_WIDTH_PX) / 2;
  return { left: x - half, right: x + half, top: y - LINE_PX / 2, bottom: y + LINE_PX / 2 };
}

/** Places labels in order, within `frame` and clear of `taken`. */
export function placeLabels(labels: readonly Label[], frame: Rect, taken: readonly Rect[] = []): PlacedLabel[] {
  const rects = [...taken];
  return labels.flatMap(({ text, places }) => {
    const at = places.find((place) => {
      const rect = textRect(text, place);
      return inside(rect, frame) && rects.every((other) => !overlap(rect, other));
    });
    if (at === undefined) return [];
    rects.push(textRect(text, at));
    return [{ text, at }];
  });
}

function inside(rect: Rect, frame: Rect): boolean {
  return rect.left >= frame.left && rect.right <= frame.right && rect.top >= frame.top && rect.bottom <= frame.bottom;
}

function overlap(a: Rect, b: Rect): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
