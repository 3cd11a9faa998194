/** The doors by which a site comes in without the unit library; `entry-with-units.ts` holds the one with it. */
import { z } from 'zod';
import { siteParser } from './parse-site.ts';
import { buildSiteSchema, type Site } from './site.ts';
import { readNumberText } from './units.ts';

let parse: ((input: unknown) => Site) | undefined;

/**
 * Reads a site whose text fields hold plain numbers only; needs no unit library.
 * @throws SiteError listing every problem with its path
 */
export function parsePlainSite(input: unknown): Site {
  // Built at the first call: a page that shows a stored result never needs it.
  parse ??= siteParser(readNumberText);
  return parse(input);
}

/** JSON Schema (draft 2020-12) of what `parseSite` takes. */
export function siteJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(buildSiteSchema(readNumberText), { io: 'input' }) as Record<string, unknown>;
}
