import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { DEMO_SITE, parseSite, rankWalls, type SiteInput, siteOfLink } from '../../../model/index.ts';
import packageFile from '../../../package.json';
import { siteLink } from '../../../server/sheet/link-code.ts';
import { makeSheet, type SheetAsked } from '../../../server/sheet/make-sheet.ts';
import { PAPERS } from '../../../server/sheet/paper.ts';
import { SMALL_SITE } from '../sites.ts';
import { pagesOf, textOf } from './pdf-text.ts';

const BASE = 'https://page.example/';

const sheetOf = (input: SiteInput, asked: Partial<SheetAsked> = {}) =>
  makeSheet(input, { madeAt: new Date('2026-11-25T19:00:00Z'), linkBase: BASE, ...asked });

describe('the demo site', () => {
  test('has one page with verdict, walls, checks, cautions, assumptions, fields to sign, version and date', async () => {
    const pdf = await sheetOf(DEMO_SITE, { units: 'metric' });
    const text = textOf(pdf);
    const ranking = rankWalls(parseSite(DEMO_SITE), { units: 'metric' });
    expect(pagesOf(pdf)).toEqual([PAPERS.a4]);
    expect(text).toContain(DEMO_SITE.title);
    expect(text).toContain(ranking.decision);
    for (const ground of ranking.grounds) expect(text).toContain(ground);
    for (const { name } of ranking.walls) expect(text).toContain(name);
    for (const { text: check } of ranking.walls[0]?.findings ?? [])
      expect(text).toContain(check.replaceAll('Ω', 'ohm'));
    expect(text).toMatch(/Do not work at this wall \d\d:\d\d to/);
    expect(text).toContain(ranking.assumptions[0]?.text);
    for (const field of ['Name', 'Date', 'Signature', 'Earth resistance', 'Sensor of the unit'])
      expect(text).toContain(field);
    expect(text).toContain(`2026-11-25 19:00 UTC by Shadeside ${packageFile.version}`);
    expect(text).not.toContain('cannot be printed');
  });

  test('is as well read by a program of others, where there is one', async () => {
    const pdf = await sheetOf(DEMO_SITE);
    let text: string;
    try {
      text = execFileSync('pdftotext', ['-', '-'], { input: pdf }).toString();
    } catch (error) {
      // Not on every machine; the test before reads the same text from the bytes.
      expect((error as NodeJS.ErrnoException).code).toBe('ENOENT');
      return;
    }
    expect(text.replace(/\s+/g, ' ')).toContain(rankWalls(parseSite(DEMO_SITE)).decision);
  });

  test('says on its badge where the design day is within the limit and another month is not', async () => {
    const text = textOf(
      await sheetOf({ ...DEMO_SITE, limits: { ...DEMO_SITE.limits, maxC: 64 } }, { units: 'metric' }),
    );
    expect(text).toContain('WITHIN LIMITS ON THE DESIGN DAY ONLY');
    expect(text).toMatch(/That day \d\.\d K inside the limit/);
    expect(text).not.toMatch(/BEYOND|Margin/);
  });

  test('is tagged, has a language and a title', async () => {
    const bytes = Buffer.from(await sheetOf(DEMO_SITE)).toString('latin1');
    expect(bytes).toContain('/Lang (en)');
    expect(bytes).toContain('/Marked true');
    expect(bytes).toContain('/S /H1');
    expect(bytes).toContain('/DisplayDocTitle true');
    expect(bytes).toMatch(/\/Title /);
  });

  test('is the same bytes for the same time', async () => {
    const [a, b] = await Promise.all([sheetOf(SMALL_SITE), sheetOf(SMALL_SITE)]);
    expect(textOf(a)).toBe(textOf(b));
  });
});

test('paper follows the units, or what was asked for', async () => {
  expect(pagesOf(await sheetOf(SMALL_SITE, { units: 'us' }))).toEqual([PAPERS.letter]);
  expect(pagesOf(await sheetOf(SMALL_SITE, { units: 'metric' }))).toEqual([PAPERS.a4]);
  expect(pagesOf(await sheetOf(SMALL_SITE, { units: 'metric', paper: 'letter' }))).toEqual([PAPERS.letter]);
});

describe('odd sites', () => {
  test('72 walls with long names stay on one page and are counted', async () => {
    const walls = Array.from({ length: 72 }, (_, k) => ({
      name: `${k} ${'without-a-place-to-break'.repeat(3)}`.slice(0, 80),
      azimuthDeg: 5 * k,
    }));
    const pdf = await sheetOf({ ...SMALL_SITE, title: 'W'.repeat(200), walls }, { paper: 'letter' });
    expect(pagesOf(pdf)).toEqual([PAPERS.letter]);
    const text = textOf(pdf);
    expect(text).toMatch(/\d+ more walls in the site file/);
    expect(text).toContain('…');
  }, 60_000);

  test('a wall far down the ranking is in the table of its own sheet', async () => {
    const walls = Array.from({ length: 20 }, (_, k) => ({ name: `side ${k}`, azimuthDeg: 18 * k }));
    const input = { ...SMALL_SITE, walls };
    const last = rankWalls(parseSite(input)).walls.at(-1)?.name ?? '';
    const text = textOf(await sheetOf(input, { wall: last }));
    expect(text).toContain(`Wall "${last}", chosen by hand`);
    expect(text).toContain('this sheet');
  }, 60_000);

  test('names in other scripts are replaced, and the sheet says so; markup stays text', async () => {
    const walls = [
      { name: 'الجدار الشمالي', azimuthDeg: 0 },
      { name: '<img src=x onerror=alert(1)>', azimuthDeg: 180 },
    ];
    const pdf = await sheetOf({ ...SMALL_SITE, title: 'νότος (\\)', walls });
    const text = textOf(pdf);
    expect(text).toContain('?????');
    expect(text).toContain('<img src=x onerror=alert(1)>');
    expect(text).toContain('Some characters of the names cannot be printed here');
    expect(pagesOf(pdf)).toHaveLength(1);
  });

  test('a site that no wall suits says what would make one do', async () => {
    const input = { ...SMALL_SITE, limits: { maxC: 33 } };
    const text = textOf(await sheetOf(input));
    expect(text).toContain('BEYOND LIMITS');
    expect(text).toMatch(/suffices|would do as it stands/);
    const barred = { ...SMALL_SITE, box: { ...SMALL_SITE.box, mountHeightM: 2.4 } };
    expect(textOf(await sheetOf(barred))).toContain('WALL IS BARRED BY A CHECK');
  }, 60_000);

  test('the lower limit is drawn where it decides, and with the table of walls the lowest air inside', async () => {
    const input = {
      ...SMALL_SITE,
      place: { latitudeDeg: 70, longitudeDeg: 0 },
      climate: { designDay: { date: '2026-06-21', maxC: 5, dailyRangeK: 12, dewPointC: -8 } },
      limits: { minC: 10, maxC: 60 },
    };
    const text = textOf(await sheetOf(input, { units: 'metric' }));
    expect(text).toContain('lower limit 10 °C');
    expect(text).not.toContain('upper limit 60 °C');
    expect(text).toMatch(/inside, peak lowest margin/);
    const { day } = rankWalls(parseSite(input)).walls[0] ?? {};
    expect(text).toContain(`${day?.lowestInsideAirC.toFixed(1)} °C`);
  });

  test('polar day, polar night, and a night of frost have their sheets', async () => {
    for (const date of ['2026-06-21', '2026-12-21']) {
      const place = { latitudeDeg: 78, longitudeDeg: 15 };
      const pdf = await sheetOf({ ...SMALL_SITE, place, climate: { designDay: { date, maxC: -5 } } });
      expect(pagesOf(pdf)).toHaveLength(1);
    }
  }, 60_000);
});

test('a wall that is not there and a site that is none are refused', async () => {
  await expect(sheetOf(SMALL_SITE, { wall: 'moon' })).rejects.toThrow('there is no wall');
  await expect(sheetOf({ ...SMALL_SITE, walls: [] })).rejects.toThrow();
});

describe('the code', () => {
  test('holds a link that reopens the site', () => {
    const link = siteLink(DEMO_SITE, BASE);
    expect(link.kind).toBe('code');
    if (link.kind !== 'code') return;
    expect(siteOfLink(new URL(link.address).hash)).toEqual(JSON.parse(JSON.stringify(DEMO_SITE)));
    // The three finders: dark corners seven modules wide.
    const last = link.modules.length - 1;
    for (const [row, column] of [
      [0, 0],
      [0, last],
      [last, 0],
    ] as const)
      expect(link.modules[row]?.[column]).toBe(true);
  });

  test('gives way to words where it would be too fine to read, or has no page to open', async () => {
    // What does not repeat cannot be packed.
    const name = (k: number) => createHash('sha256').update(String(k)).digest('base64').slice(0, 40);
    const walls = Array.from({ length: 72 }, (_, k) => ({ name: name(k), azimuthDeg: 5 * k }));
    const input = { ...SMALL_SITE, walls };
    expect(siteLink(input, BASE).kind).toBe('long');
    expect(textOf(await sheetOf(input))).toMatch(/The link of this site has \d+ characters, too many/);
    const without = await makeSheet(SMALL_SITE, { madeAt: new Date(0) });
    expect(textOf(without)).toContain('No address of a page was given');
  }, 60_000);
});
