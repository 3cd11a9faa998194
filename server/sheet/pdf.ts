/** The site sheet as a PDF: always one page, text as text, lines as lines. */
import PDFDocument from 'pdfkit';
import type { SiteSheet } from '../../model/index.ts';
import { drawDay } from './day-chart.ts';
import { drawHead } from './head.ts';
import type { SiteLink } from './link-code.ts';
import { drawLists } from './lists.ts';
import { PAPERS, type Paper } from './paper.ts';
import { GREY, makePen, type Pen } from './pen.ts';
import { drawPlan } from './plan-drawing.ts';
import { makePrinter, type Printer } from './printable.ts';
import { drawSignOff, SIGN_OFF_HEIGHT } from './sign-off.ts';
import { drawSky } from './sky-drawing.ts';
import { drawWalls } from './walls-table.ts';

export interface SheetPrint {
  readonly paper: Paper;
  readonly link: SiteLink;
  /** Of the program that made the forecast. */
  readonly version: string;
  /** When it was made. */
  readonly madeAt: Date;
  /** False leaves the text readable in the bytes. */
  readonly compress?: boolean;
}

const MARGIN = 34;
const GAP = 9;
const FOOT_HEIGHT = 16;

export function sheetPdf(sheet: SiteSheet, print: SheetPrint): Promise<Uint8Array> {
  const printer = makePrinter();
  const doc = new PDFDocument({
    size: [...PAPERS[print.paper]],
    // Without margins no text starts a page of its own accord.
    margin: 0,
    pdfVersion: '1.7',
    lang: 'en',
    tagged: true,
    displayTitle: true,
    compress: print.compress ?? true,
    info: {
      Title: `Site sheet: ${sheet.title.replace(/\p{Cc}/gu, ' ')}`,
      Subject: sheet.decision.replace(/\p{Cc}/gu, ' '),
      Creator: `Shadeside ${print.version}`,
      CreationDate: print.madeAt,
    },
  });
  const bytes = collect(doc);
  const pen = makePen(doc, printer);
  drawPage(pen, sheet, print, printer);
  pen.end();
  doc.end();
  return bytes;
}

function drawPage(pen: Pen, sheet: SiteSheet, print: SheetPrint, printer: Printer): void {
  const [pageWidth, pageHeight] = PAPERS[print.paper];
  const x = MARGIN;
  const width = pageWidth - 2 * MARGIN;
  const bottom = pageHeight - MARGIN;
  const pictures = pageHeight > 800 ? 124 : 112;

  let y = drawHead(pen, sheet, print.link, { x, y: MARGIN - 6, width }) + GAP;
  const planWidth = 0.3 * width;
  const walls = { x, y, width: width - planWidth - 2 * GAP, height: pictures };
  drawWalls(pen, sheet, walls);
  drawPlan(pen, sheet, { x: x + width - planWidth, y, width: planWidth, height: pictures });
  y += pictures + GAP;
  const dayWidth = 0.54 * width;
  drawDay(pen, sheet, { x, y, width: dayWidth, height: pictures });
  drawSky(pen, sheet, { x: x + dayWidth + 2 * GAP, y, width: width - dayWidth - 2 * GAP, height: pictures });
  y += pictures + GAP;
  const signTop = bottom - FOOT_HEIGHT - SIGN_OFF_HEIGHT;
  drawLists(pen, sheet, { x, y, width, height: signTop - GAP - y });
  drawSignOff(pen, sheet.units, { x, y: signTop, width, height: SIGN_OFF_HEIGHT });
  const foot = { x, y: bottom - FOOT_HEIGHT + 5, width };
  pen.part('P', () => pen.paragraph(footText(sheet, print, printer.lost), foot, { size: 6.2, colour: GREY }, 2));
}

function footText({ date }: SiteSheet, { version, madeAt }: SheetPrint, lost: boolean): string {
  const made = `${madeAt.toISOString().slice(0, 16).replace('T', ' ')} UTC`;
  const missing = lost
    ? ' Some characters of the names cannot be printed here; a letter without its marks or "?" stands in for them.'
    : '';
  return `Forecast of ${made} by Shadeside ${version} for a design day, ${date}; a forecast is not a measurement.${missing}`;
}

function collect(doc: InstanceType<typeof PDFDocument>): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    doc.on('end', () => resolve(Buffer.concat(chunks)));
    doc.on('error', reject);
  });
}
