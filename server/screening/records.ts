/**
 * Cuts the text of a table into records. csv-parse reads what is in them; here is only found where they end, because a quote that is
 * opened and never closed would otherwise swallow the rows after it, and none may get lost.
 */
import { parse } from 'csv-parse/sync';

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

/** A quoted cell that holds more lines or characters than this is taken for a quote that was not meant. */
const MOST_LINES = 200;
const MOST_CHARACTERS = 100_000;

/** Longest line; what is longer is cut and refused. */
const LONGEST_LINE = 200_000;

interface Piece {
  readonly line: number;
  readonly text: string;
  readonly fault?: string;
}

/** Cuts text that comes in chunks; call `end` after the last one. */
export class RecordCutter {
  readonly #delimiter: string;
  #rest = '';
  #rows = 0;
  #lines = 0;
  /** Lines of a record whose quoted cell is still open. */
  #open: string[] = [];
  #width: number | null = null;

  constructor(delimiter: string) {
    this.#delimiter = delimiter;
  }

  push(chunk: string): TableRecord[] {
    const text = this.#rest + chunk;
    // A carriage return at the end may be half of a line end.
    const whole = text.endsWith('\r') ? text.slice(0, -1) : text;
    const lines = whole.split(/\r\n|\n|\r/);
    this.#rest = (lines.pop() ?? '') + text.slice(whole.length);
    if (this.#rest.length > LONGEST_LINE) {
      lines.push(this.#rest);
      this.#rest = '';
    }
    return this.#read(lines.flatMap((line) => this.#take(line)));
  }

  end(): TableRecord[] {
    const last = this.#rest.replace(/\r$/, '');
    const pieces = last === '' ? [] : this.#take(last);
    while (this.#open.length > 0) pieces.push(...this.#giveUp());
    return this.#read(pieces);
  }

  /** The records that end with a line. */
  #take(line: string): Piece[] {
    if (line.length > LONGEST_LINE) {
      const before = this.#giveUp();
      this.#lines += 1;
      return [...before, { line: this.#lines, text: line.slice(0, 100), fault: 'the line is too long' }];
    }
    this.#lines += 1;
    if (this.#open.length === 0 && !line.includes('"')) return [{ line: this.#lines, text: line }];
    this.#open.push(line);
    const text = this.#open.join('\n');
    if (endsQuoted(text, this.#delimiter)) {
      const given = this.#open.length > MOST_LINES || text.length > MOST_CHARACTERS;
      return given ? this.#giveUp() : [];
    }
    if (this.#open.length > 1 && !this.#fits(text)) return this.#giveUp();
    const first = this.#lines - this.#open.length + 1;
    this.#open = [];
    return [{ line: first, text }];
  }

  /** The first open line is no record; those after it are looked at afresh. */
  #giveUp(): Piece[] {
    const [broken, ...others] = this.#open;
    if (broken === undefined) return [];
    this.#open = [];
    this.#lines -= others.length;
    const fault = 'a quote is opened and not closed; write a quote inside a cell twice';
    return [{ line: this.#lines, text: broken, fault }, ...others.flatMap((line) => this.#take(line))];
  }

  /** Whether a record over several lines is well formed and as wide as the header. */
  #fits(text: string): boolean {
    try {
      const cells = parse(text, { delimiter: this.#delimiter, relax_column_count: true })[0] as string[] | undefined;
      return cells !== undefined && (this.#width === null || cells.length === this.#width);
    } catch {
      return false;
    }
  }

  #read(pieces: readonly Piece[]): TableRecord[] {
    const whole = pieces.filter(({ fault }) => fault === undefined);
    const cells = this.#cells(whole.map(({ text }) => text));
    let next = 0;
    return pieces.map(({ line, text, fault }) => {
      this.#rows += 1;
      if (fault !== undefined) return { row: this.#rows, line, cells: [text], fault };
      const record = { row: this.#rows, line, cells: cells[next++] ?? [] };
      this.#width ??= record.cells.length;
      return record;
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

/** Whether text ends inside a quoted cell. A quote opens a cell at its beginning only, and stands for itself elsewhere. */
export function endsQuoted(text: string, delimiter: string): boolean {
  let state: 'start' | 'plain' | 'quoted' = 'start';
  for (let at = 0; at < text.length; at++) {
    const character = text[at];
    if (state === 'quoted') {
      if (character !== '"') continue;
      if (text[at + 1] === '"') at += 1;
      else state = 'plain';
    } else if (character === delimiter) state = 'start';
    else state = state === 'start' && character === '"' ? 'quoted' : 'plain';
  }
  return state === 'quoted';
}
