/**
 * Cuts the text of a table into records. csv-parse reads what is in them; where they end is found before (open-lines.ts), because a
 * quote that is opened and never closed would otherwise swallow the rows after it, and none may get lost.
 */
import { parse } from 'csv-parse/sync';
import { lineQuotes } from './line-quotes.ts';
import { OpenLines, type Piece } from './open-lines.ts';

/** A record of a table, or the text of a line that is none. */
export interface TableRecord {
  /** As a spreadsheet counts: the header is row 1. */
  readonly row: number;
  /** The line of the file it begins on, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
  /** What is wrong with it as a record. */
  readonly fault?: string;
}

/** Longest line; what is longer is refused, and passed over to its end. */
const LONGEST_LINE = 200_000;

/** So much of a line that is too long is kept, to show which it is. */
const SHOWN_OF_LONG = 100;

/** Cuts text that comes in chunks; call `end` after the last one. */
export class RecordCutter {
  readonly #delimiter: string;
  readonly #open: OpenLines;
  #rest = '';
  /** Whether a line that is too long was refused already and goes on. */
  #passingOver = false;
  #rows = 0;
  #width: number | null = null;

  constructor(delimiter: string, quotesOf = lineQuotes) {
    this.#delimiter = delimiter;
    this.#open = new OpenLines(delimiter, quotesOf);
  }

  push(chunk: string): TableRecord[] {
    const text = this.#rest + chunk;
    // A carriage return at the end may be half of a line end.
    const whole = text.endsWith('\r') ? text.slice(0, -1) : text;
    const lines = whole.split(/\r\n|\n|\r/);
    let rest = lines.pop() ?? '';
    if (this.#passingOver && lines.length > 0) {
      lines.shift();
      this.#passingOver = false;
    }
    if (this.#passingOver) rest = '';
    else if (rest.length > LONGEST_LINE) {
      lines.push(rest);
      this.#passingOver = true;
      rest = '';
    }
    this.#rest = rest + text.slice(whole.length);
    return this.#read(lines.flatMap((line) => this.#take(line)));
  }

  end(): TableRecord[] {
    const last = this.#rest.replace(/\r$/, '');
    return this.#read([...(last === '' ? [] : this.#take(last)), ...this.#pieces(true)]);
  }

  /** What is known to end with a line. */
  #take(line: string): Piece[] {
    if (this.#open.empty && line.length <= LONGEST_LINE && !line.includes('"'))
      return [this.#measured(this.#open.pass(line))];
    const cut = line.length > LONGEST_LINE;
    this.#open.add(cut ? line.slice(0, SHOWN_OF_LONG) : line, cut);
    return this.#pieces(false);
  }

  #pieces(ended: boolean): Piece[] {
    const pieces: Piece[] = [];
    for (let piece = this.#open.next(this.#width, ended); piece; piece = this.#open.next(this.#width, ended)) {
      pieces.push(this.#measured(piece));
    }
    return pieces;
  }

  /** The first record tells how wide the others are. */
  #measured(piece: Piece): Piece {
    if (piece.fault === undefined) this.#width ??= this.#cells([piece.text])[0]?.length ?? null;
    return piece;
  }

  #read(pieces: readonly Piece[]): TableRecord[] {
    const whole = pieces.filter(({ fault }) => fault === undefined);
    const cells = this.#cells(whole.map(({ text }) => text));
    let next = 0;
    return pieces.map(({ line, text, fault }) => {
      this.#rows += 1;
      if (fault !== undefined) return { row: this.#rows, line, cells: [text], fault };
      return { row: this.#rows, line, cells: cells[next++] ?? [] };
    });
  }

  #cells(texts: readonly string[]): string[][] {
    if (texts.every((text) => !text.includes('"'))) return texts.map((text) => text.split(this.#delimiter));
    const together = parseText(texts.join('\n'), this.#delimiter);
    if (together?.length === texts.length) return together;
    return texts.map((text) => parseText(text, this.#delimiter)?.[0] ?? text.split(this.#delimiter));
  }
}

function parseText(text: string, delimiter: string): string[][] | null {
  const options = { delimiter, relax_quotes: true, relax_column_count: true, record_delimiter: '\n' };
  try {
    return parse(text, options) as string[][];
  } catch {
    return null;
  }
}
