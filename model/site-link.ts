/**
 * A site in the fragment of a link, which no server sees: "site=1." and the JSON of the site file, deflated, led by four
 * bytes of checksum, in base64url (RFC 4648 section 5).
 *
 * What comes out of a link is as little trusted as a file: it goes through the parser of sites like any other.
 */
import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate';

/** Leads every fragment that holds a site. */
export const SITE_LINK_START = 'site=';

const VERSION = '1';

/** Far above any link that a browser or a messenger passes on. */
const MAX_FRAGMENT = 100_000;

/** As much as a site file may have; a short text may inflate to far more. */
const MAX_JSON_BYTES = 2_000_000;

/** Bytes that are inflated in one go: deflate makes at most 1032 times as many of them. */
const INFLATE_BYTES = 512;

/** Thrown for a link that holds no site, or a site that fits no link. */
export class SiteLinkError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'SiteLinkError';
  }
}

const BROKEN =
  'The link holds no site: it was cut short or changed on its way. Ask for it again, or for the site as a file.';

/**
 * The fragment of a link, without "#", that holds a site file's content.
 * @throws SiteLinkError where that is too large for a link
 */
export function siteLinkFragment(site: object): string {
  const json = strToU8(JSON.stringify(site));
  const deflated = deflateSync(json, { level: 9 });
  const bytes = new Uint8Array(CHECK_BYTES + deflated.length);
  bytes.set(checksum(deflated));
  bytes.set(deflated, CHECK_BYTES);
  const fragment = `${SITE_LINK_START}${VERSION}.${toBase64Url(bytes)}`;
  if (json.length > MAX_JSON_BYTES || fragment.length > MAX_FRAGMENT) {
    throw new SiteLinkError('The site is too large for a link. Save it as a file.');
  }
  return fragment;
}

/** Whether a fragment, with or without "#", means to hold a site. */
export function holdsSite(fragment: string): boolean {
  return fragment.replace(/^#/, '').startsWith(SITE_LINK_START);
}

/**
 * The content of the site file that a fragment holds, with or without "#". Its fields are not checked yet.
 * @throws SiteLinkError
 */
export function siteOfLink(fragment: string): Readonly<Record<string, unknown>> {
  if (!holdsSite(fragment)) throw new SiteLinkError(BROKEN);
  if (fragment.length > MAX_FRAGMENT) throw new SiteLinkError('The link is longer than any that holds a site.');
  const [, version, body] = /^#?site=([0-9a-z]{1,4})\.([A-Za-z0-9_-]+)$/.exec(fragment) ?? [];
  if (version !== undefined && version !== VERSION) {
    throw new SiteLinkError('The link was made by another version of this program, which writes sites differently.');
  }
  const bytes = body === undefined ? null : fromBase64Url(body);
  if (bytes === null || bytes.length <= CHECK_BYTES) throw new SiteLinkError(BROKEN);
  const deflated = bytes.subarray(CHECK_BYTES);
  if (checksum(deflated).some((byte, k) => byte !== bytes[k])) throw new SiteLinkError(BROKEN);
  return objectIn(inflated(deflated));
}

function inflated(deflated: Uint8Array): Uint8Array {
  const chunks: Uint8Array[] = [];
  let length = 0;
  let ended = false;
  const inflate = new Inflate((chunk, final) => {
    chunks.push(chunk);
    length += chunk.length;
    ended = final;
  });
  for (let at = 0; at < deflated.length; at += INFLATE_BYTES) {
    try {
      inflate.push(deflated.subarray(at, at + INFLATE_BYTES), at + INFLATE_BYTES >= deflated.length);
    } catch {
      throw new SiteLinkError(BROKEN);
    }
    if (length > MAX_JSON_BYTES) throw new SiteLinkError('The link holds more than any site needs.');
  }
  if (!ended) throw new SiteLinkError(BROKEN);
  const whole = new Uint8Array(length);
  let filled = 0;
  for (const chunk of chunks) {
    whole.set(chunk, filled);
    filled += chunk.length;
  }
  return whole;
}

function objectIn(json: Uint8Array): Readonly<Record<string, unknown>> {
  let value: unknown;
  try {
    value = JSON.parse(strFromU8(json));
  } catch {
    throw new SiteLinkError(BROKEN);
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) throw new SiteLinkError(BROKEN);
  return value as Record<string, unknown>;
}

const CHECK_BYTES = 4;

/** FNV-1a, 32 bits: one mistyped letter must not become another number of the site. */
function checksum(bytes: Uint8Array): Uint8Array {
  let hash = 0x811c9dc5;
  for (const byte of bytes) hash = Math.imul(hash ^ byte, 0x01000193);
  return Uint8Array.from([hash >>> 24, hash >>> 16, hash >>> 8, hash]);
}

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** The model knows no `btoa`: it runs without browser and Node types. */
function toBase64Url(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 3) {
    const [a = 0, b = 0, c = 0] = bytes.subarray(at, at + 3);
    const bits = (a << 16) | (b << 8) | c;
    const letters = [18, 12, 6, 0].map((shift) => LETTERS.charAt((bits >> shift) & 63)).join('');
    text += letters.slice(0, Math.min(3, bytes.length - at) + 1);
  }
  return text;
}

function fromBase64Url(text: string): Uint8Array | null {
  if (text.length % 4 === 1) return null;
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  for (let at = 0, to = 0; at < text.length; at += 4) {
    const values = [...text.slice(at, at + 4).padEnd(4, 'A')].map((letter) => LETTERS.indexOf(letter));
    const bits = values.reduce((sum, value) => (sum << 6) | value, 0);
    for (const shift of [16, 8, 0]) if (to < bytes.length) bytes[to++] = (bits >> shift) & 255;
  }
  return bytes;
}
