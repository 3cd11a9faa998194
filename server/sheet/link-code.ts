/** The link that reopens a site, and its code for the camera of a phone. */
import qrcode from 'qrcode-generator';
import { SiteLinkError, siteLinkFragment } from '../../model/index.ts';
import type { Area, Pen } from './pen.ts';

const PT_PER_MM = 72 / 25.4;

/** Finer than this, phones fail on paper that is creased or held in the hand (common practice, no source). */
const LEAST_MODULE_PT = 0.33 * PT_PER_MM;
const MOST_MODULE_PT = 0.6 * PT_PER_MM;

/** Side of the largest code that a sheet has room for. */
const MOST_SIDE_PT = 42 * PT_PER_MM;

/** Light modules that must surround a code (ISO/IEC 18004). */
const QUIET = 4;

export type SiteLink =
  | { readonly kind: 'code'; readonly address: string; readonly modules: readonly (readonly boolean[])[] }
  /** Too long for a code that can be read. */
  | { readonly kind: 'long'; readonly address: string }
  | { readonly kind: 'none'; readonly why: string };

/** The link of a site on the page at `base`. */
export function siteLink(input: object, base: string | undefined): SiteLink {
  if (base === undefined) return { kind: 'none', why: 'No address of a page was given: open the site from its file.' };
  try {
    const address = `${base}#${siteLinkFragment(input)}`;
    const modules = modulesOf(address);
    return modules === null ? { kind: 'long', address } : { kind: 'code', address, modules };
  } catch (error) {
    if (error instanceof SiteLinkError) return { kind: 'none', why: error.message };
    throw error;
  }
}

/** The strongest correction that still leaves modules that can be read; null where none does. */
function modulesOf(text: string): boolean[][] | null {
  for (const correction of ['M', 'L'] as const) {
    const code = qrcode(0, correction);
    code.addData(text, 'Byte');
    try {
      code.make();
    } catch {
      continue;
    }
    const count = code.getModuleCount();
    if (MOST_SIDE_PT / (count + 2 * QUIET) < LEAST_MODULE_PT) continue;
    return Array.from({ length: count }, (_, row) =>
      Array.from({ length: count }, (__, column) => code.isDark(row, column)),
    );
  }
  return null;
}

/** Side of a code with its quiet zone, pt. */
export function codeSidePt(modules: readonly unknown[]): number {
  return Math.min(MOST_SIDE_PT, (modules.length + 2 * QUIET) * MOST_MODULE_PT);
}

export function drawCode({ doc }: Pen, modules: readonly (readonly boolean[])[], { x, y, width }: Area): void {
  const side = width / (modules.length + 2 * QUIET);
  for (const [row, cells] of modules.entries()) {
    let from = -1;
    // Neighbours in one piece: seams between them would show as light hairs.
    for (const [column, dark] of [...cells, false].entries()) {
      if (dark && from < 0) from = column;
      if (dark || from < 0) continue;
      doc.rect(x + (QUIET + from) * side, y + (QUIET + row) * side, (column - from) * side, side);
      from = -1;
    }
  }
  doc.fill('#000000');
}
