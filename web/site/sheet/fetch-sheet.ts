/** Asks the server for the site sheet. */
import { siteFileName, type UnitSystem } from '../../../model/index.ts';
import { type Draft, textAt } from '../draft.ts';

export type SheetAnswer =
  | { readonly kind: 'file'; readonly name: string; readonly blob: Blob }
  /** No server that makes sheets: the page can be printed instead. */
  | { readonly kind: 'noServer' }
  | { readonly kind: 'refused'; readonly message: string };

export interface SheetWish {
  readonly draft: Draft;
  readonly wall: string | null;
  readonly units: UnitSystem;
  readonly linkBase: string;
}

export async function fetchSheet(
  { draft, wall, units, linkBase }: SheetWish,
  signal: AbortSignal,
): Promise<SheetAnswer> {
  const body = JSON.stringify({ site: draft, units, linkBase, ...(wall !== null && { wall }) });
  let response: Response;
  try {
    const headers = { 'content-type': 'application/json' };
    response = await fetch('/api/sheet', { method: 'POST', headers, body, signal });
  } catch (error) {
    if (signal.aborted) throw error;
    return { kind: 'noServer' };
  }
  if (response.ok && response.headers.get('content-type') === 'application/pdf') {
    return {
      kind: 'file',
      name: `site-sheet-${siteFileName(textAt(draft, 'title'))}.pdf`,
      blob: await response.blob(),
    };
  }
  // A host that only hands out files knows no such address.
  if (response.ok || response.status === 404 || response.status === 405) return { kind: 'noServer' };
  return { kind: 'refused', message: await reasonOf(response) };
}

async function reasonOf(response: Response): Promise<string> {
  if (response.status === 429 || response.status === 503)
    return 'The server has too much to do. Try again in a moment.';
  const answer = (await response.json().catch(() => null)) as { error?: unknown } | null;
  return typeof answer?.error === 'string'
    ? `The server refused: ${answer.error}.`
    : 'The server could not make the sheet.';
}
