/** A weather file as lines, whatever it is made of: numbered, without line ends, and bounded. */
import { fileError, quoted } from './weather-file-error.ts';

/** No header of a real file comes near this length. */
const LONGEST_LINE = 20_000;

/** Twice the rows of a leap year: room for headers, legends and blank lines. */
const MOST_LINES = 20_000;

const BYTE_ORDER_MARK = '\uFEFF';

/** The lines of a text one by one, so that a huge text is never split as a whole. */
export function* linesOf(text: string): Generator<string> {
  let start = 0;
  while (start < text.length) {
    const end = text.indexOf('\n', start);
    if (end < 0) break;
    yield text.slice(start, end);
    start = end + 1;
  }
  if (start < text.length) yield text.slice(start);
}

/** Reads lines in order and remembers where it is. */
export interface FileLines {
  /** Number of the line that was read last, from 1. */
  readonly line: number;
  /** The next line, or null at the end of the file. */
  next(): string | null;
  /** The next line, without reading it. */
  peek(): string | null;
  /** The next two lines, as far as there are, without reading them. */
  start(): readonly string[];
}

/** @throws WeatherFileError, on reading, for lines and files longer than weather files are, and for binary ones */
export function fileLines(lines: Iterable<string>): FileLines {
  const source = lines[Symbol.iterator]();
  const ahead: string[] = [];
  let line = 0;
  const look = (count: number): readonly string[] => {
    while (ahead.length < count) {
      const step = source.next();
      if (step.done === true) break;
      const at = line + ahead.length + 1;
      if (at > MOST_LINES) throw fileError(at, `the file has more than ${MOST_LINES} lines`, { allowed: 'one year' });
      ahead.push(cleanLine(step.value, at));
    }
    return ahead;
  };
  return {
    get line() {
      return line;
    },
    next() {
      look(1);
      const text = ahead.shift() ?? null;
      if (text !== null) line++;
      return text;
    },
    peek: () => look(1)[0] ?? null,
    start: () => [...look(2)],
  };
}

function cleanLine(raw: string, line: number): string {
  if (raw.length > LONGEST_LINE) {
    const found = quoted(raw.slice(0, LONGEST_LINE));
    throw fileError(line, `a line of ${raw.length} characters`, { found, allowed: `up to ${LONGEST_LINE} characters` });
  }
  if (raw.includes('\0')) {
    throw fileError(line, 'the file is binary or not in UTF-8', { found: quoted(raw), allowed: 'plain text' });
  }
  const from = line === 1 && raw.startsWith(BYTE_ORDER_MARK) ? 1 : 0;
  return raw.slice(from).replace(/[\r\n]+$/, '');
}

/** The fields of a line; a quoted field may hold commas and doubled quotes. */
export function fieldsOf(text: string): string[] {
  if (!text.includes('"')) return text.split(',');
  const fields: string[] = [];
  let field = '';
  let inside = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i] as string;
    if (c === '"' && inside && text[i + 1] === '"') {
      field += c;
      i++;
    } else if (c === '"') {
      inside = !inside;
    } else if (c === ',' && !inside) {
      fields.push(field);
      field = '';
    } else {
      field += c;
    }
  }
  fields.push(field);
  return fields;
}

/** Whether nothing but separators and blanks stands in a line. */
export const isBlank = (text: string): boolean => /^[\s,;]*$/.test(text);
