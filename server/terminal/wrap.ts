/** Width that fits any terminal. */
export const TERMINAL_WIDTH = 80;

/** A number and its unit stay on one line. */
const UNIT_GAP = /(?<=\d) (?=(?:°[CF]|K|W|W\/m²|h|mm?|ft|in|mph|m\/s|kg|lb|%)(?![\p{L}\d/]))/gu;
const STUCK = '\u00a0';

/** Breaks text into lines of at most `TERMINAL_WIDTH` characters; the first line is led by `lead`, the rest by `indent`. */
export function wrap(text: string, lead = '', indent = ' '.repeat(lead.length)): string {
  const lines: string[] = [];
  let line = lead;
  let empty = true;
  for (const word of text
    .replace(UNIT_GAP, STUCK)
    .split(/[^\S\u00a0]+/)
    .filter((part) => part !== '')) {
    if (!empty && line.length + 1 + word.length > TERMINAL_WIDTH) {
      lines.push(line);
      line = indent;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line].join('\n').replaceAll(STUCK, ' ');
}
