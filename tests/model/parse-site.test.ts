import { describe, expect, test } from 'vitest';
import { DEMO_SITE, parsePlainSite, parseSite, SiteError, type SiteInput, siteJsonSchema } from '../../model/index.ts';

const good = (): Record<string, never> => structuredClone(DEMO_SITE) as never;

/** The problems of an input, as "path: message". */
function problemsOf(input: unknown): string[] {
  try {
    parseSite(input);
  } catch (error) {
    if (error instanceof SiteError) return error.problems.map(({ message }) => message);
    throw error;
  }
  return [];
}

/** The demo site with one thing changed at a path. */
function changed(path: string, value: unknown): unknown {
  const site: Record<string, unknown> = good();
  const keys = path.split('.');
  const last = keys.pop() as string;
  const target = keys.reduce<Record<string, unknown>>((at, key) => at[key] as Record<string, unknown>, site);
  if (value === undefined) delete target[last];
  else target[last] = value;
  return site;
}

describe('a good site', () => {
  test('is filled in and says what was filled in', () => {
    const site = parseSite(DEMO_SITE);
    expect(site.walls[0]?.solarAbsorptance).toBe(0.5);
    expect(site.assumed).toContain('walls.0.solarAbsorptance');
    expect(site.assumed).toContain('walls.0.emittance');
    expect(site.assumed).not.toContain('box.powerW');
    expect(site.assumed).not.toContain('title');
  });

  test('parsing what was parsed gives the same, assumptions included', () => {
    const site = parseSite(DEMO_SITE);
    expect(parseSite(JSON.parse(JSON.stringify(site)))).toEqual(site);
  });

  test('text with units is read where numbers stand', () => {
    const site = parseSite(changed('box.widthM', '12 in'));
    expect(site.box.widthM).toBeCloseTo(0.3048, 9);
    expect(parseSite(changed('limits.maxC', '149 degF')).limits.maxC).toBeCloseTo(65, 9);
    expect(parseSite(changed('box.powerW', '0.02 kW')).box.powerW).toBeCloseTo(20, 9);
    expect(parseSite(changed('box.solarAbsorptance', '40 %')).box.solarAbsorptance).toBeCloseTo(0.4, 9);
    expect(parseSite(changed('walls.0.azimuthDeg', 'N')).walls[0]?.azimuthDeg).toBe(0);
    expect(parseSite(changed('walls.0.azimuthDeg', '-355')).walls[0]?.azimuthDeg).toBe(5);
  });

  test('a design day in US units', () => {
    const designDay = {
      date: '2026-07-05',
      maxC: '115 degF',
      dailyRangeK: '25 degF',
      dewPointC: '50 degF',
      windMs: '2 mph',
    };
    const day = parseSite(changed('climate', { designDay })).climate.designDay;
    expect(day?.maxC).toBeCloseTo(46.111, 3);
    expect(day?.dailyRangeK).toBeCloseTo(13.889, 3);
    expect(day?.dewPointC).toBeCloseTo(10, 9);
    expect(day?.windMs).toBeCloseTo(0.894, 3);
  });

  test('the time zone is looked up where it is left out', () => {
    expect(parseSite(changed('place.timeZone', undefined)).place.timeZone).toBe('America/Phoenix');
    const sea = { latitudeDeg: 0, longitudeDeg: -140 };
    expect(parseSite(changed('place', sea)).place.timeZone).toMatch(/^(Etc\/GMT\+9|Pacific)/);
  });

  test('the plain parser takes numbers as text and no units', () => {
    expect(parsePlainSite(changed('box.powerW', ' 20 ')).box.powerW).toBe(20);
    expect(() => parsePlainSite(changed('box.powerW', '20 W'))).toThrow(SiteError);
  });
});

const SIDE_WALL = { kind: 'sideWall', side: 'left', distanceM: 1.2, depthM: 2, heightM: 3 };

const many = (count: number, one: unknown): unknown[] => Array.from({ length: count }, () => one);

describe('bad input: each field is named with what is allowed', () => {
  test.each([
    ['place.latitudeDeg', 91, /^place\.latitudeDeg: 91 is above 90; allowed: -90 to 90 deg/],
    ['place.latitudeDeg', Number.NaN, /^place\.latitudeDeg: NaN is not a number/],
    ['place.longitudeDeg', '1e999', /^place\.longitudeDeg: "1e999" is not understood/],
    ['place.timeZone', 'America/Phenix', /^place\.timeZone: "America\/Phenix" is no known time zone/],
    ['walls.0.azimuthDeg', 'north-ish', /^walls\.0\.azimuthDeg: "north-ish" is not understood; allowed: .*"SW"/],
    ['box.powerW', -1, /^box\.powerW: -1 is below 0; allowed: 0 to 2000 W/],
    ['box.solarAbsorptance', 1.4, /^box\.solarAbsorptance: 1\.4 is above 1/],
    ['box.widthM', 0, /^box\.widthM: 0 is below 0\.02/],
    ['box.widthM', '12 kg', /^box\.widthM: "12 kg" is not understood/],
    ['box.widthM', null, /^box\.widthM: null is not a number/],
    ['box.depthM', undefined, /^box\.depthM: is missing; allowed/],
    ['box.hood', { gapM: 0 }, /^box\.hood\.gapM: 0 is below 0\.003/],
    ['walls', [], /^walls: at least one wall is needed/],
    ['walls', undefined, /^walls: is missing/],
    ['walls', 'south', /^walls: "south" is not a list; allowed: entries in square brackets$/],
    ['walls.0', 3, /^walls\.0: 3 is not an object; allowed: an object with name, azimuthDeg, /],
    ['limits', 'x', /^limits: "x" is not an object; allowed: an object with minC, maxC, refersTo$/],
    ['title', 5, /^title: 5 is not a text; allowed: text in quotes$/],
    ['box.hood', { openTop: 'yes' }, /^box\.hood\.openTop: "yes" is not true or false; allowed: true, false$/],
    [
      'walls.0.obstructions',
      many(41, SIDE_WALL),
      /^walls\.0\.obstructions: has 41 entries, .*; allowed: up to 40 entries$/,
    ],
    ['walls.0.horizon', many(361, [10, 5]), /^walls\.0\.horizon: has 361 entries, .*; allowed: up to 360 entries$/],
    ['walls.0.horizon', [[10]], /^walls\.0\.horizon\.0: has 1 entry, .*; allowed: 2 entries at least$/],
    ['box.hood', { faces: many(7, 'top') }, /^box\.hood\.faces: has 7 entries, .*; allowed: up to 6 entries$/],
    ['constraints.mountHeightM', [1], /^constraints\.mountHeightM: has 1 entry, .*; allowed: 2 entries at least$/],
    ['assumed', many(1001, 'title'), /^assumed: has 1001 entries, .*; allowed: up to 1000 entries$/],
    ['title', 'x'.repeat(201), /^title: has 201 characters, .*; allowed: up to 200 characters$/],
    ['walls.1.name', 'north', /^walls\.1\.name: the name "north" is taken by walls\.0/],
    ['walls.0.name', '  ', /^walls\.0\.name: the name is empty/],
    ['walls.2.eave.depthM', -1, /^walls\.2\.eave\.depthM: -1 is below 0/],
    ['walls.0.construction', 'bric', /did you mean "brick"\?; allowed: brick, block/],
    ['walls.0.horizon', [[10, 95]], /^walls\.0\.horizon\.0\.1: 95 is above 90/],
    ['climate', {}, /^climate: exactly one of sample, designDay and cycle is needed, found none/],
    ['climate', { sample: 'dry-basin', cycle: 'mil-std-810h-a1' }, /found sample and cycle/],
    ['climate', { sample: 'dry-bason' }, /did you mean "dry-basin"\?/],
    ['climate', { sample: 'dry-basin', windMs: 2 }, /^climate\.windMs: goes with cycle only/],
    ['climate', { designDay: { date: '2026-02-30', maxC: 30 } }, /^climate\.designDay\.date/],
    ['climate', { designDay: { date: '2026-07-05', maxC: 20, dewPointC: 25 } }, /dew point lies above/],
    ['limits', { minC: 50, maxC: 40 }, /^limits\.minC: the lower limit is not below/],
    ['constraints.mountHeightM', [2, 1], /^constraints\.mountHeightM: the lowest height is above/],
    ['box.mountHeightM', 0.1, /^box\.mountHeightM: the box would reach into the ground/],
  ])('%s = %j', (path, value, message) => {
    const messages = problemsOf(changed(path, value));
    expect(messages).toHaveLength(1);
    expect(messages[0]).toMatch(message);
  });

  test('more walls than fit are told with how many do', () => {
    const walls = many(73, null).map((_, k) => ({ name: `wall ${k}`, azimuthDeg: k }));
    const { building: _, ...site } = good() as Record<string, unknown>;
    expect(problemsOf({ ...site, walls })).toEqual([
      'walls: has 73 entries, which is too many; allowed: up to 72 entries',
    ]);
  });

  test('a typo in a field name is pointed out, at any depth', () => {
    expect(problemsOf({ ...good(), grund: {} })).toEqual([
      expect.stringMatching(/^grund: unknown field; did you mean "ground"\?/),
    ]);
    expect(problemsOf(changed('walls.0.azimuth', 10))[0]).toMatch(
      /^walls\.0\.azimuth: unknown field; did you mean "azimuthDeg"\?/,
    );
    expect(problemsOf(changed('box.qqqq', 1))[0]).toMatch(/^box\.qqqq: unknown field; allowed: widthM/);
  });

  test('all problems at once, each with its path', () => {
    const site = changed('place.latitudeDeg', 91) as SiteInput & { box: Record<string, unknown> };
    site.box['powerW'] = -3;
    site.box['solarAbsorptance'] = 1.4;
    (site.walls[3] as Record<string, unknown>)['name'] = 'north';
    (site as Record<string, unknown>)['colour'] = 'red';
    site.limits = { minC: 50, maxC: 40 };
    const paths = (() => {
      try {
        parseSite(site);
      } catch (error) {
        return (error as SiteError).problems.map(({ path }) => path);
      }
      return [];
    })();
    expect(paths.sort()).toEqual(
      ['box.powerW', 'box.solarAbsorptance', 'colour', 'limits.minC', 'place.latitudeDeg', 'walls.3.name'].sort(),
    );
  });

  test.each([[null], [undefined], [3], ['site'], [[]], [{}], [() => 1]])('%j is no site', (input) => {
    expect(problemsOf(input).length).toBeGreaterThan(0);
  });

  test('hostile input stays an error: prototype keys, deep nesting, huge text', () => {
    expect(
      problemsOf(JSON.parse(`{"__proto__": {"x": 1}, "constructor": 1, ${JSON.stringify(good()).slice(1)}`)).join(),
    ).toMatch(/constructor: unknown field/);
    let deep: unknown = 1;
    for (let i = 0; i < 5000; i++) deep = [deep];
    expect(problemsOf(changed('box.widthM', deep))).toHaveLength(1);
    const messages = problemsOf(changed('box.widthM', 'x'.repeat(1_000_000)));
    expect(messages[0]?.length).toBeLessThan(300);
    expect(({} as Record<string, unknown>)['x']).toBeUndefined();
  });
});

describe('rules between fields', () => {
  test('speak up together with what else is wrong in the same section', () => {
    const site = changed('box.powerW', -1) as { box: Record<string, unknown>; climate: unknown };
    site.box['mountHeightM'] = 0.05;
    site.climate = { designDay: { date: '2026-07-05', maxC: 20, dewPointC: 25, windMs: -1 } };
    expect(
      problemsOf(site)
        .map((message) => message.split(':')[0])
        .sort(),
    ).toEqual(['box.mountHeightM', 'box.powerW', 'climate.designDay.dewPointC', 'climate.designDay.windMs'].sort());
  });

  test.each([
    ['box.powerW', 2000, /^box\.powerW: more heat than a closed box of this size gives off; allowed: up to \d+ W/],
    ['walls.0.heightM', 1.5, /^walls\.0\.heightM: the wall is lower than the box on it/],
    ['climate', { designDay: { date: '2011-12-30', maxC: 30 } }, /does not exist in Pacific\/Apia/],
    ['climate', { sample: 'dry-basin', month: 13 }, /^climate\.month: a month is at most 12; allowed: 1 to 12/],
    [
      'climate',
      { designDay: { date: 'july', maxC: 30 } },
      /^climate\.designDay\.date: "july" is no date; allowed: 1900/,
    ],
    ['box.vents', {}, /^box\.vents\.lowAreaM2: is missing; allowed: 0 to 1 m\^2/],
    [
      'box.vents',
      { lowAreaM2: 0.01, highAreaM2: 0.01, heightM: 1 },
      /^box\.vents\.heightM: the openings lie further apart/,
    ],
    ['box.battery', { massKg: 400 }, /^box\.battery\.massKg: a battery of this mass does not fit/],
    ['box.compartments', { lowerPowerW: 100 }, /^box\.compartments\.lowerPowerW: more than the whole heat/],
    ['box.finish', 'whitewash', /^box\.finish: "whitewash" is not known; allowed: whitePaint, /],
    ['climate.coldNight', { minC: -10, dewPointC: 0 }, /^climate\.coldNight\.dewPointC: the dew point lies above/],
    [
      'box.hood',
      { faces: ['roof'] },
      /^box\.hood\.faces\.0: "roof" is not known; allowed: front, left, right, top, bottom/,
    ],
    ['walls.0.obstructions', [{ kind: 'fence' }], /"fence"|fence is no kind; allowed: sideWall, front, block, tree/],
  ])('%s = %j', (path, value, message) => {
    const site = changed(path, value) as { place: Record<string, unknown> };
    if (path === 'climate') site.place['timeZone'] = 'Pacific/Apia';
    const messages = problemsOf(site);
    expect(
      messages.some((text) => message.test(text)),
      messages.join('\n'),
    ).toBe(true);
  });
});

describe('what is filled in fits the rest', () => {
  test('a cold day gets a dew point below its air', () => {
    const site = parseSite(changed('climate', { designDay: { date: '2026-01-05', maxC: 5, dailyRangeK: 8 } }));
    expect(site.climate.designDay?.dewPointC).toBe(-3);
    expect(site.assumed).toContain('climate.designDay.dewPointC');
  });

  test("a sample's altitude stands in for one that is not entered", () => {
    const site = changed('place.altitudeM', undefined) as { climate: unknown };
    site.climate = { sample: 'high-plateau' };
    expect(parseSite(site).place.altitudeM).toBe(2600);
  });

  test('a wall is as high as the box and the eave on it', () => {
    const site = changed('walls.2.eave.heightAboveBoxM', 4) as { box: Record<string, unknown> };
    expect(parseSite(site).walls[2]?.heightM).toBeCloseTo(1.4 + 0.17 + 4, 9);
    const high = changed('box.mountHeightM', 10) as { building: unknown };
    expect(() => parseSite(high)).toThrow(
      /building\.heightM: the building is lower than the box on it; allowed: from 10\.17 m/,
    );
    high.building = null;
    expect(parseSite(high).walls[0]?.heightM).toBeCloseTo(10.17, 9);
  });

  test('a cycle is calm unless it says otherwise, and says so', () => {
    const site = parseSite(changed('climate', { cycle: 'mil-std-810h-a1' }));
    expect(site.climate.windMs).toBe(0);
    expect(site.assumed).toContain('climate.windMs');
  });

  test('a value that somebody changed in a saved file is no assumption any more', () => {
    const saved = JSON.parse(JSON.stringify(parseSite(changed('box.emittance', undefined))));
    expect(parseSite(saved).assumed).toContain('box.emittance');
    saved.box.emittance = 0.1;
    expect(parseSite(saved).assumed).not.toContain('box.emittance');
    expect(parseSite({ ...saved, assumed: ['box', 'no.such.path', 'walls.0'] }).assumed).not.toContain('box');
  });

  test('nor is one that another edit by hand makes needful, and the file is taken as it stands', () => {
    const box = { widthM: 0.3, heightM: 0.35, depthM: 0.12, powerW: 15 };
    const place = { latitudeDeg: 33, longitudeDeg: -112 };
    const walls = [{ name: 'wall', azimuthDeg: 270, heightM: 5 }];
    const edited = JSON.parse(JSON.stringify(parseSite({ place, climate: { sample: 'dry-basin' }, box, walls })));
    edited.box.heightM = 3;
    edited.box.mountHeightM = 2;
    edited.assumed.push('box.powerW', 'box.mountHeightM');
    const site = parseSite(edited);
    expect(site.box).toMatchObject({ heightM: 3, mountHeightM: 2, powerW: edited.box.powerW });
    expect(site.assumed).not.toContain('box.powerW');
    expect(site.assumed).not.toContain('box.mountHeightM');
    expect(site.assumed).toContain('walls.0.solarAbsorptance');
  });
});

describe('JSON Schema', () => {
  const schema = siteJsonSchema() as {
    properties: Record<string, { properties?: Record<string, Record<string, unknown>> }>;
  };

  test('names every section and gives ranges and defaults of numbers', () => {
    expect(Object.keys(schema.properties)).toEqual(
      expect.arrayContaining(['place', 'climate', 'ground', 'box', 'limits', 'walls', 'constraints']),
    );
    expect(schema.properties['ground']?.properties?.['albedo']).toMatchObject({
      minimum: 0,
      maximum: 1,
      default: 0.2,
    });
    expect(schema.properties['place']?.properties?.['latitudeDeg']).toMatchObject({
      minimum: -90,
      maximum: 90,
      unit: 'deg',
    });
  });

  test('unknown fields are refused there too', () => {
    expect(schema).toMatchObject({ additionalProperties: false });
  });
});
