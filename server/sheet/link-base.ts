/** Addresses of a page that links of sites are put behind. */

const MOST = 300;

/** What is allowed, for messages. */
export const LINK_BASE_ALLOWED = `an http or https address of at most ${MOST} characters, such as https://host/`;

/** The address without what stands behind "?" and "#"; null for anything that is no address of a page. */
export function readLinkBase(text: string): string | null {
  if (text.length > MOST || !URL.canParse(text)) return null;
  const url = new URL(text);
  if (!/^https?:$/.test(url.protocol) || url.username !== '' || url.password !== '') return null;
  return `${url.origin}${url.pathname}`;
}
