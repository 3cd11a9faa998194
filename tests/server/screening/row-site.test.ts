import { describe, expect, test } from 'vitest';
import { parseSite } from '../../../model/index.ts';
import { baseOf } from '../../../server/screening/base-site.ts';
import { matchColumns, readColumnOption } from '../../../server/screening/columns.ts';
import { parseRowSite, RowError, type RowSettings, rowSite } from '../../../server/screening/row-site.ts';
import { SMALL_SITE } from '../sites.ts';

function settingsFor(header: string[], more: Partial<RowSettings> = {}): RowSettings {
  return { header, columns: matchColumns(header), base: {}, climate: { stations: [] }, ...more };
}

function read(header: string[], cells: string[], more: Partial<RowSettings> = {}) {
  const settings = settingsFor(header, more);
  const record = { row: 2, line: 2, cells };
  const found = rowSite(record, settings);
  return { ...found, site: parseRowSite(found, record, settings) };
}

function problems(header: string[], cells: string[], more: Partial<RowSettings> = {}) {
  try {
    read(header, cells, more);
  } catch (error) {
    if (error instanceof RowError) return error.problems;
    throw error;
  }
  return [];
}

describe('columns', () => {
  test('are found by other names, whatever their case, spaces and units', () => {
    expect(matchColumns(['ID', 'Lng', 'LAT', 'Power (W)', 'Max. C', 'Wall bearings'])).toEqual({
      longitude: 1,
      latitude: 2,
      power: 3,
      designMax: 4,
      bearings: 5,
    });
  });

  test('may be named, and left out', () => {
    const header = ['a', 'b', 'lat', 'power'];
    const explicit = readColumnOption('latitude=a, longitude=B,power=');
    expect(matchColumns(header, explicit)).toEqual({ latitude: 0, longitude: 1 });
  });

  test('that are missing are told together with what there is', () => {
    expect(() => matchColumns(['place', 'height'])).toThrow(
      /no column for the latitude.*it has place, height\n.*longitude/,
    );
    expect(() => matchColumns(['lat', 'lon'], { watt: 'x', power: 'heat' })).toThrow(
      /"watt" is no column[\s\S]*no column "heat"/,
    );
  });
});

describe('units in the names of columns', () => {
  const US = [
    'Latitude',
    'Longitude',
    'Altitude (ft)',
    'Limit (°F)',
    'eave_ft',
    'Power (W)',
    'width in',
    'maxC',
    'range (deg F)',
  ];
  const cells = ['33.2', '-113.4', '5000', '140', '3', '14', '12', '44', '27'];

  test('are those of the plain numbers below them', () => {
    const { site } = read(US, cells);
    expect(site.place.altitudeM).toBeCloseTo(1524, 9);
    expect(site.limits.maxC).toBeCloseTo(60, 9);
    expect(site.walls[0]?.eave?.depthM).toBeCloseTo(0.9144, 9);
    expect(site.box).toMatchObject({ powerW: 14, widthM: 0.3048 });
    expect(site.climate.designDay).toMatchObject({ maxC: 44, dailyRangeK: 15 });
  });

  test('give the site that the same numbers with their units give', () => {
    const bare = ['Latitude', 'Longitude', 'altitude', 'limit', 'eave', 'power', 'width', 'maxC', 'range'];
    const written = ['33.2', '-113.4', '5000 ft', '140 degF', '3 ft', '14', '12 in', '44', '27 degF'];
    expect(read(US, cells).site).toEqual(read(bare, written).site);
  });

  test('yield to a unit in the cell', () => {
    expect(read(['lat', 'lon', 'limit F'], ['33', '-113', '60 degC']).site.limits.maxC).toBe(60);
  });

  test.each([
    'limit F',
    'limit_f',
    'limitF',
    'Limit (F)',
    'limit [deg. F]',
    'Limit (degrees Fahrenheit)',
    'LIMIT (ºF)',
  ])('%s is in degF', (name) => {
    expect(read(['lat', 'lon', name], ['33', '-113', '140']).site.limits.maxC).toBeCloseTo(60, 9);
  });

  test.each(['limit', 'limit C', 'Limit (upper)', 'limitC', 'limit_c', 'Limit (degC)'])('%s is in degC', (name) => {
    expect(read(['lat', 'lon', name], ['33', '-113', '60']).site.limits.maxC).toBe(60);
  });

  test('of another quantity are refused, and a named column keeps its unit', () => {
    expect(problems(['lat', 'lon', 'Altitude (°F)'], ['33', '-113', '60'])).toEqual([
      expect.objectContaining({ column: 'Altitude (°F)', reason: expect.stringContaining('degF is no unit for it') }),
    ]);
    const header = ['lat', 'lon', 'site height ft'];
    const columns = matchColumns(header, { altitude: 'site height ft' });
    expect(read(header, ['33', '-113', '1000'], { columns }).site.place.altitudeM).toBeCloseTo(304.8, 9);
  });
});

describe('a row', () => {
  const header = ['lat', 'lon', 'bearings', 'finish', 'power', 'limit', 'maxC', 'range', 'eave', 'altitude', 'note'];

  test('is the site that a person would write', () => {
    const { site, compass } = read(header, [
      '33.2',
      '-113.4',
      '8 SW',
      'White',
      '20',
      '149 degF',
      '46',
      '',
      '0.6',
      '330',
      '-',
    ]);
    expect(site.place).toMatchObject({ latitudeDeg: 33.2, longitudeDeg: -113.4, altitudeM: 330 });
    expect(site.walls.map(({ name, azimuthDeg, eave }) => [name, azimuthDeg, eave?.depthM])).toEqual([
      ['8', 8, 0.6],
      ['SW', 225, 0.6],
    ]);
    expect(site.box).toMatchObject({ powerW: 20, finish: 'whitePaint', solarAbsorptance: 0.35 });
    expect(site.limits.maxC).toBeCloseTo(65, 9);
    expect(site.climate.designDay).toMatchObject({ maxC: 46, dailyRangeK: 12, date: '2026-07-21' });
    expect(compass).toBe(false);
  });

  test('without bearings has the eight walls of the compass; blanks are not zero', () => {
    const { site, climate } = read(header, ['-33.9', '18.4', '', '', '', '', '', '', '', '', '']);
    expect(site.walls.map(({ azimuthDeg }) => azimuthDeg)).toEqual([0, 45, 90, 135, 180, 225, 270, 315]);
    expect(site.box.powerW).toBe(15);
    expect(site.limits.maxC).toBe(65);
    expect(site.walls[0]?.eave).toBeNull();
    expect(climate.source).toBe('assumed');
    expect(site.climate.designDay?.date).toMatch(/-(12|01|02)-21$/);
  });

  test('takes what the site file says, and its own columns before that', () => {
    const base = baseOf({
      ...SMALL_SITE,
      box: { widthM: 0.2, heightM: 0.3, depthM: 0.1, powerW: 5, solarAbsorptance: 0.9 },
      limits: { maxC: 55 },
      walls: [{ name: 'x', azimuthDeg: 0, construction: 'stucco', electrodeDistanceM: 40 }],
    });
    const { site } = read(header, ['33', '-113', '', 'white', '20', '', '', '', '', '', ''], { base });
    expect(site.box).toMatchObject({ widthM: 0.2, powerW: 20, solarAbsorptance: 0.35 });
    expect(site.limits.maxC).toBe(55);
    expect(site.walls[5]).toMatchObject({ name: 'SW', construction: 'stucco', electrodeDistanceM: null });
  });

  test.each([
    ['swapped coordinates', ['120', '33'], 'lat', /latitude and longitude look swapped/],
    ['a decimal comma', ['33,2', '-113.4'], 'lat', /decimal comma; write 33\.2/],
    ['letters of the hemisphere', ['33.2', '113.4 W'], 'lon', /signed decimal degrees/],
    ['letters before', ['S 33.9', '18.4'], 'lat', /signed decimal degrees/],
    ['minutes', ['33°12\'36"', '18.4'], 'lat', /signed decimal degrees/],
    ['swapped coordinates with units', ['120 deg', '33 deg'], 'lat', /latitude and longitude look swapped/],
    ['a blank coordinate', ['', '18.4'], 'lat', /is missing/],
    ['garbage', ['n/a', '18.4'], 'lat', /"n\/a" is not understood/],
    ['digits without end', [`${'7'.repeat(150_000)}x`, '18.4'], 'lat', /is not understood/],
    ['a place off the globe', ['33', '200'], 'lon', /200 is above 180/],
  ])('with %s is refused', (_, [lat = '', lon = ''], column, reason) => {
    const found = problems(['lat', 'lon'], [lat, lon]);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ column, reason: expect.stringMatching(reason) });
  });

  test('tells every problem with its own column, once for all walls', () => {
    const found = problems(header, ['33', '18', 'N Q', 'whit', '-3', '', '30', '', '99', '', '']);
    expect(found.map(({ column }) => column).sort()).toEqual(['bearings', 'eave', 'finish', 'power']);
    expect(found.find(({ column }) => column === 'finish')?.reason).toContain('did you mean');
  });

  test('takes bearings with a unit, and says of bearings what is wrong with them', () => {
    const walls = ['lat', 'lon', 'bearings'];
    const { site } = read(walls, ['33', '18', '8 deg 98 deg']);
    expect(site.walls.map(({ azimuthDeg }) => azimuthDeg)).toEqual([8, 98]);
    const wrong = (cell: string) => problems(walls, ['33', '18', cell]);
    expect(wrong('N N')).toMatchObject([
      { column: 'bearings', reason: 'the bearing "N" stands there twice; allowed: bearings that differ' },
    ]);
    expect(wrong(Array.from({ length: 73 }, (_, k) => k).join(' '))).toMatchObject([
      { column: 'bearings', reason: 'has 73 entries, which is too many; allowed: up to 72 entries' },
    ]);
    expect(wrong('9'.repeat(201)).map(({ reason }) => reason)).toContainEqual(
      expect.stringMatching(/^has 201 characters/),
    );
    expect(wrong('8 m')[0]?.reason).toMatch(/"m" is not understood; allowed: .*"225 deg" or "SW"/);
  });

  test('with cells too many or too few is refused, and a comma suspected', () => {
    expect(problems(['lat', 'lon'], ['33', '2', '18', '4'])[0]?.reason).toMatch(/4 cells.*decimal comma/);
    expect(problems(['lat', 'lon'], ['33'])[0]?.reason).toBe('1 cell, the header has 2');
  });
});

describe('the climate of a row', () => {
  const header = ['lat', 'lon', 'climate', 'maxC', 'altitude'];
  const station = {
    name: 'a.epw',
    latitudeDeg: 34,
    longitudeDeg: -112,
    altitudeM: 900,
    day: { date: '2026-07-21', maxC: 40, dailyRangeK: 14, dewPointC: 9 },
  };
  const far = { ...station, name: 'far.epw', latitudeDeg: 60 };
  const climate = { stations: [far, station] };

  test('is that of its columns, then the one it names, the one for all, the nearest file', () => {
    const sourceOf = (cells: string[], more = climate as RowSettings['climate']) =>
      read(header, ['33', '-113', ...cells], { climate: more }).climate;
    expect(sourceOf(['', '44', '']).source).toBe('columns');
    expect(sourceOf(['dry-basin', '', ''])).toMatchObject({ source: 'named', text: 'dry-basin' });
    expect(sourceOf(['', '', ''], { ...climate, named: 'mil-std-810h-a1' })).toMatchObject({ text: 'mil-std-810h-a1' });
    const nearest = sourceOf(['', '', '']);
    expect(nearest).toMatchObject({ source: 'weather file', text: 'a.epw' });
    expect(nearest.distanceKm).toBeGreaterThan(100);
    expect(nearest.distanceKm).toBeLessThan(160);
  });

  test('of a file goes with the altitude of the row, and lends it its own', () => {
    const high = read(header, ['33', '-113', '', '', '1900'], { climate }).site;
    expect(high.climate.designDay?.maxC).toBeCloseTo(40 - 6.5, 9);
    const unknown = read(header, ['33', '-113', '', '', ''], { climate }).site;
    expect(unknown.climate.designDay?.maxC).toBe(40);
    expect(unknown.place.altitudeM).toBe(900);
  });

  test.each([
    ['assumed', { stations: [] }],
    ['of a file', climate],
  ])('%s is the same for a place that is written with units', (_, settings) => {
    const chosen = (lat: string, lon: string, altitude: string) => {
      const { climate, site } = read(header, [lat, lon, '', '', altitude], { climate: settings });
      return { climate, place: site.place };
    };
    const plain = chosen('-33.9', '18.4', '2400');
    expect(plain.place).toMatchObject({ latitudeDeg: -33.9, altitudeM: 2400 });
    expect(chosen('-33.9', '18.4', '2400 m')).toEqual(plain);
    expect(chosen('-33.9 deg', '18.4°', '2.4 km')).toEqual(plain);
    expect(chosen('-33.9', '18.4', '7874 ft').place.altitudeM).toBeCloseTo(2400, 0);
    expect(chosen('-33.9', '18.4', '7874 ft').climate.entry).toEqual(
      chosen('-33.9', '18.4', '2399.9952').climate.entry,
    );
  });

  test('of the columns has the date of the southern summer at a latitude with a unit, too', () => {
    expect(read(header, ['-33.9 deg', '18.4', '', '35', '']).site.climate.designDay?.date).toBe('2026-01-21');
  });

  const dayHeader = ['lat', 'lon', 'climate', 'designMax', 'dailyRange', 'dewPoint', 'wind', 'turbidity', 'date'];
  const dayProblems = (cells: string, named?: string) =>
    problems(dayHeader, ['33', '-113', ...cells.split(',')], { climate: { stations: [station], named } });

  test.each([
    ['a range and a dew point alone', ',,12,5,,,', [['designMax', /designMax is missing/]]],
    ['a wind alone', ',,,,3,,', [['designMax', /designMax is missing/]]],
    ['a date alone', ',,,,,,2026-07-05', [['designMax', /designMax is missing/]]],
    [
      'garbage for a date',
      ',,,,,,garbage',
      [
        ['date', /"garbage" is no date/],
        ['designMax', /is missing/],
      ],
    ],
    [
      'garbage for a turbidity',
      ',,,,,thick,',
      [
        ['turbidity', /is not understood/],
        ['designMax', /is missing/],
      ],
    ],
    [
      'garbage for range and dew point',
      ',,abc,abc,,,',
      [
        ['dailyRange', /"abc" is not understood/],
        ['dewPoint', /"abc" is not understood/],
        ['designMax', /is missing/],
      ],
    ],
    ['a named climate and a temperature', 'high-plateau,45,,,,,', [['climate', /contradict each other/]]],
  ] as const)('with %s is refused by column', (_, cells, wanted) => {
    for (const named of [undefined, 'dry-basin']) {
      const found = dayProblems(cells, named);
      expect(found.map(({ column }) => column).sort()).toEqual(wanted.map(([column]) => column).sort());
      for (const [column, reason] of wanted) expect(found.find((one) => one.column === column)?.reason).toMatch(reason);
    }
  });

  test('with a day whose column was named, but none for its highest temperature, says which', () => {
    const bare = ['lat', 'lon', 'range'];
    expect(problems(bare, ['33', '-113', '12'])).toEqual([]);
    const found = problems(bare, ['33', '-113', '12'], { columns: matchColumns(bare, { dailyRange: 'range' }) });
    expect(found).toMatchObject([{ column: 'designMax', reason: expect.stringMatching(/^designMax is missing/) }]);
  });

  test('that nobody knows is refused', () => {
    expect(problems(header, ['33', '-113', 'dry-basn', '', ''])[0]).toMatchObject({ column: 'climate' });
  });

  test('is a site like any other', () => {
    const { input } = read(header, ['33', '-113', '', '', '']);
    expect(parseSite(JSON.parse(JSON.stringify(input))).walls).toHaveLength(8);
  });
});
