/** The three doors by which a site comes in. */
import { z } from 'zod';
import { siteParser } from './parse-site.ts';
import { buildSiteSchema, type Site } from './site.ts';
import { readQuantityText } from './unit-text.ts';
import { readNumberText } from './units.ts';

let parse: ((input: unknown) => Site) | undefined;
let parseNumbers: ((input: unknown) => Site) | undefined;

/**
 * Reads a site file.
 * @throws SiteError listing every problem with its path
 */
export function parseSite(input: unknown): Site {
  parse ??= siteParser(readQuantityText);
  return parse(input);
}

/**
 * Reads a site whose text fields hold plain numbers only; needs no unit library.
 * @throws SiteError listing every problem with its path
 */
export function parsePlainSite(input: unknown): Site {
  parseNumbers ??= siteParser(readNumberText);
  return parseNumbers(input);
}

/** JSON Schema (draft 2020-12) of what `parseSite` takes. */
export function siteJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(buildSiteSchema(readNumberText), { io: 'input' }) as Record<string, unknown>;
}
