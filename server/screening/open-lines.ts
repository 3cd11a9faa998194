/**
 * Finds where records end, line by line. A quote that is opened and never closed would swallow the rows after it: such a line is given
 * up, and those after it are looked at afresh. A quoted cell that stood open from one line on stands open from the next one on as well,
 * if that one opens a cell at all; so the search for the line that closes it never goes back, and a line is looked at twice at most.
 */
import { type LineQuotes, lineQuotes } from './line-quotes.ts';

/** A quoted cell that holds more lines or characters than this is taken for a quote that was not meant. */
const MOST_LINES = 200;
const MOST_CHARACTERS = 100_000;

const UNCLOSED = 'a quote is opened and not closed; write a quote inside a cell twice';
const TOO_LONG = 'the line is too long';

/** The text of a record, or of a line that is none. */
export interface Piece {
  /** The line of the file it begins on, from 1. */
  readonly line: number;
  readonly text: string;
  readonly fault?: string;
}

interface Line {
  readonly text: string;
  /** Longer than any line may be; only its beginning is kept. */
  readonly cut: boolean;
  readonly fresh: LineQuotes;
  /** Looked at when an open cell reaches the line. */
  inside: LineQuotes | null;
}

/** Lines that wait for the end of their record. */
export class OpenLines {
  readonly #delimiter: string;
  readonly #quotesOf: typeof lineQuotes;
  #lines: Line[] = [];
  /** The line that the next record begins with, in `#lines`. */
  #head = 0;
  /** Number of that line in the file. */
  #line = 1;
  /** The lines after the head and before this one keep a quoted cell open. Of them: */
  #reached = 1;
  #characters = 0;
  #delimiters = 0;
  #unsound = 0;

  constructor(delimiter: string, quotesOf = lineQuotes) {
    this.#delimiter = delimiter;
    this.#quotesOf = quotesOf;
  }

  get empty(): boolean {
    return this.#head === this.#lines.length;
  }

  /** A line that is a record of its own whatever stands around it, met while nothing is open. */
  pass(text: string): Piece {
    return { line: this.#line++, text };
  }

  add(text: string, cut: boolean): void {
    // What is cut is no part of any record.
    const fresh = cut ? { open: false, delimiters: 0, sound: true } : this.#quotesOf(text, this.#delimiter, false);
    this.#lines.push({ text, cut, fresh, inside: null });
  }

  /** The next record, or the next line that is none; null while it takes more lines to tell. `width` is in cells, null if unknown. */
  next(width: number | null, ended: boolean): Piece | null {
    const first = this.#lines[this.#head];
    if (first === undefined) return null;
    if (first.cut) return this.#taken(1, TOO_LONG);
    if (!first.fresh.open) return this.#taken(1);
    const closing = this.#search();
    if (this.#reached - this.#head > MOST_LINES || this.#textLength(first) > MOST_CHARACTERS) {
      return this.#taken(1, UNCLOSED);
    }
    if (closing === undefined) return ended ? this.#taken(1, UNCLOSED) : null;
    return this.#fits(first, closing, width) ? this.#taken(this.#reached - this.#head + 1) : this.#taken(1, UNCLOSED);
  }

  /** The line that closes the cell which the head leaves open; undefined where none does so far. */
  #search(): LineQuotes | 'cut' | undefined {
    for (;;) {
      const line = this.#lines[this.#reached];
      if (line === undefined) return undefined;
      if (line.cut) return 'cut';
      line.inside ??= this.#quotesOf(line.text, this.#delimiter, true);
      if (!line.inside.open) return line.inside;
      this.#count(line, 1);
      this.#reached += 1;
    }
  }

  /** Of the record as far as it is known to stand open. */
  #textLength(first: Line): number {
    return first.text.length + this.#characters + (this.#reached - this.#head - 1);
  }

  /** Whether a record over several lines is well formed and as wide as the header. */
  #fits({ fresh }: Line, closing: LineQuotes | 'cut', width: number | null): boolean {
    if (closing === 'cut' || !fresh.sound || !closing.sound || this.#unsound > 0) return false;
    return width === null || fresh.delimiters + this.#delimiters + closing.delimiters + 1 === width;
  }

  #count({ text, inside }: Line, sign: 1 | -1): void {
    this.#characters += sign * text.length;
    this.#delimiters += sign * (inside?.delimiters ?? 0);
    this.#unsound += sign * (inside?.sound === false ? 1 : 0);
  }

  /** Takes lines off the head. */
  #taken(count: number, fault?: string): Piece {
    const text = this.#lines
      .slice(this.#head, this.#head + count)
      .map((line) => line.text)
      .join('\n');
    const piece = { line: this.#line, text, ...(fault !== undefined && { fault }) };
    for (let k = 1; k <= count; k++) {
      const after = this.#lines[this.#head + k];
      if (this.#head + k < this.#reached && after !== undefined) this.#count(after, -1);
    }
    this.#head += count;
    this.#line += count;
    this.#reached = Math.max(this.#reached, this.#head + 1);
    this.#forget();
    return piece;
  }

  /** Lines that were taken are let go once they are half of all, so that a line is moved once or so. */
  #forget(): void {
    if (this.#head * 2 < this.#lines.length) return;
    this.#lines = this.#lines.slice(this.#head);
    this.#reached -= this.#head;
    this.#head = 0;
  }
}
