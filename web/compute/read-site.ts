/** Reads a site as it stands in a form or a file; the library of units is fetched only for text that may carry one. */
import { fieldAt, parsePlainSite, type Site, SiteError } from '../../model/index.ts';

/** @throws SiteError */
export async function readSite(input: unknown): Promise<Site> {
  try {
    return parsePlainSite(input);
  } catch (error) {
    if (!(error instanceof SiteError) || !error.problems.some(mayCarryUnit)) throw error;
  }
  const { parseSite } = await unitReader();
  return parseSite(input);
}

export function unitReader() {
  return import('./unit-reader.ts').catch(() => {
    throw new Error('The reader of units could not be loaded. Enter plain numbers, or try again when connected.');
  });
}

/** Whether the rejected text is a number followed by a word or a sign, as in "12 in" or "40 %". */
function mayCarryUnit({ path, found }: { readonly path: string; readonly found: string }): boolean {
  return fieldAt(path) !== undefined && /^"\s*[-+.]?\d[^a-z%°'"′″]*[a-z%°'"′″]/i.test(found);
}
