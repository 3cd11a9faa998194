/** Text as the fonts that every PDF reader has can show it: WinAnsi, which is Latin 1 and a few signs. */

/** What WinAnsi has beyond Latin 1. */
const SIGNS = new Set('€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ');

/** Signs of our own texts that WinAnsi lacks, in words and signs that it has. */
const SPELT: Readonly<Record<string, string>> = { '\u03a9': 'ohm', '\u2212': '-', '\u2264': '<=', '\u2265': '>=' };

export interface Printer {
  /** The text with what cannot be shown replaced: a letter by itself without its marks, anything else by "?". */
  print(text: string): string;
  /** Whether anything was replaced so far. */
  readonly lost: boolean;
}

export function makePrinter(): Printer {
  let lost = false;
  const shown = (sign: string): string => {
    const spelt = SPELT[sign];
    if (spelt !== undefined) return spelt;
    if (isPrintable(sign)) return sign;
    // What steers a terminal or the direction of reading is no part of a name.
    if (/[\p{Cc}\p{Cf}]/u.test(sign)) return '';
    // A mark that stands alone belongs to the letter before it.
    lost = true;
    if (/\p{M}/u.test(sign)) return '';
    const bare = sign.normalize('NFKD').replace(/\p{M}/gu, '');
    return bare !== '' && [...bare].every(isPrintable) ? bare : '?';
  };
  return {
    get lost() {
      return lost;
    },
    print: (text) => unbroken([...text.normalize('NFC').replace(/\s+/g, ' ').trim()].map(shown).join('')),
  };
}

/** Keeps a number and its unit on one line; the hard space is written as a plain one. */
function unbroken(text: string): string {
  return text.replace(/(\d) (?=(?:°[CF]|K|W|h|min|s|mm?²?|ft|in|ohm|degrees)(?![A-Za-z]))/g, `$1${HARD_SPACE}`);
}

export const HARD_SPACE = '\u00a0';

function isPrintable(sign: string): boolean {
  const code = sign.codePointAt(0) ?? 0;
  return (code >= 0x20 && code < 0x7f) || (code >= 0xa0 && code <= 0xff) || SIGNS.has(sign);
}
