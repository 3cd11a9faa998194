/**
 * The door by which a site comes in with units in its texts. A file of its own, so that a page that bundles the model
 * loads the unit library only when someone types a unit.
 */
import { siteParser } from './parse-site.ts';
import type { Site } from './site.ts';
import { readQuantityText } from './unit-text.ts';

let parse: ((input: unknown) => Site) | undefined;

/**
 * Reads a site file.
 * @throws SiteError listing every problem with its path
 */
export function parseSite(input: unknown): Site {
  parse ??= siteParser(readQuantityText);
  return parse(input);
}
