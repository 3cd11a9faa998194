/** Writing and drawing on the one page of a sheet: text that is measured before it is written, parts that are named for readers. */
import type PDFDocument from 'pdfkit';
import { HARD_SPACE, type Printer } from './printable.ts';

export type Doc = InstanceType<typeof PDFDocument>;

/** A place on the page, pt from its upper left corner. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface TextStyle {
  /** Height of the letters, pt. */
  readonly size: number;
  readonly bold?: boolean;
  readonly colour?: string;
  readonly align?: 'left' | 'center' | 'right';
}

export const INK = '#000000';
export const GREY = '#555555';
export const HAIR = '#aaaaaa';

/** Lines of text stand this many heights apart. */
const LEADING = 1.2;

export const lineHeight = ({ size }: TextStyle): number => size * LEADING;

/** Parts of a tagged PDF that a sheet has. */
export type Part = 'H1' | 'H2' | 'P' | 'Figure' | 'Form';

export interface Pen {
  readonly doc: Doc;
  /** The text in lines that fit a width, at most so many of them; one that was cut ends with "…". */
  lines(text: string, width: number, style: TextStyle, most?: number): string[];
  /** Writes lines from a point downward and gives back where they end. */
  write(lines: readonly string[], at: { x: number; y: number; width: number }, style: TextStyle): number;
  /** Both of them. */
  paragraph(text: string, at: { x: number; y: number; width: number }, style: TextStyle, most?: number): number;
  widthOf(text: string, style: TextStyle): number;
  /** What `draw` draws is a part that reading programs know; `alt` says in words what a figure shows. */
  part(part: Part, draw: () => void, alt?: string): void;
  /** What `draw` draws is decoration. */
  decoration(draw: () => void): void;
  end(): void;
}

export function makePen(doc: Doc, printer: Printer): Pen {
  const root = doc.struct('Document');
  doc.addStructure(root);
  let font = '';
  const use = ({ size, bold = false }: TextStyle) => {
    font = `${bold ? 'b' : 'r'}${size}`;
    return doc.font(bold ? 'Helvetica-Bold' : 'Helvetica').fontSize(size);
  };

  /** The same words come again and again, and each is measured in several sizes. */
  const widths = new Map<string, number>();
  const measured = (text: string): number => {
    const key = `${font} ${text}`;
    const width = widths.get(key) ?? doc.widthOfString(text);
    widths.set(key, width);
    return width;
  };

  /** A word that is wider than the line is cut where the line ends. */
  const pieces = (word: string, width: number): string[] => {
    if (measured(word) <= width) return [word];
    const parts: string[] = [];
    let part = '';
    let wide = 0;
    for (const letter of word) {
      const more = measured(letter);
      if (part !== '' && wide + more > width) {
        parts.push(part);
        [part, wide] = ['', 0];
      }
      part += letter;
      wide += more;
    }
    return [...parts, part];
  };

  const shorten = (line: string, width: number): string => {
    let text = line.trimEnd();
    while (text !== '' && doc.widthOfString(`${text}…`) > width) text = text.slice(0, -1).trimEnd();
    return `${text}…`;
  };

  const lines: Pen['lines'] = (text, width, style, most = Number.POSITIVE_INFINITY) => {
    use(style);
    const space = measured(' ');
    const found: string[] = [];
    let line = '';
    let wide = 0;
    for (const word of printer
      .print(text)
      .split(' ')
      .flatMap((one) => pieces(one, width))) {
      const more = measured(word);
      if (line !== '' && wide + space + more > width) {
        found.push(line);
        [line, wide] = ['', 0];
      }
      wide += (line === '' ? 0 : space) + more;
      line = line === '' ? word : `${line} ${word}`;
      // Longer texts are cut anyway.
      if (found.length > most) break;
    }
    if (line !== '') found.push(line);
    if (found.length <= most) return found;
    // As much of the next line as there is room for.
    return [...found.slice(0, most - 1), shorten(`${found[most - 1]} ${found[most] ?? ''}`, width)];
  };

  const write: Pen['write'] = (written, { x, y, width }, style) => {
    use(style).fillColor(style.colour ?? INK);
    for (const [k, words] of written.entries()) {
      const line = words.replaceAll(HARD_SPACE, ' ');
      const spare = width - doc.widthOfString(line);
      const left = { left: 0, center: spare / 2, right: spare }[style.align ?? 'left'];
      doc.text(line, x + left, y + k * lineHeight(style), { lineBreak: false });
    }
    return y + written.length * lineHeight(style);
  };

  return {
    doc,
    lines,
    write,
    paragraph: (text, at, style, most) => write(lines(text, at.width, style, most), at, style),
    widthOf: (text, style) => use(style).widthOfString(printer.print(text)),
    part(part, draw, alt) {
      root.add(doc.struct(part, alt === undefined ? {} : { alt: printer.print(alt) }, [draw]));
    },
    decoration(draw) {
      doc.markContent('Artifact', { type: 'Layout' });
      draw();
      doc.endMarkedContent();
    },
    end: () => root.end(),
  };
}

/** A heading over a part of the sheet; gives back where it ends. */
export function heading(pen: Pen, text: string, at: { x: number; y: number; width: number }): number {
  const style: TextStyle = { size: 8.5, bold: true };
  pen.part('H2', () => pen.paragraph(text, at, style, 1));
  return at.y + lineHeight(style) + 2;
}
