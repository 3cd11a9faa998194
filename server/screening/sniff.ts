/** What kind of table a file is: checked once as a whole before a run, so that nothing turns up half-way. */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { BadInput } from '../bad-input.ts';
import { readFailure } from '../site-file.ts';
import { RecordCutter, type TableRecord } from './records.ts';

export const DELIMITERS = [',', ';', '\t'] as const;

export type Delimiter = (typeof DELIMITERS)[number];

export interface TableFile {
  readonly path: string;
  readonly delimiter: Delimiter;
  readonly header: readonly string[];
  /** Whether the file begins with a byte-order mark. */
  readonly bom: boolean;
  /** Line ends in the file: about the number of rows. */
  readonly lines: number;
  /** SHA-256 of the bytes. */
  readonly hash: string;
  /** The first rows after the header. */
  readonly first: readonly TableRecord[];
}

const HEAD_BYTES = 64 * 1024;
const FIRST_ROWS = 50;
const MOST_COLUMNS = 1000;

/**
 * Reads a table file through: its hash, delimiter, header and first rows. `name` is what messages call it.
 * @throws BadInput when it cannot be read, is no text in UTF-8, is empty or has no usable header
 */
export async function sniffTable(path: string, name = path): Promise<TableFile> {
  const { hash, lines, head } = await scan(path, name);
  const bom = head.startsWith('\ufeff');
  const text = bom ? head.slice(1) : head;
  if (text.trim() === '') throw new BadInput([`${name}: empty; a table with a header is needed`]);
  const delimiter = sniffDelimiter(text);
  const cutter = new RecordCutter(delimiter);
  const [top, ...first] = [...cutter.push(text), ...(head.length < HEAD_BYTES ? cutter.end() : [])];
  const header = (top?.cells ?? []).map((name) => name.trim());
  const problems = headerProblems(header, top?.fault);
  if (problems.length > 0) throw new BadInput(problems.map((problem) => `${name}: ${problem}`));
  return { path, delimiter, header, bom, lines, hash, first: first.slice(0, FIRST_ROWS) };
}

/** The delimiter that the header has most of outside quotes; a comma where it has none. */
export function sniffDelimiter(text: string): Delimiter {
  const counts = new Map<string, number>();
  let quoted = false;
  for (const character of text) {
    if (character === '"') quoted = !quoted;
    else if (!quoted && (character === '\n' || character === '\r')) break;
    else if (!quoted) counts.set(character, (counts.get(character) ?? 0) + 1);
  }
  const most = Math.max(...DELIMITERS.map((delimiter) => counts.get(delimiter) ?? 0));
  return DELIMITERS.find((delimiter) => counts.get(delimiter) === most) ?? ',';
}

function headerProblems(header: readonly string[], fault: string | undefined): string[] {
  if (fault !== undefined) return [`row 1 (the header): ${fault}`];
  if (header.length < 2) return ['row 1 (the header): one column only; columns are parted by comma, semicolon or tab'];
  if (header.length > MOST_COLUMNS) return [`row 1 (the header): more than ${MOST_COLUMNS} columns`];
  if (header.every((name) => name === '' || Number.isFinite(Number(name)))) {
    return ['row 1 (the header): numbers only; a row with the names of the columns is needed above the first address'];
  }
  const seen = new Map<string, number[]>();
  header.forEach((name, k) => {
    if (name !== '') seen.set(name.toLowerCase(), [...(seen.get(name.toLowerCase()) ?? []), k + 1]);
  });
  return [...seen]
    .filter(([, at]) => at.length > 1)
    .map(([name, at]) => `row 1 (the header): "${name}" stands in columns ${at.join(' and ')}; rename all but one`);
}

async function scan(path: string, name: string): Promise<{ hash: string; lines: number; head: string }> {
  const hash = createHash('sha256');
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  let head = '';
  let lines = 0;
  let bytes = 0;
  try {
    for await (const chunk of createReadStream(path, { highWaterMark: 256 * 1024 })) {
      const buffer = chunk as Buffer;
      if (bytes === 0 && ((buffer[0] === 0xff && buffer[1] === 0xfe) || (buffer[0] === 0xfe && buffer[1] === 0xff))) {
        throw new BadInput([`${name}: this is text in UTF-16; save it as CSV in UTF-8`]);
      }
      if (buffer.includes(0)) throw new BadInput([`${name}: this is no text; save the table as CSV in UTF-8`]);
      bytes += buffer.length;
      hash.update(buffer);
      const text = decoder.decode(buffer, { stream: true });
      if (head.length < HEAD_BYTES) head += text.slice(0, HEAD_BYTES - head.length);
      for (let at = buffer.indexOf(10); at >= 0; at = buffer.indexOf(10, at + 1)) lines += 1;
    }
    decoder.decode();
  } catch (error) {
    if (error instanceof BadInput) throw error;
    if (error instanceof TypeError) {
      throw new BadInput([`${name}: this is not text in UTF-8 (before byte ${bytes}); save it as CSV in UTF-8`]);
    }
    throw new BadInput([`${name}: ${readFailure(error)}`]);
  }
  return { hash: hash.digest('hex'), lines, head };
}

/** The records of a table file, the header left out, in chunks as they are read. */
export async function* recordsOf({ path, delimiter }: TableFile): AsyncGenerator<TableRecord[]> {
  const cutter = new RecordCutter(delimiter);
  const decoder = new TextDecoder('utf-8');
  let header = true;
  for await (const chunk of createReadStream(path, { highWaterMark: 64 * 1024 })) {
    const records = cutter.push(decoder.decode(chunk as Buffer, { stream: true }));
    yield header ? records.slice(1) : records;
    if (records.length > 0) header = false;
  }
  const records = cutter.end();
  yield header ? records.slice(1) : records;
}
