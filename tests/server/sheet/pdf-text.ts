/** What a PDF of pdfkit says, read from its bytes: no program is needed that a machine may lack. */
import { unzlibSync } from 'fflate';

const latin1 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');

/** The text of all pages in the order in which it is drawn, spaces made single. */
export function textOf(pdf: Uint8Array): string {
  const bytes = latin1(pdf);
  const drawn = [...bytes.matchAll(/<<([^<>]*(?:<<[^<>]*>>[^<>]*)*)>>\s*stream\r?\n/g)]
    .map(({ 0: start, 1: head = '', index }) => {
      // By its length: compressed bytes may hold, and end with, whatever ends a line.
      const from = index + start.length;
      const body = bytes.slice(from, from + Number(/\/Length (\d+)/.exec(head)?.[1]));
      return /FlateDecode/.test(head) ? inflated(body) : body;
    })
    .flatMap((content) =>
      [...content.matchAll(/\[((?:<[0-9a-f]*>|[\s\d.-]+)*)\]\s*TJ/g)].map(([, shown = '']) => shown),
    );
  const texts = drawn.map((shown) =>
    [...shown.matchAll(/<([0-9a-f]*)>/g)].map(([, hex = '']) => winAnsi(hex)).join(''),
  );
  return texts.join(' ').replace(/\s+/g, ' ');
}

/** Of the signs between 80 and 9f only those that the sheet makes by itself; the rest is Latin 1. */
function winAnsi(hex: string): string {
  return Buffer.from(hex, 'hex').toString('latin1').replaceAll('\x85', '…');
}

function inflated(body: string): string {
  try {
    return latin1(unzlibSync(Buffer.from(body, 'latin1')));
  } catch {
    // A stream of another kind, such as a picture.
    return '';
  }
}

/** Width and height of each page, pt. */
export function pagesOf(pdf: Uint8Array): [width: number, height: number][] {
  return [...latin1(pdf).matchAll(/\/Type \/Page\n[\s\S]*?\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map(([, w, h]) => [
    Number(w),
    Number(h),
  ]);
}
