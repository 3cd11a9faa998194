import fc from 'fast-check';
import { deflateSync, strToU8 } from 'fflate';
import { describe, expect, test } from 'vitest';
import { DEMO_SITE, holdsSite, parseSite, SiteLinkError, siteLinkFragment, siteOfLink } from '../../model/index.ts';

const demo = siteLinkFragment(DEMO_SITE);

/** A link as the codec would write it around any bytes: only what inflates is wrong with it. */
function linkAround(deflated: Uint8Array): string {
  let hash = 0x811c9dc5;
  for (const byte of deflated) hash = Math.imul(hash ^ byte, 0x01000193);
  const check = Buffer.alloc(4);
  check.writeInt32BE(hash | 0);
  return `site=1.${Buffer.concat([check, deflated]).toString('base64url')}`;
}

test('what went in comes out, any JSON object', () => {
  fc.assert(
    fc.property(fc.dictionary(fc.string({ unit: 'grapheme' }), fc.jsonValue()), (site) => {
      const same = JSON.parse(JSON.stringify(site));
      expect(siteOfLink(siteLinkFragment(site))).toEqual(same);
      expect(siteOfLink(`#${siteLinkFragment(site)}`)).toEqual(same);
    }),
  );
});

test('texts of any script and markup come out as they are', () => {
  const title = 'Scheune „Süd“ — 东墙 🌞 العلية <script>alert(1)</script> \u0000 \ud800';
  expect(siteOfLink(siteLinkFragment({ ...DEMO_SITE, title }))['title']).toBe(title);
});

test('the demo site fits a code that a phone reads, and is the same site again', () => {
  expect(demo).toMatch(/^site=1\.[A-Za-z0-9_-]+$/);
  expect(demo.length).toBeLessThan(1200);
  expect(parseSite(siteOfLink(demo))).toEqual(parseSite(DEMO_SITE));
});

describe('a link that was harmed', () => {
  test('is refused wherever it is cut', () => {
    for (let length = 'site='.length; length < demo.length; length += 1) {
      expect(() => siteOfLink(demo.slice(0, length))).toThrow(SiteLinkError);
    }
  });

  test('is refused whichever letter is another one', () => {
    for (let at = 'site=1.'.length; at < demo.length - 1; at += 1) {
      const other = demo[at] === 'A' ? 'B' : 'A';
      expect(() => siteOfLink(demo.slice(0, at) + other + demo.slice(at + 1))).toThrow(/cut short or changed/);
    }
  });

  test('garbage gets one clear sentence, never another kind of error', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(() => siteOfLink(`site=${text}`)).toThrow(SiteLinkError);
      }),
    );
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 1, maxLength: 200 }), (bytes) => {
        let thrown: unknown = new SiteLinkError('inflated by chance');
        try {
          siteOfLink(linkAround(bytes));
        } catch (error) {
          thrown = error;
        }
        expect(thrown).toBeInstanceOf(SiteLinkError);
      }),
    );
  });

  test.each([['null'], ['[1]'], ['"site"'], ['5'], ['{'], ['']])('%s is no site', (json) => {
    expect(() => siteOfLink(linkAround(deflateSync(strToU8(json))))).toThrow(/holds no site/);
  });

  test('of another version is told as such', () => {
    expect(() => siteOfLink(demo.replace('site=1.', 'site=2.'))).toThrow(/another version/);
  });
});

describe('size', () => {
  test('a link that inflates to more than a site needs is refused before it fills the memory', () => {
    const bomb = linkAround(deflateSync(new Uint8Array(64_000_000).fill(32), { level: 9 }));
    expect(bomb.length).toBeLessThan(100_000);
    expect(() => siteOfLink(bomb)).toThrow(/more than any site needs/);
  });

  test('an endless link is not read', () => {
    expect(() => siteOfLink(`site=1.${'A'.repeat(200_000)}`)).toThrow(/longer than any/);
  });

  test('a site that fits no link is told to go into a file', () => {
    const noise = Array.from({ length: 40_000 }, (_, k) => Math.sin(k));
    expect(() => siteLinkFragment({ noise })).toThrow(/too large for a link\. Save it as a file/);
  });
});

test('keys of the prototype stay plain fields, which the parser refuses', () => {
  const site = siteOfLink(linkAround(deflateSync(strToU8('{"__proto__":{"polluted":true},"constructor":{"a":1}}'))));
  expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  expect(Object.getPrototypeOf(site)).toBe(Object.prototype);
  expect(() => parseSite(site)).toThrow(/unknown field/);
});

test.each([
  ['#site=1.x', true],
  ['site=', true],
  ['#/site', false],
  ['', false],
  ['#sites=1.x', false],
])('%j means to hold a site: %s', (fragment, holds) => {
  expect(holdsSite(fragment)).toBe(holds);
});
