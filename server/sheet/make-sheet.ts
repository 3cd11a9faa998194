/** From what a site file holds to the PDF of its sheet. */
import { parseSite, type SheetOptions, siteSheet } from '../../model/index.ts';
import packageFile from '../../package.json';
import { siteLink } from './link-code.ts';
import { type Paper, USUAL_PAPER } from './paper.ts';
import { sheetPdf } from './pdf.ts';

export interface SheetAsked extends SheetOptions {
  /** The paper that is usual where the units are when left out. */
  readonly paper?: Paper | undefined;
  /** Address of a page that opens the links of sites. */
  readonly linkBase?: string | undefined;
  readonly madeAt: Date;
  readonly compress?: boolean;
}

/**
 * Makes the sheet of a site.
 * @param input the content of a site file
 * @throws SiteError for a site that is not right and a wall that is not there
 */
export async function makeSheet(
  input: unknown,
  { paper, linkBase, madeAt, compress, ...options }: SheetAsked,
): Promise<Uint8Array> {
  const sheet = siteSheet(parseSite(input), options);
  const link = siteLink(input as object, linkBase);
  return sheetPdf(sheet, {
    paper: paper ?? USUAL_PAPER[sheet.units],
    link,
    version: packageFile.version,
    madeAt,
    ...(compress !== undefined && { compress }),
  });
}
