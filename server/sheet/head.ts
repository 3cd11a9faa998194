/** The head of a sheet: what and where, the decision, its margin, what comes second, what would help, and the code. */
import { decidingMarginK, formatQuantity, type SiteSheet } from '../../model/index.ts';
import { placeLines } from '../report/place-lines.ts';
import { codeSidePt, drawCode, type SiteLink } from './link-code.ts';
import { type Area, GREY, lineHeight, type Pen, type TextStyle } from './pen.ts';

const STANDING: Readonly<Record<SiteSheet['standing'], { words: string; colour: string }>> = {
  within: { words: 'WITHIN LIMITS', colour: '#00522b' },
  designDayOnly: { words: 'WITHIN LIMITS ON THE DESIGN DAY ONLY', colour: '#6b2800' },
  beyond: { words: 'BEYOND LIMITS', colour: '#8a0f00' },
  barred: { words: 'WALL IS BARRED BY A CHECK', colour: '#8a0f00' },
};

const GAP = 10;
const BAR = 5;

/** Draws the head and gives back where it ends. */
export function drawHead(pen: Pen, sheet: SiteSheet, link: SiteLink, { x, y, width }: Omit<Area, 'height'>): number {
  const side = link.kind === 'code' ? codeSidePt(link.modules) : 96;
  const right = { x: x + width - side, y, width: side };
  const left = { x, width: width - side - GAP };
  const text = (words: string, style: TextStyle, top: number, most: number, indent = 0) =>
    pen.paragraph(words, { x: left.x + indent, y: top, width: left.width - indent }, style, most);

  let at = y;
  pen.part('H1', () => {
    at = text('SITE SHEET', { size: 7.5, bold: true, colour: GREY }, at, 1);
    at = text(sheet.title, { size: 15, bold: true }, at, 2) + 1;
  });
  pen.part('P', () => {
    for (const line of placeLines(sheet, sheet, sheet.units).slice(1))
      at = text(line, { size: 7.5, colour: GREY }, at, 1);
  });
  at += 6;

  const top = at;
  const standing = STANDING[sheet.standing];
  const inner = BAR + 7;
  pen.part('P', () => {
    const badge: TextStyle = { size: 8, bold: true, colour: '#ffffff' };
    const badgeWidth = pen.widthOf(standing.words, badge) + 10;
    pen.doc.rect(left.x + inner, at, badgeWidth, 13).fill(standing.colour);
    pen.paragraph(standing.words, { x: left.x + inner + 5, y: at + 3.2, width: badgeWidth }, badge, 1);
    const margin = decidingMarginK(sheet.wall.day);
    const size = formatQuantity('temperatureDifference', Math.abs(margin), sheet.units);
    const day = sheet.standing === 'designDayOnly' ? 'That day' : 'Margin';
    const words = `${day} ${size} ${margin >= 0 ? 'inside the limit' : 'past the limit'}`;
    pen.paragraph(
      words,
      { x: left.x + inner + badgeWidth + 8, y: at + 2.6, width: left.width - inner - badgeWidth - 8 },
      { size: 9, bold: true },
      1,
    );
  });
  at += 18;
  pen.part('P', () => {
    at = text(sheet.decision, { size: 12.5, bold: true }, at, 3, inner) + 1;
  });
  for (const [words, most] of sayings(sheet)) {
    pen.part('P', () => {
      at = text(words, { size: 8 }, at, most, inner) + 1;
    });
  }
  pen.decoration(() => pen.doc.rect(left.x, top, BAR, at - top).fill(standing.colour));
  return Math.max(at, drawLink(pen, link, right));
}

/** What is said below the decision, with how many lines each may take. */
function sayings({ grounds, wayOut, out }: SiteSheet): [string, number][] {
  const told = grounds.map((text): [string, number] => [text, 3]);
  if (wayOut !== '') told.push([wayOut, 3]);
  if (out.length > 1) told.push([`${out.length} walls are barred by a check; see the table.`, 1]);
  return told;
}

function drawLink(pen: Pen, link: SiteLink, at: { x: number; y: number; width: number }): number {
  const small: TextStyle = { size: 6, colour: GREY, align: 'center' };
  if (link.kind === 'code') {
    const area = { ...at, height: at.width };
    pen.part('Figure', () => drawCode(pen, link.modules, area), 'QR code of the link that reopens this site');
    let end = at.y + at.width;
    pen.part('P', () => {
      end = pen.paragraph('Opens this site: the link holds all of it.', { ...at, y: end }, small, 2);
    });
    return end;
  }
  let end = at.y;
  pen.part('P', () => {
    const left: TextStyle = { ...small, align: 'left' };
    if (link.kind === 'none') end = pen.paragraph(link.why, at, left, 4);
    else {
      const words = `The link of this site has ${link.address.length} characters, too many for a code that a phone can read. Open the site from its file, or from the link, which begins:`;
      end = pen.paragraph(words, at, left, 7);
      end = pen.paragraph(`${link.address.slice(0, 56)}…`, { ...at, y: end + 2 }, left, 4);
    }
  });
  return end + lineHeight(small);
}
